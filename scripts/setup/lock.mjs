import { readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { setTimeout as pause } from 'node:timers/promises';

/** A holder shows that it lives by touching its lock this often. */
const SIGN_OF_LIFE_MS = 2_000;
/** After this long without a sign of life a lock is taken over even when its process number is in use (by another program). */
const SILENT_MS = 60_000;

/**
 * @typedef {{ pid: number, child: number | null, token: string }} Holder
 * @typedef {{ setChild: (pid: number | null) => void }} Hold
 */

/**
 * Is any process of the holder alive? Its child counts: an installer goes on for a while after its parent was killed.
 * @param {Holder} holder
 */
export function isAlive(holder) {
  return [holder.pid, holder.child].some((pid) => {
    if (pid === null) return false;
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
    }
  });
}

/**
 * @param {string} file
 * @returns {Holder | null} null when there is no lock or it cannot be read (yet)
 */
export function readHolder(file) {
  try {
    const { pid, child, token } = JSON.parse(readFileSync(file, 'utf8'));
    return typeof pid === 'number' && typeof token === 'string' ? { pid, child: child ?? null, token } : null;
  } catch {
    return null;
  }
}

/**
 * Runs `work` while no other process that uses the same lock file runs its own. Waits for a living holder, takes
 * over from a dead one. The lock goes when the work ends, when this process exits, or is left for others to judge.
 * @template T
 * @param {string} file
 * @param {(hold: Hold) => Promise<T>} work
 * @param {{ log?: (line: string) => void, what?: string, pollMs?: number, silentMs?: number }} [options]
 * @returns {Promise<T>}
 */
export async function withLock(file, work, options = {}) {
  const { log = () => {}, what = 'run', pollMs = 200, silentMs = SILENT_MS } = options;
  const token = `${process.pid}-${Date.now()}-${Math.random()}`;
  await acquire(file, token, { log, what, pollMs, silentMs });
  const release = () => {
    if (readHolder(file)?.token === token) rmSync(file, { force: true });
  };
  const alive = setInterval(() => touch(file), SIGN_OF_LIFE_MS);
  process.once('exit', release);
  try {
    return await work({ setChild: (pid) => write(file, { pid: process.pid, child: pid, token }, 'w') });
  } finally {
    clearInterval(alive);
    process.removeListener('exit', release);
    release();
  }
}

/**
 * @param {string} file
 * @param {string} token
 * @param {{ log: (line: string) => void, what: string, pollMs: number, silentMs: number }} options
 */
async function acquire(file, token, { log, what, pollMs, silentMs }) {
  let told = false;
  let silence = { mark: Number.NaN, since: 0 };
  while (!write(file, { pid: process.pid, child: null, token }, 'wx')) {
    const holder = readHolder(file);
    const mark = modified(file);
    if (mark !== silence.mark) silence = { mark, since: performance.now() };
    // The silence is measured by our own waiting, so that a machine that slept does not make a living holder look dead.
    const silent = performance.now() - silence.since > silentMs;
    if (silent || (holder && !isAlive(holder))) {
      if (takeAway(file, holder?.token ?? null)) log(`Taking over from a ${what} that was interrupted.`);
      continue;
    }
    if (!told && holder) {
      log(`Another ${what} is at work here (process ${holder.pid}); waiting for it to end.`);
      told = true;
    }
    await pause(pollMs);
  }
}

/**
 * Removes a lock judged dead. It is moved aside first and looked at again: had someone else taken it over
 * in between, it is put back.
 * @param {string} file
 * @param {string | null} token
 */
function takeAway(file, token) {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch {
    return false;
  }
  const found = readHolder(aside)?.token ?? null;
  if (found !== token) {
    renameSync(aside, file);
    return false;
  }
  rmSync(aside, { force: true });
  return true;
}

/**
 * @param {string} file
 * @param {Holder} holder
 * @param {'w' | 'wx'} flag
 * @returns {boolean} false when the lock is there already
 */
function write(file, holder, flag) {
  try {
    writeFileSync(file, `${JSON.stringify(holder)}\n`, { flag });
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false;
    throw error;
  }
}

/** @param {string} file */
function touch(file) {
  try {
    const now = new Date();
    utimesSync(file, now, now);
  } catch {
    // The folder was taken away under us; the work itself will say so.
  }
}

/** @param {string} file */
function modified(file) {
  try {
    return statSync(file).mtimeMs;
  } catch {
    return Number.NaN;
  }
}
