export { plainStudy } from '../../../../tests/helpers/plain-study.ts';

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Edit } from '@evenhand/core/ground/edit';
import { onTestFinished } from 'vitest';
import type { FilmRecords } from '../films/film-records.ts';
import { MemoryStore } from '../memory-store.ts';
import { hasBuiltIn, openConnection, type SqliteDriver } from '../sqlite/connection.ts';
import { SqliteStore } from '../sqlite/sqlite-store.ts';
import type { Clock, SentEdit, StudyStore } from '../study-store.ts';

export interface OpenedStore {
  readonly studies: StudyStore;
  readonly records: FilmRecords;
  /** Closes it and opens what it left behind; where nothing is left behind, the same one. */
  readonly reopen: () => Promise<OpenedStore>;
}

export interface StoreAdapter {
  readonly name: string;
  readonly open: (clock: Clock) => Promise<OpenedStore>;
}

export const memoryAdapter: StoreAdapter = {
  name: 'plain maps in memory',
  open: async (clock) => {
    const store = new MemoryStore(clock);
    const opened: OpenedStore = { studies: store, records: store, reopen: async () => opened };
    return opened;
  },
};

function sqliteAdapter(name: string, driver: SqliteDriver): StoreAdapter {
  return {
    name,
    open: async (clock) => await openSqlite(path.join(temporaryFolder(), 'studies.sqlite'), driver, clock),
  };
}

export async function openSqlite(file: string, driver: SqliteDriver, clock: Clock): Promise<OpenedStore> {
  const opened = await SqliteStore.open(await openConnection(file, driver), clock);
  if (!opened.ok) throw new Error(opened.error.message);
  const store = opened.value;
  let closing: Promise<void> | undefined;
  const close = async () => {
    closing ??= store.dispose();
    await closing;
  };
  onTestFinished(close);
  const reopen = async () => {
    await close();
    return await openSqlite(file, driver, clock);
  };
  return { studies: store, records: store.films, reopen };
}

/** The adapters that this Node can run. */
export const adapters: readonly StoreAdapter[] = [
  memoryAdapter,
  sqliteAdapter('SQLite by @photostructure/sqlite', 'package'),
  ...(hasBuiltIn() ? [sqliteAdapter('SQLite by node:sqlite', 'built-in')] : []),
];

/** The adapters that this Node cannot run, with the reason. */
export const absentAdapters: readonly string[] = hasBuiltIn()
  ? []
  : ['SQLite by node:sqlite (complete from Node 24)'];

/** A folder that is gone when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'evenhand-store-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}

/** A clock that goes on by a second whenever it is read. */
export function tickingClock(): Clock {
  let now = Date.UTC(2026, 2, 1);
  return () => {
    now += 1000;
    return now;
  };
}

export function mark(id: string, start: number): Edit {
  return {
    type: 'motion.mark',
    method: 'm',
    hand: 'right',
    motion: { id, start, kind: 'G', said: 'marked' },
  };
}

export function sent(id: string, edit: Edit, said: Partial<SentEdit> = {}): SentEdit {
  return { id, edit, at: '2026-03-01T10:00:00.000Z', ...said };
}
