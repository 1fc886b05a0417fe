import quantile from '@stdlib/stats-base-dists-t-quantile';

/** What a sample of readings says about what they are readings of. The unit is that of the values. */
export interface Sample {
  readonly n: number;
  readonly mean: number;
  /** Standard deviation of the sample (n − 1); undefined with fewer than two values. */
  readonly deviation: number | undefined;
  /** Deviation as a share of the mean; undefined when the mean is 0 or there are fewer than two values. */
  readonly variation: number | undefined;
  /** Two-sided confidence interval of the mean by Student's t; undefined with fewer than two values. */
  readonly interval: Interval | undefined;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
  /** 0 to 1. */
  readonly confidence: number;
}

/**
 * Mean, spread and confidence interval of independent readings.
 * @param values one or more finite numbers, in any order
 * @param confidence above 0 and below 1
 * @throws RangeError without a value, with one that is not finite, or with another confidence
 */
export function sampleOf(values: readonly number[], confidence = 0.95): Sample {
  const n = values.length;
  if (n === 0) throw new RangeError('a sample needs at least one value');
  const mean = meanOf(values);
  if (!Number.isFinite(mean))
    throw new RangeError(`the values of a sample must be finite, the mean is ${mean}`);
  if (n === 1) return { n, mean, deviation: undefined, variation: undefined, interval: undefined };
  const deviation = Math.sqrt(squaresAbout(values, mean) / (n - 1));
  const half = (studentQuantile(0.5 + confidence / 2, n - 1) * deviation) / Math.sqrt(n);
  return {
    n,
    mean,
    deviation,
    variation: mean === 0 ? undefined : deviation / Math.abs(mean),
    interval: { low: mean - half, high: mean + half, confidence },
  };
}

/** A first mean and the mean of what is left over: the rounding of a long sum does not stay in the result. */
function meanOf(values: readonly number[]): number {
  const rough = values.reduce((sum, value) => sum + value, 0) / values.length;
  const rest = values.reduce((sum, value) => sum + (value - rough), 0) / values.length;
  return rough + rest;
}

/** Sum of squares about the mean, corrected for the mean's own rounding (Chan, Golub, LeVeque 1983, from memory). */
function squaresAbout(values: readonly number[], mean: number): number {
  let [squares, rest] = [0, 0];
  for (const value of values) {
    squares += (value - mean) ** 2;
    rest += value - mean;
  }
  return Math.max(0, squares - rest ** 2 / values.length);
}

/**
 * Quantile of Student's t distribution.
 * @param p above 0 and below 1
 * @param degrees degrees of freedom, above 0
 * @throws RangeError outside these ranges
 */
export function studentQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability lies between 0 and 1, got ${p}`);
  if (!(degrees > 0)) throw new RangeError(`degrees of freedom are above 0, got ${degrees}`);
  return quantile(p, degrees);
}

/**
 * The value below which a share of the readings lies: between two readings it goes in a straight line from one to the
 * next (type 7 of Hyndman and Fan 1996, the default of R and NumPy).
 * @param sorted one or more numbers in rising order
 * @param share 0 to 1
 */
export function quantileOf(sorted: readonly number[], share: number): number {
  const last = sorted.length - 1;
  const at = Math.min(Math.max(share, 0), 1) * last;
  const low = sorted[Math.floor(at)];
  const high = sorted[Math.ceil(at)];
  if (low === undefined || high === undefined) throw new RangeError('a quantile needs at least one value');
  return low + (high - low) * (at - Math.floor(at));
}
