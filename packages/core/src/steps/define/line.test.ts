import { describe, expect, it } from 'vitest';
import { lineOf } from './line.ts';

describe('a straight line', () => {
  it('worked by hand: (1, 1), (2, 3), (3, 2) has slope 1/2, intercept 1, residual squares 3/2', () => {
    const line = lineOf([1, 2, 3], [1, 3, 2]);
    expect(line.slope).toBeCloseTo(0.5, 14);
    expect(line.intercept).toBeCloseTo(1, 14);
    expect(line.deviation).toBeCloseTo(Math.sqrt(1.5), 14);
    expect(line.explained).toBeCloseTo(0.25, 14);
    // t = 0.5 / (√1.5 / √2) with one degree of freedom: the Cauchy distribution, closed form.
    const t = 0.5 / (Math.sqrt(1.5) / Math.SQRT2);
    expect(line.chance).toBeCloseTo(1 - (2 * Math.atan(t)) / Math.PI, 10);
  });

  it('an exact line is never by chance; equal values have no chance at all', () => {
    expect(lineOf([1, 2, 3, 4], [2, 4, 6, 8])).toMatchObject({ slope: 2, chance: 0, explained: 1 });
    expect(lineOf([1, 2, 3], [5, 5, 5])).toMatchObject({ slope: 0, chance: undefined, explained: undefined });
  });

  it('refuses too few points, lists that differ, and one place', () => {
    expect(() => lineOf([1, 2], [1, 2])).toThrow(RangeError);
    expect(() => lineOf([1, 2, 3], [1, 2])).toThrow(RangeError);
    expect(() => lineOf([2, 2, 2], [1, 2, 3])).toThrow(RangeError);
  });
});
