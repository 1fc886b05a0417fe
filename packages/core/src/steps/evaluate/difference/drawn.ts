import { type Interval, quantileOf, type Random, seededRandom } from '../../../ground/numerics/index.ts';

/** What comes out when the cycles are drawn again and again from those seen. */
export interface DrawnDifference {
  /** Mean before less mean after, microseconds a unit. */
  readonly saved: Interval;
  /** Mean after ÷ mean before. */
  readonly ratio: Interval;
  /** Share of the draws in which the mean after is the shorter one, 0 to 1. */
  readonly shorter: number;
  readonly draws: number;
  readonly seed: number;
}

/**
 * A bootstrap of both samples, each drawn with replacement to its own size; intervals lie between two quantiles of the
 * draws. It supposes nothing about the shape of the times, but is rather too narrow with fewer than about ten cycles.
 * The same seed gives the same draws.
 * @param before,after two or more times above 0
 */
export function drawnDifference(
  before: readonly number[],
  after: readonly number[],
  { confidence, draws, seed }: { readonly confidence: number; readonly draws: number; readonly seed: number },
): DrawnDifference {
  const random = seededRandom(seed);
  const saved: number[] = [];
  const ratio: number[] = [];
  let shorter = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const [first, second] = [drawnMean(before, random), drawnMean(after, random)];
    saved.push(first - second);
    ratio.push(second / first);
    if (second < first) shorter += 1;
  }
  return {
    saved: middle(saved, confidence),
    ratio: middle(ratio, confidence),
    shorter: shorter / draws,
    draws,
    seed,
  };
}

function drawnMean(times: readonly number[], random: Random): number {
  let sum = 0;
  for (let count = 0; count < times.length; count += 1) {
    sum += times[Math.floor(random() * times.length)] as number;
  }
  return sum / times.length;
}

function middle(values: readonly number[], confidence: number): Interval {
  const sorted = Array.from(Float64Array.from(values).sort());
  const tail = (1 - confidence) / 2;
  return { low: quantileOf(sorted, tail), high: quantileOf(sorted, 1 - tail), confidence };
}
