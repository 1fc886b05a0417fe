import { sampleOf } from '@evenhand/core/ground/numerics';
import { describe, expect, it } from 'vitest';
import { certifiedSets } from './nist-univariate.ts';

/** Decimal digits in which a computed value agrees with a certified one. */
function agreeingDigits(computed: number | undefined, certified: string): number {
  const value = Number(certified);
  const error = Math.abs(((computed ?? Number.NaN) - value) / value);
  return error === 0 ? Number.POSITIVE_INFINITY : -Math.log10(error);
}

describe('mean and standard deviation against certified values', () => {
  it.each(certifiedSets)(
    '$name: NIST StRD, univariate, to $digits digits',
    ({ values, mean, deviation, digits }) => {
      const sample = sampleOf(values);
      expect(sample.n).toBe(values.length);
      expect(agreeingDigits(sample.mean, mean)).toBeGreaterThanOrEqual(Math.max(digits, 14));
      expect(agreeingDigits(sample.deviation, deviation)).toBeGreaterThanOrEqual(digits);
    },
  );
});
