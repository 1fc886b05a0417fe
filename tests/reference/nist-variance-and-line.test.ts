import { lineOf, varianceBetween } from '@evenhand/core/define';
import { describe, expect, it } from 'vitest';
import { told } from './check.ts';
import { certifiedAnova } from './nist-anova.ts';
import { norris } from './nist-line.ts';

/** Decimal digits in which a computed value agrees with a certified one. */
function agreeingDigits(computed: number | undefined, certified: string): number {
  const value = Number(certified);
  const error = Math.abs(((computed ?? Number.NaN) - value) / value);
  return error === 0 ? Number.POSITIVE_INFINITY : -Math.log10(error);
}

describe('one-way analysis of variance against certified values', () => {
  it.each(certifiedAnova)('$name: NIST StRD, analysis of variance, to $digits digits', (set) => {
    const groups = set.groups.map((times, index) => ({ name: `group ${index + 1}`, times }));
    const { between, within, ratio, explained, deviation } = told(varianceBetween(groups, 'group'));
    expect(set.groups.flat()).toHaveLength(between.degrees + within.degrees + 1);
    expect(between.degrees).toBe(set.between.degrees);
    expect(within.degrees).toBe(set.within.degrees);
    const pairs: readonly (readonly [number | undefined, string])[] = [
      [between.sum, set.between.sum],
      [between.mean, set.between.mean],
      [within.sum, set.within.sum],
      [within.mean, set.within.mean],
      [ratio, set.ratio],
      [explained, set.explained],
      [deviation, set.deviation],
    ];
    for (const [computed, certified] of pairs) {
      expect(agreeingDigits(computed, certified)).toBeGreaterThanOrEqual(set.digits);
    }
  });

  it('all eleven sets run', () => expect(certifiedAnova).toHaveLength(11));
});

describe('a straight line against certified values', () => {
  it('Norris: NIST StRD, linear regression, to 12 digits (errors 13)', () => {
    const line = lineOf(norris.xs, norris.ys);
    expect(agreeingDigits(line.slope, norris.slope)).toBeGreaterThanOrEqual(13);
    expect(agreeingDigits(line.intercept, norris.intercept)).toBeGreaterThanOrEqual(12);
    expect(agreeingDigits(line.slopeError, norris.slopeError)).toBeGreaterThanOrEqual(13);
    expect(agreeingDigits(line.interceptError, norris.interceptError)).toBeGreaterThanOrEqual(13);
    expect(agreeingDigits(line.deviation, norris.deviation)).toBeGreaterThanOrEqual(13);
    expect(agreeingDigits(line.explained, norris.explained)).toBeGreaterThanOrEqual(13);
    expect(agreeingDigits((line.slope / line.slopeError) ** 2, norris.ratio)).toBeGreaterThanOrEqual(12);
  });
});
