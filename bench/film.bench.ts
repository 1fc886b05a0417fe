import type { IndexTimes, PlayTimes, StepTimes } from './film-page.ts';
import { fixed, printTable, quantile } from './harness.ts';
import { openBenchPage } from './page.ts';

/** Frame steps against seeking a plain `<video>`, playing both ways, and the index of a long film, in a real browser. */

const { inPage, close } = await openBenchPage('film', { include: ['mediabunny', 'zod'] });
try {
  printSteps(await inPage<StepTimes[]>('stepThrough'));
  printPlaying(await inPage<PlayTimes[]>('playThrough'));
  printIndexes(await inPage<IndexTimes[]>('indexLongFilm'));
} finally {
  await close();
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
