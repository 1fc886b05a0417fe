import { type Interval, quantileOf, seededRandom } from '../../../ground/numerics/index.ts';
import { type Orders, scheduleOf } from '../compose/index.ts';
import { drawTimes, predictedConfidence, type WorkTimes } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { bothHandsSlower, shareOfBothAtWork, slowedBy } from './both-at-work.ts';

export interface PeriodInterval {
  /** Middle of the draws, microseconds a cycle. */
  readonly likely: number;
  readonly interval: Interval;
  readonly draws: number;
  readonly seed: number;
  readonly words: string;
}

/** Very large works take long to draw; for them fewer draws must do. */
function usualDraws({ steps }: Work): number {
  return steps.length > 100 ? 120 : 300;
}

/**
 * How long a cycle of these orders takes, with what is not known of the times: every time is drawn anew, the pace for all
 * together, and the orders are kept. Undefined when the orders cannot be kept at all.
 */
export function periodInterval(
  work: Work,
  times: WorkTimes,
  orders: Orders,
  { draws = usualDraws(work), seed = 1 }: { readonly draws?: number; readonly seed?: number } = {},
): PeriodInterval | undefined {
  const periods: number[] = [];
  const random = seededRandom(seed ^ 0x5bd1e995);
  const { least, most } = bothHandsSlower;
  for (let draw = 0; draw < draws; draw += 1) {
    const slower = least + (most - least) * random();
    const instance = instanceOf(work, drawTimes(times, seed + 7919 * draw));
    const schedule = scheduleOf(instance, orders);
    if (schedule === undefined) return undefined;
    periods.push(schedule.period * slowedBy(shareOfBothAtWork(work, instance, schedule), slower));
  }
  periods.sort((a, b) => a - b);
  const tail = (1 - predictedConfidence) / 2;
  return {
    likely: Math.round(quantileOf(periods, 0.5)),
    interval: {
      low: Math.round(quantileOf(periods, tail)),
      high: Math.round(quantileOf(periods, 1 - tail)),
      confidence: predictedConfidence,
    },
    draws,
    seed,
    words: `${draws} draws of all times from seed ${seed}, the pace drawn for all together and the order kept; while both hands work, up to ${Math.round((most - 1) * 100)} % slower than one alone.`,
  };
}
