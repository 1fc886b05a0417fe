import { quantileOf, sampleOf } from '../../../ground/numerics/index.ts';
import type { Spread } from './variation-types.ts';

/** @param times one or more, in any order: the order does not change a digit */
export function spreadOf(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  return {
    sample: sampleOf(sorted),
    least: quantileOf(sorted, 0),
    lowerQuartile: quantileOf(sorted, 0.25),
    median: quantileOf(sorted, 0.5),
    upperQuartile: quantileOf(sorted, 0.75),
    most: quantileOf(sorted, 1),
  };
}
