import path from 'node:path';
import process from 'node:process';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Files, realFiles } from './files.ts';
import type { FilmStore, SweepReport } from './films/film-store.ts';
import { FolderFilmStore } from './films/folder-film-store.ts';
import { type FolderLock, lockFolder } from './folder-lock.ts';
import { openConnection } from './sqlite/connection.ts';
import { SqliteStore } from './sqlite/sqlite-store.ts';
import type { Clock, StudyStore } from './study-store.ts';
import { FolderTrackStore } from './tracks/folder-track-store.ts';
import type { TrackStore } from './tracks/track-store.ts';

/** Everything that is kept in one data folder, held by this process until disposed. */
export interface DataStore {
  readonly folder: string;
  readonly studies: StudyStore;
  readonly films: FilmStore;
  readonly tracks: TrackStore;
  /** What was put in order when it was opened. */
  readonly swept: SweepReport;
  dispose(): Promise<void>;
}

export interface OpenOptions {
  readonly folder: string;
  readonly clock: Clock;
  readonly files?: Files;
}

/**
 * Opens a data folder, made when it is not there: `studies.sqlite`, `films/`, `tracks/`, `uploads/`, `lock`.
 * Findings `store/in-use`, `store/newer`, `store/damaged`, `store/folder`.
 */
export async function openStore(options: OpenOptions): Promise<Result<DataStore, Finding>> {
  const { clock, files = realFiles } = options;
  const folder = path.resolve(options.folder);
  let lock: Result<FolderLock, Finding>;
  try {
    // Films show people at work: nobody else on the machine reads them.
    await files.mkdir(folder, { recursive: true, mode: 0o700 });
    lock = await lockFolder(folder, process.pid, files);
  } catch (error) {
    return fail(finding('store/folder', {}, { folder, reason: reasonOf(error) }));
  }
  if (!lock.ok) return lock;
  const held = lock.value;
  const opened = await openLocked(folder, clock, files);
  if (!opened.ok) {
    held.dispose();
    return opened;
  }
  const { studies, films, tracks, swept } = opened.value;
  const dispose = async () => {
    await studies.dispose();
    held.dispose();
  };
  return ok({ folder, studies, films, tracks, swept, dispose });
}

async function openLocked(folder: string, clock: Clock, files: Files) {
  const file = path.join(folder, 'studies.sqlite');
  let studies: Result<SqliteStore, Finding>;
  try {
    studies = await SqliteStore.open(await openConnection(file), clock);
  } catch (error) {
    return fail(finding('store/damaged', {}, { file, reason: reasonOf(error) }));
  }
  if (!studies.ok) return studies;
  try {
    const films = await FolderFilmStore.open(folder, studies.value.films, clock, files);
    const tracks = await FolderTrackStore.open(folder, files);
    const swept = await films.sweep('start');
    const removed = [...swept.removed, ...(await tracks.sweep())];
    return ok({ studies: studies.value, films, tracks, swept: { ...swept, removed } });
  } catch (error) {
    await studies.value.dispose();
    return fail(finding('store/folder', {}, { folder, reason: reasonOf(error) }));
  }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
