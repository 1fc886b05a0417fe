import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { run } from './run.mjs';
import { installKey, installStamp, readStamp, removeStamp, writeStamp } from './stamps.mjs';

/**
 * @typedef {object} LockEntry
 * @property {string} [version]
 * @property {string} [integrity]
 * @property {string} [resolved]
 * @property {boolean} [link]
 * @property {boolean} [optional]
 * @property {string[]} [os]
 * @property {string[]} [cpu]
 * @property {string[]} [libc]
 * @property {Record<string, string>} [bin]
 * @typedef {Record<string, LockEntry>} LockEntries
 * @typedef {{ os: string, cpu: string, libc: string }} Machine
 */

/** Settings a shell, a build server or a user's own npm may hand down, each of which would leave packages out. */
const LEAVES_OUT =
  /^npm_config_(omit|include|only|production|dev|also|optional|global|location|dry_run|package_lock|package_lock_only|ignore_scripts|workspaces?|include_workspace_root|prefix|local_prefix|install_strategy|install_links)$/i;

/**
 * @param {NodeJS.ProcessEnv} env
 * @returns {NodeJS.ProcessEnv}
 */
export function installEnvironment(env) {
  const kept = Object.fromEntries(Object.entries(env).filter(([name]) => !LEAVES_OUT.test(name)));
  return { ...kept, NODE_ENV: '', PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' };
}

/** @returns {Machine} */
function thisMachine() {
  const report = /** @type {{ header: { glibcVersionRuntime?: string } }} */ (process.report.getReport());
  const libc = report.header.glibcVersionRuntime ? 'glibc' : 'musl';
  return { os: process.platform, cpu: process.arch, libc: process.platform === 'linux' ? libc : '' };
}

/**
 * @param {LockEntry} entry
 * @param {Machine} machine
 */
export function isForMachine(entry, machine) {
  /** @param {string[] | undefined} allowed @param {string} mine */
  const allows = (allowed, mine) =>
    !allowed ||
    allowed.some((a) => a === mine) ||
    (allowed.every((a) => a.startsWith('!')) && !allowed.includes(`!${mine}`));
  return allows(entry.os, machine.os) && allows(entry.cpu, machine.cpu) && allows(entry.libc, machine.libc);
}

/**
 * The first package that the lock file asks for and the installation lacks; null when all are there.
 * npm writes its own list of what is installed last, so a list that agrees stands for a finished installation.
 * @param {LockEntries} wanted
 * @param {LockEntries} installed
 * @param {Machine} machine
 * @param {(folder: string) => boolean} exists
 * @returns {string | null}
 */
export function firstMissing(wanted, installed, machine, exists) {
  for (const [folder, entry] of Object.entries(wanted)) {
    if (folder === '') continue;
    const there = installed[folder];
    if (!there) {
      const aside = entry.optional && (!isForMachine(entry, machine) || !(entry.os || entry.cpu));
      if (!aside) return folder;
      continue;
    }
    const same =
      there.version === entry.version &&
      there.integrity === entry.integrity &&
      there.resolved === entry.resolved;
    if (!same || !exists(`${folder}/package.json`)) return folder;
    const own = !folder.includes('node_modules/');
    for (const name of own ? Object.keys(entry.bin ?? {}) : []) {
      if (!exists(`node_modules/.bin/${name}`)) return folder;
    }
  }
  return null;
}

/** @param {string} root */
function isComplete(root) {
  try {
    /** @param {string} file @returns {LockEntries} */
    const entries = (file) => JSON.parse(readFileSync(path.join(root, file), 'utf8')).packages;
    const wanted = entries('package-lock.json');
    const installed = entries('node_modules/.package-lock.json');
    return (
      firstMissing(wanted, installed, thisMachine(), (inside) => existsSync(path.join(root, inside))) === null
    );
  } catch {
    return false;
  }
}

/**
 * How to call npm: the one that called us, the one beside this Node, or whatever the shell finds.
 * @returns {{ command: string, first: string[], shell: boolean }}
 */
export function npmCommand() {
  const beside = path.dirname(process.execPath);
  const candidates = [
    process.env.npm_execpath,
    path.join(beside, '..', 'lib', 'node_modules', 'npm', 'bin', 'npm-cli.js'),
    path.join(beside, 'node_modules', 'npm', 'bin', 'npm-cli.js'),
  ];
  for (const file of candidates) {
    if (file && path.basename(file) === 'npm-cli.js' && existsSync(file)) {
      return { command: process.execPath, first: [file], shell: false };
    }
  }
  return { command: 'npm', first: [], shell: process.platform === 'win32' };
}

/**
 * What to tell a person about an installation that failed.
 * @param {string} output what npm printed
 */
export function explainFailure(output) {
  if (
    /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ERR_SOCKET|ENETUNREACH|EHOSTUNREACH|ENOTCACHED/.test(
      output,
    )
  ) {
    return (
      'The packages could not be fetched: the npm registry cannot be reached.\n' +
      'Connect this machine to the network (or set the proxy npm shall use) and run the same command again;\n' +
      'what was fetched so far is kept. Once installed, Evenhand needs no network.'
    );
  }
  if (/ENOSPC/.test(output)) {
    return 'The packages could not be written: the disk is full. About 700 MB are needed. Make room and run the same command again.';
  }
  if (/EACCES|EPERM|EROFS/.test(output)) {
    return 'The packages could not be written: this user may not write here. See the lines above for the place; then run the same command again.';
  }
  if (/EUSAGE|in sync/.test(output)) {
    return 'package-lock.json does not fit the package.json files. Run "npm install" once to bring it up to date.';
  }
  return 'The packages could not be installed; the lines above are what npm said. Running the same command again starts afresh.';
}

/**
 * Installs the exact packages of the lock file, unless they are there.
 * @param {string} root
 * @param {{ log: (line: string) => void, echo: (text: string) => void, hold: import('./lock.mjs').Hold }} options
 * @returns {Promise<string | null>} null, or what went wrong in words
 */
export async function ensureInstalled(root, { log, echo, hold }) {
  const key = installKey(root);
  const stamp = installStamp(root);
  if (readStamp(stamp) === key) return null;
  if (isComplete(root)) {
    writeStamp(stamp, key);
    return null;
  }
  removeStamp(stamp);
  log('Installing packages (the first time this takes about a minute) …');
  const npm = npmCommand();
  const { code, output, ms } = await run(
    npm.command,
    [
      ...npm.first,
      'ci',
      '--include=dev',
      '--include=optional',
      '--ignore-scripts',
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
    ],
    { cwd: root, env: installEnvironment(process.env), shell: npm.shell, echo, onChild: hold.setChild },
  );
  if (code !== 0) return explainFailure(output);
  writeStamp(stamp, key);
  log(`Installed in ${(ms / 1000).toFixed(1)} s.`);
  return null;
}
