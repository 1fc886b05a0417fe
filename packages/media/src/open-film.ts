import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { IndexedFilm, OpenFilm } from './film.ts';
import type { FilmSource } from './source.ts';

export interface OpenOptions {
  /** Upper bound of the memory for decoded frames, in bytes (default 400 million). */
  readonly cacheBytes?: number;
}

/** Opens a film for showing. Everything that is wrong with the file comes back as findings. */
export async function openFilm(
  _source: FilmSource,
  _options: OpenOptions = {},
): Promise<Result<OpenFilm, readonly Finding[]>> {
  throw new Error('not built yet');
}

/** Reads the index alone: every frame's time, without decoding. Runs in the page and in Node. */
export async function indexFilm(_source: FilmSource): Promise<Result<IndexedFilm, readonly Finding[]>> {
  throw new Error('not built yet');
}
