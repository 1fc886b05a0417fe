import { type Sample, standardNormalQuantile, studentQuantile } from '../../../ground/numerics/index.ts';
import { standardError } from './welch.ts';

/** What it would take to settle a difference that is still open. */
export interface MoreCycles {
  /** Further cycles of each method; undefined when it would take more than `most`. */
  readonly ofEach: number | undefined;
  /** Share of such studies that would then settle it, if difference and spread are as they were seen. */
  readonly power: number;
  readonly most: number;
  readonly words: string;
}

const most = 100_000;

/**
 * The least number of further cycles of each method after which the interval would leave out “no difference” in a
 * share `power` of such studies: |difference| ≥ (t + z) · standard error, with t at the confidence, z at the power, and
 * the difference and both spreads as they were seen.
 * @param difference the difference of the two means, in the unit of the deviations
 * @param power 0.5 to below 1
 */
export function moreCycles(
  difference: number,
  before: Pick<Sample, 'n' | 'deviation'>,
  after: Pick<Sample, 'n' | 'deviation'>,
  { confidence, power }: { readonly confidence: number; readonly power: number },
): MoreCycles {
  const z = standardNormalQuantile(power);
  const enough = (more: number) => {
    const { error, degrees } = standardError(
      { ...before, n: before.n + more },
      { ...after, n: after.n + more },
    );
    return Math.abs(difference) >= (studentQuantile(0.5 + confidence / 2, degrees) + z) * error;
  };
  const ofEach = leastThat(enough);
  return { ofEach, power, most, words: moreWords(ofEach, power) };
}

/** What is enough stays enough with more, so halving finds the least. */
function leastThat(enough: (more: number) => boolean): number | undefined {
  let high = 1;
  while (!enough(high)) {
    if (high >= most) return undefined;
    high = Math.min(most, high * 2);
  }
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const half = (low + high) >>> 1;
    if (enough(half)) high = half;
    else low = half;
  }
  return high;
}

function moreWords(ofEach: number | undefined, power: number): string {
  if (ofEach === undefined) {
    return 'At the difference and the spread seen so far, not even 100,000 further cycles of each would settle it: take the two as equally long.';
  }
  const cycles = ofEach === 1 ? '1 further cycle' : `${ofEach} further cycles`;
  return `If difference and spread stay as they are, ${cycles} of each method would settle it in ${Math.round(power * 100)} of 100 such studies.`;
}
