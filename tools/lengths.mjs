// No source file grows beyond a size at which it can still be read in one go. `npm run check` calls this.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { moduleFiles } from './read-imports.mjs';

export const MOST_LINES = 600;

/**
 * Files that may be longer, each with its reason.
 * @type {Readonly<Record<string, string>>}
 */
export const EXCEPTIONS = {};

/**
 * @param {string} root
 * @param {Readonly<Record<string, string>>} exceptions
 * @returns {{ read: number, complaints: string[] }}
 */
export function judgeLengths(root, exceptions) {
  const files = moduleFiles(root);
  const lengths = new Map(
    files.map((file) => [file, readFileSync(path.join(root, file), 'utf8').split('\n').length - 1]),
  );
  const long = files
    .filter((file) => (lengths.get(file) ?? 0) > MOST_LINES && !exceptions[file]?.trim())
    .map(
      (file) =>
        `${file} has ${lengths.get(file)} lines, more than ${MOST_LINES}: split it, or give a reason in tools/lengths.mjs`,
    );
  const idle = Object.keys(exceptions)
    .filter((file) => (lengths.get(file) ?? 0) <= MOST_LINES)
    .map(
      (file) => `${file} is no longer too long, or gone: take it from the exceptions in tools/lengths.mjs`,
    );
  return { read: files.length, complaints: [...long, ...idle] };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
  const { read, complaints } = judgeLengths(root, EXCEPTIONS);
  for (const complaint of complaints) console.error(complaint);
  console.log(`${read} files read, ${complaints.length} complaints`);
  process.exitCode = complaints.length === 0 && read > 0 ? 0 : 1;
}
