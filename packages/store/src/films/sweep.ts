import path from 'node:path';
import { type Files, removeIfThere, sizeOf } from '../files.ts';
import { type Clock, isoTime } from '../study-store.ts';
import type { FilmRecord, FilmRecords } from './film-records.ts';
import type { SweepReport } from './film-store.ts';
import { hashFile } from './hash-file.ts';
import type { UploadFolder } from './upload-folder.ts';

const DAY_MS = 24 * 60 * 60 * 1000;
/** How long a window may still ask which film its finished upload became. */
const REMEMBER_MS = 7 * DAY_MS;

export interface Sweeping {
  readonly folder: string;
  readonly uploads: UploadFolder;
  readonly records: FilmRecords;
  readonly files: Files;
  readonly clock: Clock;
  /** Moves a whole file under its hash. */
  readonly place: (file: string, film: FilmRecord) => Promise<void>;
}

export async function sweepFolders(parts: Sweeping, when: 'start' | 'later'): Promise<SweepReport> {
  const removed: string[] = [];
  const finished = when === 'start' ? await finishCutOff(parts) : [];
  const lost = when === 'start' ? await forgetLost(parts) : [];
  removed.push(...(await sweepUploads(parts, when)));
  if (when === 'start') {
    removed.push(...(await sweepFilms(parts, finished)));
  }
  await parts.records.forgetUploads(new Date(parts.clock() - REMEMBER_MS).toISOString());
  return { removed, finished, lost };
}

/** An upload that was recorded as a film, but whose file still lies among the uploads. */
async function finishCutOff(parts: Sweeping): Promise<string[]> {
  const finished: string[] = [];
  for (const upload of await parts.records.uploads()) {
    const film = await parts.records.film(upload.sha256);
    const file = parts.uploads.fileOf(upload.id);
    const size = await sizeOf(parts.files, file);
    if (size === undefined) continue;
    if (film !== undefined && size === film.bytes) {
      const isNew = (await sizeOf(parts.files, path.join(parts.folder, film.sha256))) !== film.bytes;
      await parts.place(file, film);
      if (isNew) finished.push(film.sha256);
    }
    await parts.uploads.remove(upload.id);
  }
  return finished;
}

async function forgetLost(parts: Sweeping): Promise<string[]> {
  const lost: string[] = [];
  for (const film of await parts.records.films()) {
    if ((await sizeOf(parts.files, path.join(parts.folder, film.sha256))) === film.bytes) continue;
    await parts.records.removeFilm(film.sha256);
    lost.push(film.sha256);
  }
  return lost;
}

async function sweepUploads(parts: Sweeping, when: 'start' | 'later'): Promise<string[]> {
  const { uploads, files } = parts;
  const removed: string[] = [];
  const names = await uploads.names();
  for (const name of names) {
    const file = path.join(uploads.folder, name);
    const id = name.replace(/\.json$/, '');
    const whole = /^[0-9a-f]{32}$/.test(id) && names.includes(id) && names.includes(`${id}.json`);
    const stale = await isStale(parts, file);
    if (whole ? stale && (await isStale(parts, uploads.fileOf(id))) : when === 'start' || stale) {
      if (await removeIfThere(files, file)) removed.push(name);
    } else if (whole && when === 'start' && name === id) {
      const note = await uploads.note(id);
      if (note !== undefined) await uploads.cutToFlushed(id, note);
    }
  }
  return removed;
}

async function isStale(parts: Sweeping, file: string): Promise<boolean> {
  try {
    const { mtimeMs } = await parts.files.stat(file);
    return parts.clock() - mtimeMs > DAY_MS;
  } catch {
    return true;
  }
}

/**
 * Files among the films that no record names. Whole ones are taken in, as when a data folder was put together from a
 * copy; what is not what its name says goes.
 */
async function sweepFilms(parts: Sweeping, finished: string[]): Promise<string[]> {
  const removed: string[] = [];
  for (const name of (await parts.files.readdir(parts.folder)).sort()) {
    if ((await parts.records.film(name)) !== undefined) continue;
    const file = path.join(parts.folder, name);
    const facts = /^[0-9a-f]{64}$/.test(name) ? await hashFile(parts.files, file) : undefined;
    if (facts?.sha256 === name) {
      await parts.records.addFilm({
        ...facts,
        name: `${name.slice(0, 8)}.film`,
        addedAt: isoTime(parts.clock),
      });
      finished.push(name);
    } else if (name.endsWith('.part') || facts !== undefined) {
      if (await removeIfThere(parts.files, file)) removed.push(name);
    }
  }
  return removed;
}
