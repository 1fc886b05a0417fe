/** A film that is wholly in the store. */
export interface FilmRecord {
  /** SHA-256 of its bytes, 64 lower-case hexadecimal digits: its name in the store. */
  readonly sha256: string;
  readonly bytes: number;
  /** The name of the file it came from. */
  readonly name: string;
  /** What its first bytes say it is; `application/octet-stream` when they say nothing known. */
  readonly mediaType: string;
  /** ISO 8601 in UTC. */
  readonly addedAt: string;
}

/** An upload that became a film. It answers a window whose last answer was lost. */
export interface UploadRecord {
  readonly id: string;
  readonly sha256: string;
  /** ISO 8601 in UTC. */
  readonly at: string;
}

/** The part of the database that knows the films; the bytes lie beside it as files. */
export interface FilmRecords {
  films(): Promise<readonly FilmRecord[]>;
  film(sha256: string): Promise<FilmRecord | undefined>;
  /** Writes the film down, and the upload it came by, in one go. A film that is known keeps its first record. */
  addFilm(film: FilmRecord, upload?: string): Promise<void>;
  removeFilm(sha256: string): Promise<void>;
  uploads(): Promise<readonly UploadRecord[]>;
  /** Forgets uploads that were finished before a moment (ISO 8601 in UTC); the films stay. */
  forgetUploads(before: string): Promise<void>;
}
