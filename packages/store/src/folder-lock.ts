import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Files, writeWhole } from './files.ts';
import { type SqliteConnection, sqliteModule, usualDriver } from './sqlite/connection.ts';

/** One process holds a data folder. */
export interface FolderLock {
  dispose(): void;
}

/**
 * Takes the data folder for this process. The lock is one that the operating system holds for SQLite on the file
 * `lock`: it goes with the process, however that ends, so there is no stale lock and no guess whether a process number
 * was given to another program meanwhile. `lock.json` only tells the next one who has it.
 *
 * Finding `store/in-use` when another process, or this one, has it already.
 */
export async function lockFolder(
  folder: string,
  pid: number,
  files: Files,
): Promise<Result<FolderLock, Finding>> {
  const { DatabaseSync } = await sqliteModule(usualDriver());
  const connection: SqliteConnection = new DatabaseSync(path.join(folder, 'lock'), { timeout: 0 });
  const note = path.join(folder, 'lock.json');
  try {
    connection.exec('begin exclusive');
  } catch (error) {
    connection.close();
    if (!isBusy(error)) throw error;
    return fail(finding('store/in-use', {}, { pid: holder(note), folder }));
  }
  await writeWhole(files, note, JSON.stringify({ pid }));
  return ok({ dispose: () => connection.close() });
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && /locked|busy/i.test(error.message);
}

function holder(note: string): string {
  try {
    const { pid } = JSON.parse(readFileSync(note, 'utf8')) as { pid: number };
    return String(pid);
  } catch {
    return 'unknown';
  }
}
