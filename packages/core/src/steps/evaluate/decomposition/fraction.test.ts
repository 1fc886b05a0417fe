import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { floorOf, fraction, less, nearest, numberOf, order, sum, times, wholeParts } from './fraction.ts';

const any = fc
  .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 1, max: 1e6 }))
  .map(([over, under]) => fraction(over, under));

describe('exact fractions', () => {
  it('are reduced and keep their sign above', () => {
    expect(fraction(6, -4)).toEqual({ over: -3n, under: 2n });
    expect(fraction(0, 7)).toEqual({ over: 0n, under: 1n });
    expect(() => fraction(1, 0)).toThrow(RangeError);
    expect(() => fraction(0.5)).toThrow(RangeError);
  });

  it('keep the laws of adding and multiplying, and lie beside their floating numbers', () => {
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        expect(less(sum(a, b), b)).toEqual(a);
        expect(times(a, sum(b, c))).toEqual(sum(times(a, b), times(a, c)));
        expect(numberOf(sum(a, b))).toBeCloseTo(numberOf(a) + numberOf(b), 4);
        expect(Math.sign(order(a, b))).toBe(Math.sign(numberOf(a) - numberOf(b)));
        expect(Number(floorOf(a))).toBe(Math.floor(Number(a.over) / Number(a.under)));
      }),
      { seed: 45, numRuns: 300 },
    );
  });

  it('become whole numbers that add up, each within 1 of its fraction', () => {
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 12 }), (parts) => {
        const total = nearest(sum(...parts));
        const whole = wholeParts(parts, total);
        expect(whole.reduce((all, part) => all + part, 0n)).toBe(total);
        whole.forEach((part, index) => {
          const away = less(fraction(part), parts[index] ?? fraction(0));
          expect(order(away, fraction(1))).toBeLessThan(0);
          expect(order(away, fraction(-1))).toBeGreaterThan(0);
        });
        expect(() => wholeParts(parts, total + BigInt(parts.length + 1))).toThrow(RangeError);
      }),
      { seed: 46, numRuns: 300 },
    );
  });

  it('the part that lost most by rounding down is raised first, and of equal ones the first', () => {
    const parts = [fraction(4, 10), fraction(7, 10), fraction(-1, 10)];
    expect(wholeParts(parts, 1n)).toEqual([0n, 1n, 0n]);
    expect(wholeParts([fraction(1, 2), fraction(1, 2)], 1n)).toEqual([1n, 0n]);
  });
});
