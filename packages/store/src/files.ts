import * as node from 'node:fs/promises';
import process from 'node:process';

/** The calls of the file system that the store makes, so that a test can watch them or make them fail. */
export type Files = Pick<
  typeof node,
  'open' | 'rename' | 'unlink' | 'mkdir' | 'readdir' | 'stat' | 'readFile' | 'copyFile'
>;

export const realFiles: Files = node;

/**
 * Flushes a folder, so that a file that was created or renamed in it is still there after a power cut.
 * Windows cannot open folders and keeps its own journal of them.
 */
export async function flushFolder(files: Files, folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await files.open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Flushes a file that is there already. */
export async function flushFile(files: Files, file: string): Promise<void> {
  const handle = await files.open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Writes a small file whole or not at all: beside it first, flushed, then renamed over. */
export async function writeWhole(files: Files, file: string, content: string | Uint8Array): Promise<void> {
  const beside = `${file}.part`;
  const handle = await files.open(beside, 'w');
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await files.rename(beside, file);
}

/** Size in bytes, or undefined when there is no such file. */
export async function sizeOf(files: Files, file: string): Promise<number | undefined> {
  try {
    const found = await files.stat(file);
    return found.isFile() ? found.size : undefined;
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

export async function removeIfThere(files: Files, file: string): Promise<boolean> {
  try {
    await files.unlink(file);
    return true;
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
}

export function isMissing(error: unknown): boolean {
  return errorCode(error) === 'ENOENT';
}

export function errorCode(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}
