// `npm test`: checks, then every test, then a plain count. What was not run is named.
import { existsSync, mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { findBrowser } from './browser/find.mjs';
import { printVerdict, runChecks } from './check.mjs';
import { withLock } from './setup/lock.mjs';
import { ensureReady, ROOT } from './setup/ready.mjs';
import { run, withColours } from './setup/run.mjs';
import { closingLine, countReport } from './tests/count.mjs';
import { browserTestFiles } from './tests/files.mjs';

/** A run that hangs is ended, so that it still closes with a count. */
const LIMIT_MS = 18 * 60_000;
const REPORT = path.join(ROOT, '.cache', 'test-report.json');
const browserRequired = process.env.EVENHAND_REQUIRE_BROWSER === '1';

/** @typedef {import('./tests/count.mjs').Count} Count */

/**
 * The real films the tests may use: a folder outside the project, named by EVENHAND_FILMS.
 * @returns {{ folder: string | null, trouble: string | null }}
 */
function films() {
  const named = process.env.EVENHAND_FILMS;
  if (!named) return { folder: null, trouble: null };
  const folder = path.resolve(named);
  if (existsSync(folder) && statSync(folder).isDirectory()) return { folder, trouble: null };
  return { folder: null, trouble: `EVENHAND_FILMS names ${named}, which is not a folder` };
}

/**
 * @param {string | null} browser
 * @param {string | null} folder
 * @param {readonly string[]} filters
 * @returns {Promise<Count>}
 */
async function runTests(browser, folder, filters) {
  mkdirSync(path.dirname(REPORT), { recursive: true });
  rmSync(REPORT, { force: true });
  const vitest = path.join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
  const reporters = [
    '--reporter=default',
    `--reporter=${path.join(ROOT, 'scripts', 'tests', 'reporter.mjs')}`,
  ];
  const { EVENHAND_BROWSER: _, EVENHAND_FILMS: __, ...rest } = withColours();
  const env = {
    ...rest,
    NODE_ENV: 'test',
    EVENHAND_TEST_REPORT: REPORT,
    ...(browser ? { EVENHAND_BROWSER: browser } : {}),
    ...(folder ? { EVENHAND_FILMS: folder } : {}),
  };
  const { code } = await run(process.execPath, [vitest, 'run', ...reporters, ...filters], {
    cwd: ROOT,
    env,
    limitMs: LIMIT_MS,
    echo: (text) => process.stdout.write(text),
  });
  const report = existsSync(REPORT) ? JSON.parse(readFileSync(REPORT, 'utf8')) : null;
  return countReport(report, code, (file) => path.relative(ROOT, file));
}

/**
 * Names the browser tests that could not be run, and counts them: each file as one.
 * @param {Count} count
 * @param {string} reason
 * @param {readonly string[]} filters
 */
function tellNotRun(count, reason, filters) {
  const asked = (/** @type {string} */ file) =>
    filters.length === 0 || filters.some((part) => file.includes(part));
  const files = browserTestFiles(ROOT).filter(asked);
  if (files.length === 0) return;
  console.log(`\nNOT RUN, ${reason}:`);
  for (const file of files) console.log(`  NOT RUN ${file}`);
  console.log('To run them: npm run browser   (it brings a browser for the tests), then npm test');
  count.skipped += files.length;
  if (browserRequired) {
    count.failed += 1;
    count.failures.push(`browser tests are required here, and ${reason}`);
  }
}

/**
 * @param {string} title
 * @param {readonly string[]} names
 */
function list(title, names) {
  if (names.length === 0) return;
  console.log(`\n${title}`);
  for (const name of names) console.log(`  ${name}`);
}

/** @param {readonly string[]} filters */
async function testEverything(filters) {
  const { folder, trouble } = films();
  const found = findBrowser();
  console.log(found.browser ? `browser: ${found.browser}` : `browser: none, ${found.reason}`);
  console.log(folder ? `real films: ${folder}` : 'real films: none (EVENHAND_FILMS is not set)');
  const verdicts = filters.length > 0 ? [] : await runChecks(printVerdict);
  const count = await runTests(found.browser, folder, filters);
  for (const { name, ok } of verdicts) {
    if (ok) count.passed += 1;
    else {
      count.failed += 1;
      count.failures.push(`check: ${name}`);
    }
  }
  if (trouble) {
    count.failed += 1;
    count.failures.push(trouble);
  }
  if (found.browser === null) tellNotRun(count, found.reason, filters);
  list(
    folder ? 'Skipped:' : 'Skipped (those on real films run where EVENHAND_FILMS names their folder):',
    count.skips,
  );
  list('Passed only when tried a second time:', count.again);
  list('Failed:', count.failures);
  return count;
}

const trouble = await ensureReady();
if (trouble !== null) {
  console.error(`\n${trouble}\n`);
  console.log(closingLine({ passed: 0, failed: 1, skipped: 0 }));
  process.exitCode = 1;
} else {
  const count = await withLock(path.join(ROOT, '.test.lock'), () => testEverything(process.argv.slice(2)), {
    log: console.log,
    what: 'test run',
  });
  console.log(`\n${closingLine(count)}`);
  process.exitCode = count.failed === 0 ? 0 : 1;
}
