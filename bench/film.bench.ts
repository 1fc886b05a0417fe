import path from 'node:path';
import process from 'node:process';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';
import type { IndexTimes, PlayTimes, StepTimes } from './film-page.ts';
import { fixed, printTable, quantile } from './harness.ts';

/** Frame steps against seeking a plain `<video>`, playing both ways, and the index of a long film, in a real browser. */

const executablePath = process.env.EVENHAND_BROWSER;
if (executablePath === undefined) {
  console.log('No browser was found, so nothing was measured. Bring one with: npm run browser');
  process.exit(0);
}

const root = path.resolve(import.meta.dirname, '..');
const server = await createServer({
  root,
  configFile: false,
  logLevel: 'error',
  appType: 'mpa',
  server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
  optimizeDeps: { include: ['mediabunny', 'zod'], entries: ['bench/film-page.ts'] },
});
await server.listen();
const browser = await chromium.launch({
  executablePath,
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
  ],
});
try {
  const page = await browser.newPage();
  await page.goto(new URL('/bench/film.html', server.resolvedUrls?.local[0]).href);
  printSteps(await inPage<StepTimes[]>('stepThrough'));
  printPlaying(await inPage<PlayTimes[]>('playThrough'));
  printIndexes(await inPage<IndexTimes[]>('indexLongFilm'));

  function inPage<T>(name: string): Promise<T> {
    return page.evaluate(`import('/bench/film-page.ts').then((page) => page[${JSON.stringify(name)}]())`);
  }
} finally {
  await browser.close();
  await server.close();
}

function printSteps(all: readonly StepTimes[]): void {
  for (const way of ['forward', 'backward', 'jump'] as const) {
    const rows = all.filter((times) => times.way === way);
    const base = quantile(rows[0]?.ms ?? [], 0.95);
    printTable(
      way === 'jump' ? 'Jump to a frame, 1080p H.264' : `Step one frame ${way}, 1080p H.264`,
      ['', 'median ms', 'p95 ms', 'p95 ratio', 'right frames'],
      rows.map(({ reader, ms, right }) => [
        reader,
        fixed(quantile(ms, 0.5)),
        fixed(quantile(ms, 0.95)),
        `× ${fixed(quantile(ms, 0.95) / base)}`,
        `${right} of ${ms.length}`,
      ]),
    );
  }
}

function printPlaying(all: readonly PlayTimes[]): void {
  printTable(
    'Playing, 1080p H.264 at 30 frames a second',
    ['', 'shown a second', 'due', 'share'],
    all.map(({ speed, shown, due }) => [
      `${speed > 0 ? 'forward' : 'backward'} × ${Math.abs(speed)}`,
      fixed(shown),
      fixed(due),
      fixed(shown / due),
    ]),
  );
}

function printIndexes(all: readonly IndexTimes[]): void {
  printTable(
    'Index of a film of 30 minutes, without decoding',
    ['', 'frames', 'MB', 'median ms', 'decoding it all, ms', 'ratio'],
    all.map(({ container, frames, indexMs, decodeMs, megabytes }) => [
      container,
      String(frames),
      fixed(megabytes),
      fixed(quantile(indexMs, 0.5)),
      fixed(decodeMs),
      `× ${fixed(decodeMs / quantile(indexMs, 0.5))}`,
    ]),
  );
}
