import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { FilmRecord } from './film-records.ts';

/** A film on its way in. */
export interface Upload {
  /** 32 lower-case hexadecimal digits. */
  readonly id: string;
  /** Bytes it will have. */
  readonly size: number;
  /** Bytes that are here. */
  readonly offset: number;
  readonly name: string;
  /** SHA-256 that the sender says it has, if it says so. */
  readonly expected?: string;
}

export interface SweepReport {
  /** Unfinished uploads that nobody went on with, and files that belong to none. */
  readonly removed: readonly string[];
  /** Films whose storing had been cut off and was brought to its end. */
  readonly finished: readonly string[];
  /** Records whose file is gone. */
  readonly lost: readonly string[];
}

/**
 * Keeps films under the hash of their bytes. A film is listed only when it is whole and on the disk; an upload can be
 * taken up again at its offset, after the program was killed as well.
 */
export interface FilmStore {
  begin(upload: Omit<Upload, 'offset'>): Promise<void>;
  /** Undefined when there is none; a finished one has the offset of its size. */
  upload(id: string): Promise<Upload | undefined>;
  /** Appends at the offset and returns the new one. Bytes that came before a break of the stream are kept. @throws TooManyBytes */
  append(id: string, offset: number, bytes: AsyncIterable<Uint8Array>): Promise<number>;
  /** Throws away an upload; false when there is none. */
  drop(id: string): Promise<boolean>;
  /**
   * Makes a film of an upload that has all its bytes: flushed, hashed, renamed, recorded, in that order. May be asked
   * again. Findings `store/not-found`, `film/upload` when bytes are missing, `film/hash` when the hash is not the
   * expected one: the upload is then thrown away.
   */
  finish(id: string): Promise<Result<FilmRecord, Finding>>;
  /** Copies a film from a file on this machine. Findings `cli/file`, `film/empty`. */
  copyIn(file: string, name: string): Promise<Result<FilmRecord, Finding>>;
  list(): Promise<readonly FilmRecord[]>;
  find(sha256: string): Promise<FilmRecord | undefined>;
  /** Where the bytes lie. */
  fileOf(sha256: string): string;
  /**
   * Puts the folders in order. At a start nothing is being written, so bytes that were never flushed are cut off;
   * later, only what nobody has touched for a day goes.
   */
  sweep(when: 'start' | 'later'): Promise<SweepReport>;
}
