import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';

/** What the built program depends on, besides everything under packages/. */
const BUILD_INPUTS = [
  'package-lock.json',
  'tsconfig.base.json',
  'vite.app.config.ts',
  'vite.cli.config.ts',
  'scripts/browser/find.mjs',
  'scripts/vite/litert-loader.mjs',
];
const NOT_BUILT = new Set(['node_modules', 'dist', 'coverage', 'bin']);

/** @param {string} root */
export const installStamp = (root) => path.join(root, 'node_modules', '.setup-stamp');
/** @param {string} root */
export const buildStamp = (root) => path.join(root, 'dist', '.build-stamp');

/**
 * What an installation depends on: the exact packages and the machine they were chosen for.
 * @param {string} root
 */
export function installKey(root) {
  return createHash('sha256')
    .update(readFileSync(path.join(root, 'package-lock.json')))
    .update(`\0${process.platform}\0${process.arch}`)
    .digest('hex');
}

/**
 * What a build depends on: every source file, by name and bytes. Tests are left out.
 * @param {string} root
 */
export function buildKey(root) {
  const hash = createHash('sha256');
  for (const file of [...BUILD_INPUTS, ...sources(root, 'packages')]) {
    const full = path.join(root, file);
    if (!existsSync(full)) continue;
    const bytes = readFileSync(full);
    hash.update(`${file}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]} sorted, with forward slashes
 */
function sources(root, folder) {
  /** @type {string[]} */
  const found = [];
  const entries = readdirSync(path.join(root, folder), { withFileTypes: true });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    const inside = `${folder}/${entry.name}`;
    if (entry.isDirectory()) {
      if (!NOT_BUILT.has(entry.name)) found.push(...sources(root, inside));
    } else if (!/\.test\.tsx?$/.test(entry.name)) {
      found.push(inside);
    }
  }
  return found;
}

/** @param {string} file */
export function readStamp(file) {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return null;
  }
}

/**
 * @param {string} file
 * @param {string} key
 */
export function writeStamp(file, key) {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, `${key}\n`);
}

/** @param {string} file */
export function removeStamp(file) {
  rmSync(file, { force: true });
}
