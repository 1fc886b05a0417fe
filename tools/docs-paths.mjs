// Every path and every `npm run` quoted in the documents must exist. `npm run check` calls this.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

/** @typedef {{ quote: string, line: number, kind: 'path' | 'link' | 'script' }} Quote */
/** @typedef {{ file: string, line: number, text: string }} Complaint */

const DOCUMENTS = ['README.md', 'ARCHITECTURE.md', 'CONTRIBUTING.md', 'CHANGELOG.md'];
/** Made by set-up and tests; they need not be there when a document names them. */
const MADE = /^(dist|node_modules|coverage|\.cache|\.setup\.lock|\.test\.lock)(\/|$)/;
const ENDING = /\.(ts|tsx|mjs|js|json|md|css|html|svg|pdf|csv|vtt|mp4|webm|glb|yml|yaml|typ)$/;
/** A name alone is judged only when it must be ours: `chart.svg` may be a file of the reader's. */
const SOURCE = /^[a-z].*\.(ts|tsx|mjs|js|css|md)$/;
const LEFT_OUT = new Set(['node_modules', 'dist', 'coverage', '.git', '.cache']);

/**
 * What a document quotes: links, paths between backticks, and scripts called by `npm run`. Fenced blocks are read for
 * scripts only: what they show is often an example.
 * @param {string} text
 * @returns {Quote[]}
 */
export function quotesIn(text) {
  let fenced = false;
  return text.split('\n').flatMap((content, index) => {
    const line = index + 1;
    const scripts = [...content.matchAll(/npm run ([a-z][\w:-]*)/g)].map((m) => ({
      quote: m[1] ?? '',
      line,
      kind: /** @type {const} */ ('script'),
    }));
    if (/^\s*(```|~~~)/.test(content)) {
      fenced = !fenced;
      return [];
    }
    if (fenced) return scripts;
    const links = [...content.matchAll(/\]\(([^)\s]+)\)/g)]
      .map((m) => (m[1] ?? '').replace(/#.*$/, ''))
      .filter((target) => target !== '' && !/^[a-z]+:/.test(target))
      .map((quote) => ({ quote, line, kind: /** @type {const} */ ('link') }));
    const paths = [...content.matchAll(/`([^`]+)`/g)]
      .map((m) => m[1] ?? '')
      .filter(looksLikePath)
      .map((quote) => ({ quote, line, kind: /** @type {const} */ ('path') }));
    return [...scripts, ...links, ...paths];
  });
}

/**
 * Does a word between backticks mean a place in the project? Names in capitals (`STUDY.json`) stand for the reader's
 * own files, a leading slash for an address, a leading @ for a package.
 * @param {string} word
 */
export function looksLikePath(word) {
  if (!/^[\w.*<>/-]+$/.test(word) || /^[/<*-]/.test(word) || /(^|\/)[A-Z]+\.[a-z|.]+$/.test(word)) {
    return DOCUMENTS.includes(word);
  }
  const parts = word.split('/');
  const last = parts.at(-1) ?? '';
  if (parts.length === 1) return SOURCE.test(last) && !last.includes('*');
  return last === '' || ENDING.test(last) || TOP.test(word);
}
/** Folders at the top of the project, there or not: a document that names one that is gone must be found. */
const TOP = /^(packages|docs|tools|tests|bench|scripts|examples|\.ci)\//;

/**
 * @param {string} root
 * @param {string} document path relative to the root
 * @param {ReadonlySet<string>} files every file and folder of the project
 * @returns {Complaint[]}
 */
export function judgeDocument(root, document, files) {
  const text = readFileSync(path.join(root, document), 'utf8');
  const known = Object.keys(JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')).scripts ?? {});
  return quotesIn(text).flatMap(({ quote, line, kind }) => {
    if (kind === 'script')
      return known.includes(quote) ? [] : [{ file: document, line, text: `there is no script "${quote}"` }];
    const found = MADE.test(quote) || isThere(quote, path.posix.dirname(document), files, kind === 'path');
    return found ? [] : [{ file: document, line, text: `there is no ${quote}` }];
  });
}

/**
 * @param {string} quote
 * @param {string} folder
 * @param {ReadonlySet<string>} files
 * @param {boolean} fromRoot may it also be meant from the root, or as a bare name?
 */
function isThere(quote, folder, files, fromRoot) {
  const clean = quote.replace(/\/$/, '').replace(/^\.\//, '');
  const beside = path.posix.normalize(path.posix.join(folder, clean));
  if (files.has(beside) || (fromRoot && files.has(clean))) return true;
  if (!fromRoot) return false;
  const pattern = clean.replace(/[.+^$()[\]{}|\\]/g, '\\$&').replace(/<[^>]*>|\*+/g, '[^/]+');
  const matches = new RegExp(clean.includes('/') ? `^${pattern}$` : `(^|/)${pattern}$`);
  return [...files].some((file) => matches.test(file));
}

/**
 * @param {string} root
 * @returns {Set<string>} every file and folder, relative to the root
 */
export function everyPath(root) {
  /** @param {string} folder @returns {string[]} */
  const walk = (folder) =>
    readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
      if (LEFT_OUT.has(entry.name)) return [];
      const inside = folder === '' ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? [inside, ...walk(inside)] : [inside];
    });
  return new Set(walk(''));
}

/**
 * @param {string} root
 * @returns {{ documents: string[], complaints: Complaint[] }}
 */
export function judgeDocuments(root) {
  const files = everyPath(root);
  const below = [...files].filter((file) => file.startsWith('docs/') && file.endsWith('.md'));
  const documents = [...DOCUMENTS.filter((file) => existsSync(path.join(root, file))), ...below];
  const complaints = documents.flatMap((document) => judgeDocument(root, document, files));
  const missing = existsSync(path.join(root, 'README.md'))
    ? []
    : [{ file: 'README.md', line: 1, text: 'is missing' }];
  return { documents, complaints: [...missing, ...complaints] };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
  const { documents, complaints } = judgeDocuments(root);
  for (const { file, line, text } of complaints) console.error(`${file}:${line} ${text}`);
  console.log(`${documents.length} documents read, ${complaints.length} complaints`);
  process.exitCode = complaints.length === 0 ? 0 : 1;
}
