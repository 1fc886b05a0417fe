import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    realFilms: { readonly folder: string; readonly names: readonly string[] } | null;
  }
}

/**
 * Is a real film of this name at hand? For `test.runIf(hasRealFilm('x.mp4'))`: without the film the test is counted
 * as skipped, by name.
 */
export function hasRealFilm(name: string): boolean {
  return inject('realFilms')?.names.includes(name) ?? false;
}

/** Where the film lies on the disk. */
export function realFilmPath(name: string): string {
  const films = inject('realFilms');
  if (!films?.names.includes(name))
    throw new RangeError(`there is no real film ${name}; ask hasRealFilm first`);
  return `${films.folder.replace(/[\\/]$/, '')}/${name}`;
}

/** The address from which a page of the browser tests reads the film, with ranges. */
export function realFilmUrl(name: string): string {
  const file = realFilmPath(name).replaceAll('\\', '/');
  return `/@fs${file.startsWith('/') ? '' : '/'}${file}`;
}
