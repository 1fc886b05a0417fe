import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { ensureBuilt, isBuilt } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { withLock } from './lock.mjs';
import { installKey, installStamp, readStamp } from './stamps.mjs';

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
const PURPOSES = ['start', 'test', 'build'];

/** @param {string} line */
const say = (line) => process.stderr.write(`${line}\n`);

/**
 * Installs and builds what is missing or stale. Says what it does on stderr, so that results on stdout stay clean.
 * @param {string} [root]
 * @returns {Promise<string | null>} null when all is ready, or what went wrong in words
 */
export async function ensureReady(root = ROOT) {
  if (readStamp(installStamp(root)) === installKey(root) && isBuilt(root)) return null;
  return withLock(
    path.join(root, '.setup.lock'),
    async (hold) => {
      const tools = { log: say, echo: (/** @type {string} */ text) => process.stderr.write(text), hold };
      return (await ensureInstalled(root, tools)) ?? (await ensureBuilt(root, tools));
    },
    { log: say, what: 'set-up' },
  );
}

/**
 * @param {readonly string[]} args
 * @returns {Promise<void>}
 */
export async function main(args) {
  const purpose = args.find((arg) => arg.startsWith('--for='))?.slice('--for='.length) ?? 'build';
  if (!PURPOSES.includes(purpose)) {
    say(`setup: --for=${purpose} is not known; use ${PURPOSES.map((p) => `--for=${p}`).join(', ')}.`);
    process.exit(2);
  }
  const trouble = await ensureReady().catch(
    (/** @type {Error} */ error) => `The set-up stopped: ${error.message}`,
  );
  if (trouble !== null) {
    say(`\n${trouble}`);
    process.exit(1);
  }
}
