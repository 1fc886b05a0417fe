import fCdf from '@stdlib/stats-base-dists-f-cdf';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';

/**
 * Quantile of the standard normal distribution.
 * @param p above 0 and below 1
 * @throws RangeError outside
 */
export function standardNormalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability lies between 0 and 1, got ${p}`);
  return normalQuantile(p, 0, 1);
}

/** Share of the standard normal distribution at or below a value; 0 to 1. */
export function standardNormalShare(value: number): number {
  if (Number.isNaN(value)) throw new RangeError('the value is not a number');
  return normalCdf(value, 0, 1);
}

/**
 * Share of Student's t distribution at or below a value; 0 to 1.
 * @param degrees degrees of freedom, above 0
 */
export function studentShare(value: number, degrees: number): number {
  if (Number.isNaN(value) || !(degrees > 0))
    throw new RangeError(`no t distribution at ${value} with ${degrees} degrees of freedom`);
  return tCdf(value, degrees);
}

/**
 * Share of the F distribution at or below a value; 0 to 1.
 * @param above degrees of freedom of the numerator, above 0
 * @param below degrees of freedom of the denominator, above 0
 */
export function fShare(value: number, above: number, below: number): number {
  if (Number.isNaN(value) || !(above > 0 && below > 0)) {
    throw new RangeError(`no F distribution at ${value} with ${above} and ${below} degrees of freedom`);
  }
  return fCdf(value, above, below);
}
