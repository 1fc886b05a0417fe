// `npm run bench [-- name]`: runs bench/*.bench.ts one after another and prints their tables.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { findBrowser } from './browser/find.mjs';
import { ensureReady, ROOT } from './setup/ready.mjs';
import { run } from './setup/run.mjs';

const trouble = await ensureReady();
if (trouble !== null) {
  console.error(`\n${trouble}`);
  process.exit(1);
}
const wanted = process.argv.slice(2);
const all = readdirSync(path.join(ROOT, 'bench'))
  .filter((file) => file.endsWith('.bench.ts'))
  .sort();
const chosen = all.filter((file) => wanted.length === 0 || wanted.some((name) => file.includes(name)));
if (chosen.length === 0) {
  console.error(
    `There is no benchmark of that name. There are: ${all.map((file) => file.replace('.bench.ts', '')).join(', ')}.`,
  );
  process.exit(2);
}
const { browser } = findBrowser();
const env = { ...process.env, ...(browser ? { EVENHAND_BROWSER: browser } : {}) };
for (const file of chosen) {
  console.log(`\n${file.replace('.bench.ts', '')}`);
  const args = ['--import', 'tsx', '--expose-gc', `bench/${file}`];
  const { code } = await run(process.execPath, args, {
    cwd: ROOT,
    env,
    echo: (text) => process.stdout.write(text),
  });
  if (code !== 0) {
    console.error(`${file} stopped with exit code ${code}.`);
    process.exitCode = 1;
  }
}
