/** A film on a server that answers range requests. */
export interface UrlFilm {
  readonly url: string;
  readonly name: string;
}

/** A file opened for reading in Node: `await open(path, 'r')` of `node:fs/promises` fits. The opener closes it. */
export interface FileFilm {
  readonly handle: {
    readonly read: (
      buffer: Uint8Array,
      offset: number,
      length: number,
      position: number,
    ) => Promise<{ readonly bytesRead: number }>;
    readonly stat: () => Promise<{ readonly size: number }>;
  };
  readonly name: string;
}

/** Where the bytes of a film come from: a `File` or `Blob` of the page, an address, or an open file in Node. */
export type FilmSource = Blob | UrlFilm | FileFilm;
