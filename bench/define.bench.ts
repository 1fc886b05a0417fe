import { fixed, printTable, quantile } from './harness.ts';
import { openBenchPage } from './page.ts';
import {
  cycles,
  draws,
  elements,
  type PageWaits,
  type PlainTimes,
  type WorkerTimes,
} from './standard-page.ts';

/** The standard of a long time study with its bootstrap: in the browser's worker, and plainly with a library of statistics. */

/** The plain way takes too long for all draws, so it makes these and is reckoned up. */
const plainDraws = 40;
/** The app is measured as it is served, with its own worker. */
const clientOfApp = '/packages/app/src/define/standard-client.ts';
/** So long the meter itself is tried, in ms. */
const heldUp = 80;
const { page, close } = await openBenchPage('standard', {
  include: ['zod', 'simple-statistics'],
  worker: { format: 'es' },
});
try {
  const inPage = <T>(call: string): Promise<T> =>
    page.evaluate(
      `Promise.all([import('/bench/standard-page.ts'), import('${clientOfApp}')]).then(([page, app]) => page.${call})`,
    );
  const { idle, held } = await inPage<{ idle: PageWaits; held: PageWaits }>(`controls(${heldUp})`);
  const worked = await inPage<WorkerTimes>('inWorker(new app.StandardClient(), 5)');
  const plain = await inPage<PlainTimes>(`plainly(${plainDraws})`);
  const median = quantile(worked.ms, 0.5);
  const whole = (plain.ms * draws) / plainDraws;
  printTable(
    `${elements} elements × ${cycles.toLocaleString('en')} cycles, ${draws.toLocaleString('en')} draws (wanted: 2 s in the worker)`,
    ['', 'ms', 'ratio', 'standard s', '95 % interval of the draws'],
    [
      [
        'worker of the page, median of 5',
        fixed(median),
        '× 1.00',
        worked.standard.toFixed(4),
        `${worked.low.toFixed(4)} to ${worked.high.toFixed(4)}`,
      ],
      [
        `simple-statistics, ${plainDraws} draws reckoned up to ${draws}`,
        fixed(whole),
        `× ${fixed(whole / median)}`,
        plain.standard.toFixed(4),
        `${plain.low.toFixed(4)} to ${plain.high.toFixed(4)}`,
      ],
    ],
  );
  console.log('(the interval of the worker carries a rating error of 5 %, the plain one none)');
  const waitRow = (name: string, { longestFrame, longTasks }: PageWaits) => [
    name,
    fixed(longestFrame),
    longTasks.length === 0 ? 'none' : longTasks.map((task) => fixed(task)).join(', '),
  ];
  printTable(
    'The page meanwhile, in ms (wanted: not held up)',
    ['', 'longest wait between two frames', 'tasks above 50'],
    [
      waitRow('nothing runs', idle),
      waitRow('the worker works, 5 times', worked),
      waitRow(`the page is held up for ${heldUp} on purpose`, held),
    ],
  );
} finally {
  await close();
}
