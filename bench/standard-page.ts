import { emptyTimeStudy, type StandardWish, type WorkedStandard } from '@evenhand/core/define';
import { seededRandom } from '@evenhand/core/ground/numerics';
import { emptyStudy, type Study, type TimeStudy } from '@evenhand/core/ground/study';
import { mean, quantileSorted, sampleStandardDeviation } from 'simple-statistics';

/** What the bench runs in the browser: a time study of many readings, in the worker of the page and plainly. */

export const elements = 30;
export const cycles = 10_000;
export const draws = 2000;

/** Invented readings, the same for the same seed: elements of 0.5 to 3.4 s that vary by about a tenth. */
export function manyReadings(): TimeStudy {
  const random = seededRandom(17);
  return {
    ...emptyTimeStudy({ id: 'many', name: 'Many readings' }),
    ratingError: 0.05,
    elements: Array.from({ length: elements }, (_, element) => ({
      id: `e${element}`,
      name: `element ${element + 1}`,
      work: 'worker' as const,
      readings: Array.from({ length: cycles }, (_, cycle) => ({
        cycle: cycle + 1,
        us: Math.round((500_000 + element * 100_000) * (0.8 + 0.2 * (random() + random()))),
      })),
    })),
  };
}

/** How much the page was held up for a while. */
export interface PageWaits {
  /** The longest wait between two frames. */
  readonly longestFrame: number;
  /** Tasks above 50 ms. */
  readonly longTasks: readonly number[];
}

/** Watches the frames and long tasks of the page while something runs. */
async function watched(run: () => Promise<void>): Promise<PageWaits> {
  // What went before must not be counted: its task ends, and a frame is drawn.
  await new Promise((resolve) => setTimeout(resolve, 200));
  await new Promise(requestAnimationFrame);
  const longTasks: number[] = [];
  const take = (entries: readonly PerformanceEntry[]) => {
    for (const entry of entries) longTasks.push(entry.duration);
  };
  const observer = new PerformanceObserver((list) => take(list.getEntries()));
  observer.observe({ type: 'longtask' });
  let [last, longestFrame, running] = [performance.now(), 0, true];
  const frame = () => {
    const now = performance.now();
    longestFrame = Math.max(longestFrame, now - last);
    last = now;
    if (running) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  await run();
  await new Promise(requestAnimationFrame);
  await new Promise((resolve) => setTimeout(resolve, 100));
  running = false;
  take(observer.takeRecords());
  observer.disconnect();
  return { longestFrame, longTasks };
}

/** What the meter shows when nothing runs, and when the page is held up on purpose. */
export async function controls(heldUp: number): Promise<{ idle: PageWaits; held: PageWaits }> {
  const idle = await watched(() => new Promise((resolve) => setTimeout(resolve, 2000)));
  const held = await watched(async () => {
    await new Promise((resolve) => setTimeout(resolve, 100));
    const until = performance.now() + heldUp;
    while (performance.now() < until);
  });
  return { idle, held };
}

export interface WorkerTimes extends PageWaits {
  readonly ms: readonly number[];
  readonly standard: number;
  readonly low: number;
  readonly high: number;
}

/** The client that the app has for its worker; the page of the bench gets it from the server, as the app does. */
interface Client {
  workOut(
    study: Study,
    timeStudy: TimeStudy,
    wish: StandardWish,
  ): Promise<WorkedStandard | { readonly failed: string } | undefined>;
  dispose(): void;
}

export async function inWorker(client: Client, rounds: number): Promise<WorkerTimes> {
  const study = emptyStudy('many', 'Many');
  const timeStudy = manyReadings();
  const ms: number[] = [];
  let worked: WorkedStandard | undefined;
  // The first round loads and compiles the worker; it is not counted.
  await client.workOut(study, timeStudy, { draws: 100, seed: 1 });
  const waits = await watched(async () => {
    for (let round = 0; round < rounds; round += 1) {
      const begun = performance.now();
      const answer = await client.workOut(study, timeStudy, { draws, seed: 1 });
      ms.push(performance.now() - begun);
      if (answer === undefined || 'failed' in answer) throw new Error('the worker did not answer');
      worked = answer;
    }
  });
  client.dispose();
  const { sheet, bootstrap } = worked ?? {};
  if (sheet?.standard === undefined || bootstrap === undefined) throw new Error('there is no standard');
  const { low, high } = bootstrap.interval;
  return { ...waits, ms, standard: sheet.standard.standard.standard, low, high };
}

export interface PlainTimes {
  readonly ms: number;
  readonly standard: number;
  readonly low: number;
  readonly high: number;
}

/** The same figures with a library of statistics, as one would first write it: each draw takes whole cycles anew. */
export function plainly(wanted: number): PlainTimes {
  const { elements: timed } = manyReadings();
  const times = timed.map(({ readings }) => readings.map(({ us = 0 }) => us / 1e6));
  const begun = performance.now();
  const means = times.map((list) => mean(list));
  for (const list of times) sampleStandardDeviation(list);
  const random = seededRandom(1);
  const values: number[] = [];
  for (let draw = 0; draw < wanted; draw += 1) {
    const chosen = Array.from({ length: cycles }, () => Math.floor(random() * cycles));
    let sum = 0;
    for (const list of times) sum += mean(chosen.map((cycle) => list[cycle] ?? 0));
    values.push(sum);
  }
  values.sort((a, b) => a - b);
  return {
    ms: performance.now() - begun,
    standard: means.reduce((sum, value) => sum + value, 0),
    low: quantileSorted(values, 0.025),
    high: quantileSorted(values, 0.975),
  };
}
