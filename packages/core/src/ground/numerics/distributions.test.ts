import { describe, expect, it } from 'vitest';
import {
  fShare,
  seededRandom,
  standardNormalQuantile,
  standardNormalShare,
  studentQuantile,
  studentShare,
} from './index.ts';

describe('distributions against printed tables', () => {
  it.each([
    [0.9, 1.28155],
    [0.95, 1.64485],
    [0.975, 1.95996],
    [0.995, 2.57583],
  ])(
    'normal quantile at %d is %d (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, from memory)',
    (p, value) => {
      expect(standardNormalQuantile(p)).toBeCloseTo(value, 4);
      expect(standardNormalShare(value)).toBeCloseTo(p, 5);
    },
  );

  it.each([
    [4.9646, 1, 10],
    [3.4928, 2, 20],
  ])(
    'F of %d with %d and %d degrees of freedom leaves 5 %% (NIST/SEMATECH e-Handbook 1.3.6.7.3, from memory)',
    (value, above, below) => {
      expect(1 - fShare(value, above, below)).toBeCloseTo(0.05, 4);
    },
  );

  it('an F of one and n degrees is the square of t of n degrees', () => {
    for (const n of [3, 10, 30]) {
      const t = studentQuantile(0.975, n);
      expect(fShare(t * t, 1, n)).toBeCloseTo(0.95, 10);
      expect(studentShare(t, n)).toBeCloseTo(0.975, 10);
    }
  });

  it('refuses what is no probability and no degree of freedom', () => {
    for (const wrong of [0, 1, Number.NaN]) expect(() => standardNormalQuantile(wrong)).toThrow(RangeError);
    expect(() => fShare(1, 0, 3)).toThrow(RangeError);
    expect(() => studentShare(Number.NaN, 3)).toThrow(RangeError);
    expect(() => standardNormalShare(Number.NaN)).toThrow(RangeError);
  });
});

describe('numbers by chance from a seed', () => {
  it('are the same for the same seed, others for another, and spread evenly', () => {
    const draw = (seed: number, count: number) => {
      const random = seededRandom(seed);
      return Array.from({ length: count }, random);
    };
    expect(draw(7, 5)).toEqual(draw(7, 5));
    expect(draw(7, 5)).not.toEqual(draw(8, 5));
    const many = draw(1, 100_000);
    expect(many.every((value) => value >= 0 && value < 1)).toBe(true);
    // Mean 1/2 with a standard error of 0.0009; each tenth holds 10,000 with a standard deviation of 95.
    expect(Math.abs(many.reduce((sum, value) => sum + value, 0) / many.length - 0.5)).toBeLessThan(0.005);
    const tenths = Array.from(
      { length: 10 },
      (_, tenth) => many.filter((value) => Math.floor(value * 10) === tenth).length,
    );
    for (const count of tenths) expect(Math.abs(count - 10_000)).toBeLessThan(500);
    expect(() => seededRandom(0.5)).toThrow(RangeError);
  });
});
