import { existsSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { run } from './run.mjs';
import { buildKey, buildStamp, readStamp, removeStamp, writeStamp } from './stamps.mjs';

/** What a build must have made to count as one. */
const MADE = ['dist/app/index.html', 'dist/cli/evenhand.js'];
const PARTS = [
  { name: 'app', config: 'vite.app.config.ts' },
  { name: 'server and command line', config: 'vite.cli.config.ts' },
];

/** @param {string} root */
export function isBuilt(root) {
  return (
    readStamp(buildStamp(root)) === buildKey(root) && MADE.every((file) => existsSync(path.join(root, file)))
  );
}

/**
 * Builds the app and the command line (which holds the server) into dist/, unless they are there and fresh.
 * @param {string} root
 * @param {{ log: (line: string) => void, echo: (text: string) => void, hold: import('./lock.mjs').Hold }} options
 * @returns {Promise<string | null>} null, or what went wrong in words
 */
export async function ensureBuilt(root, { log, echo, hold }) {
  if (isBuilt(root)) return null;
  const key = buildKey(root);
  removeStamp(buildStamp(root));
  log('Building …');
  const begun = performance.now();
  const vite = path.join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  // One after the other, so that the lock always names the one child that still works.
  for (const { name, config } of PARTS) {
    const { code, output } = await run(
      process.execPath,
      [vite, 'build', '--config', config, '--logLevel', 'warn'],
      {
        cwd: root,
        env: { ...process.env, NODE_ENV: 'production' },
        onChild: hold.setChild,
      },
    );
    if (code !== 0) {
      echo(output);
      return `The ${name} could not be built; the lines above say where.`;
    }
  }
  for (const file of MADE) {
    if (!existsSync(path.join(root, file))) return `The build ended without making ${file}.`;
  }
  writeStamp(buildStamp(root), key);
  log(`Built in ${((performance.now() - begun) / 1000).toFixed(1)} s.`);
  return null;
}
