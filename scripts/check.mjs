// `npm run check`: everything that is judged without running a test. One line for each check, with its time.
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { ensureReady, ROOT } from './setup/ready.mjs';
import { run, withColours } from './setup/run.mjs';

/**
 * @typedef {{ name: string, script: string, args: string[], tsx?: boolean }} Check
 * @typedef {{ name: string, ok: boolean, ms: number, output: string }} Verdict
 */

/** @param {string} name */
const installed = (name) => path.join('node_modules', ...name.split('/'));

/** @returns {Check[]} */
function typeChecks() {
  const packages = readdirSync(path.join(ROOT, 'packages')).filter((name) =>
    existsSync(path.join(ROOT, 'packages', name, 'tsconfig.json')),
  );
  const projects = [
    ...packages.map((name) => ({ name, file: `packages/${name}/tsconfig.json` })),
    { name: 'tests and scripts', file: 'tsconfig.tests.json' },
  ];
  return projects.map(({ name, file }) => ({
    name: `types of ${name}`,
    script: path.join(installed('typescript-native'), 'bin', 'tsc'),
    args: [
      '-p',
      file,
      '--incremental',
      '--tsBuildInfoFile',
      `.cache/types/${name.replaceAll(' ', '-')}.json`,
    ],
  }));
}

/** Checks that other parts of the house bring along: every tools/*.check.mjs and tools/*.check.ts. */
function broughtChecks() {
  return readdirSync(path.join(ROOT, 'tools'))
    .filter((file) => /\.check\.(mjs|ts)$/.test(file))
    .sort()
    .map((file) => ({
      name: file.replace(/\.check\.(mjs|ts)$/, '').replaceAll('-', ' '),
      script: `tools/${file}`,
      args: [],
      tsx: true,
    }));
}

/** @returns {Check[]} */
export function allChecks() {
  return [
    ...typeChecks(),
    { name: 'layers', script: 'tools/layers.mjs', args: [] },
    {
      name: 'lint and format',
      script: path.join(installed('@biomejs/biome'), 'bin', 'biome'),
      args: ['ci', process.stdout.isTTY ? '--colors=force' : '--colors=off', '.'],
    },
    { name: 'paths quoted in the documents', script: 'tools/docs-paths.mjs', args: [] },
    { name: 'length of files', script: 'tools/lengths.mjs', args: [] },
    ...broughtChecks(),
  ];
}

/**
 * Runs the checks, as many at once as there are processors, and tells each verdict as it comes.
 * @param {(verdict: Verdict) => void} tell
 * @returns {Promise<Verdict[]>}
 */
export async function runChecks(tell) {
  mkdirSync(path.join(ROOT, '.cache', 'types'), { recursive: true });
  const waiting = allChecks();
  /** @type {Verdict[]} */
  const verdicts = [];
  const work = async () => {
    for (let check = waiting.shift(); check; check = waiting.shift()) {
      const loader = check.tsx ? ['--import', 'tsx'] : [];
      const { code, output, ms } = await run(process.execPath, [...loader, check.script, ...check.args], {
        cwd: ROOT,
        env: withColours(),
      });
      const verdict = { name: check.name, ok: code === 0, ms, output };
      verdicts.push(verdict);
      tell(verdict);
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, os.availableParallelism()) }, work));
  return verdicts;
}

/** @param {Verdict} verdict */
export function printVerdict({ name, ok, ms, output }) {
  if (!ok) console.log(`\n${output.trimEnd()}`);
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${name} (${(ms / 1000).toFixed(1)} s)`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const trouble = await ensureReady();
  if (trouble !== null) {
    console.error(`\n${trouble}`);
    process.exit(1);
  }
  const verdicts = await runChecks(printVerdict);
  const failed = verdicts.filter((verdict) => !verdict.ok);
  console.log(`${verdicts.length - failed.length} checks passed, ${failed.length} failed`);
  process.exitCode = failed.length === 0 ? 0 : 1;
}
