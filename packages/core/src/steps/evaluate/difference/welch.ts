import { type Interval, type Sample, studentQuantile, studentShare } from '../../../ground/numerics/index.ts';

/** The difference of two means whose spreads need not be equal. */
export interface MeanDifference {
  /** First mean less second mean. */
  readonly value: number;
  /** Standard error of the value. */
  readonly error: number;
  /** Degrees of freedom by Welch and Satterthwaite, not rounded. */
  readonly degrees: number;
  readonly interval: Interval;
  /** Share of the studies in which chance alone gives a difference as far from 0, 0 to 1. */
  readonly chance: number;
}

type Spread = Pick<Sample, 'n' | 'mean' | 'deviation'>;

/**
 * Welch's interval and test for two independent samples (B. L. Welch 1947; degrees of freedom by Satterthwaite 1946).
 * Undefined when a sample has one value only, or when neither has any spread.
 * @param confidence above 0 and below 1
 */
export function meanDifference(
  first: Spread,
  second: Spread,
  confidence: number,
): MeanDifference | undefined {
  const { error, degrees } = standardError(first, second);
  if (error === 0 || Number.isNaN(degrees)) return undefined;
  const value = first.mean - second.mean;
  const half = studentQuantile(0.5 + confidence / 2, degrees) * error;
  return {
    value,
    error,
    degrees,
    interval: { low: value - half, high: value + half, confidence },
    chance: Math.min(1, 2 * studentShare(-Math.abs(value / error), degrees)),
  };
}

/** Error 0 when there is no spread, or too few values to know of any. */
export function standardError(
  first: Pick<Sample, 'n' | 'deviation'>,
  second: Pick<Sample, 'n' | 'deviation'>,
): { readonly error: number; readonly degrees: number } {
  if (first.deviation === undefined || second.deviation === undefined)
    return { error: 0, degrees: Number.NaN };
  const [a, b] = [first.deviation ** 2 / first.n, second.deviation ** 2 / second.n];
  const below = a ** 2 / (first.n - 1) + b ** 2 / (second.n - 1);
  return { error: Math.sqrt(a + b), degrees: below > 0 ? (a + b) ** 2 / below : Number.NaN };
}
