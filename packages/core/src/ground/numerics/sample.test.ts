import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantileOf, sampleOf, studentQuantile } from './index.ts';

/**
 * Upper critical values of Student's t: degrees of freedom, then those exceeded with probability 0.05, 0.025, 0.005.
 * H. Quené, Quantitative Methods and Statistics, appendix C, https://hugoquene.github.io/QMS-EN/app-criticaltvalues.html
 * (seen); the same figures stand in the table of the NIST/SEMATECH e-Handbook of Statistical Methods (seen in a copy).
 */
const printed: readonly (readonly [degrees: number, p05: number, p025: number, p005: number])[] = [
  [1, 6.314, 12.706, 63.657],
  [2, 2.92, 4.303, 9.925],
  [3, 2.353, 3.182, 5.841],
  [4, 2.132, 2.776, 4.604],
  [5, 2.015, 2.571, 4.032],
  [6, 1.943, 2.447, 3.707],
  [7, 1.895, 2.365, 3.499],
  [8, 1.86, 2.306, 3.355],
  [9, 1.833, 2.262, 3.25],
  [10, 1.812, 2.228, 3.169],
  [15, 1.753, 2.131, 2.947],
  [20, 1.725, 2.086, 2.845],
  [30, 1.697, 2.042, 2.75],
  [40, 1.684, 2.021, 2.704],
];

describe("quantiles of Student's t", () => {
  it.each(printed)(
    '%i degrees of freedom, to three decimals (Quené, appendix C; NIST/SEMATECH)',
    (degrees, ...row) => {
      const computed = [0.95, 0.975, 0.995].map((p) => studentQuantile(p, degrees));
      expect(computed.map((value) => Math.round(value * 1000) / 1000)).toEqual(row);
    },
  );

  it('are the same to both sides, and those of the Cauchy distribution with one degree (tan, closed form)', () => {
    for (const p of [0.6, 0.75, 0.9, 0.999]) {
      expect(studentQuantile(1 - p, 7)).toBeCloseTo(-studentQuantile(p, 7), 10);
      expect(studentQuantile(p, 1)).toBeCloseTo(Math.tan(Math.PI * (p - 0.5)), 9);
    }
  });

  it('refuse a probability or degrees of freedom that cannot be', () => {
    for (const p of [0, 1, -0.1, Number.NaN]) expect(() => studentQuantile(p, 5)).toThrow(RangeError);
    for (const degrees of [0, -1, Number.NaN])
      expect(() => studentQuantile(0.9, degrees)).toThrow(RangeError);
  });
});

describe('a sample', () => {
  it('worked by hand: 2, 4, 4, 4, 6 has mean 4, deviation √2, variation √2/4, and 4 ± 2.776·√2/√5', () => {
    const { n, mean, deviation, variation, interval } = sampleOf([2, 4, 4, 4, 6]);
    expect([n, mean]).toEqual([5, 4]);
    expect(deviation).toBeCloseTo(Math.SQRT2, 12);
    expect(variation).toBeCloseTo(Math.SQRT2 / 4, 12);
    const half = (2.776 * Math.SQRT2) / Math.sqrt(5);
    expect(interval?.low).toBeCloseTo(4 - half, 3);
    expect(interval?.high).toBeCloseTo(4 + half, 3);
    expect(interval?.confidence).toBe(0.95);
  });

  it('of one value has a mean and nothing more; of two it has an interval', () => {
    expect(sampleOf([7])).toEqual({
      n: 1,
      mean: 7,
      deviation: undefined,
      variation: undefined,
      interval: undefined,
    });
    // Half width: t(0.975; 1) · s/√2 = 12.706 · √2/√2.
    expect(sampleOf([6, 8]).interval?.high).toBeCloseTo(7 + 12.706, 3);
  });

  it('with mean 0 has no variation; equal values have deviation 0 and an interval without width', () => {
    expect(sampleOf([-1, 1]).variation).toBeUndefined();
    expect(sampleOf([0.1, 0.1, 0.1])).toMatchObject({ deviation: 0, interval: { low: 0.1, high: 0.1 } });
  });

  it('without a value, or with one that is not finite, is a fault of the program', () => {
    expect(() => sampleOf([])).toThrow('at least one value');
    expect(() => sampleOf([1, Number.NaN])).toThrow('finite');
    expect(() => sampleOf([1, Number.POSITIVE_INFINITY])).toThrow('finite');
    expect(() => sampleOf([1, 2], 1)).toThrow(RangeError);
  });

  it('moves and stretches with its values, whatever their order', () => {
    const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(
        values,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: -99, max: 99 }),
        (list, by, to) => {
          const plain = sampleOf(list);
          const moved = sampleOf([...list].reverse().map((value) => value * by + to));
          expect(moved.mean).toBeCloseTo(plain.mean * by + to, 9);
          expect(moved.deviation).toBeCloseTo((plain.deviation ?? 0) * by, 9);
          expect(moved.interval?.high).toBeCloseTo((plain.interval?.high ?? 0) * by + to, 7);
        },
      ),
      { seed: 30, numRuns: 200 },
    );
  });

  it('an interval of higher confidence holds the one of lower confidence', () => {
    const [narrow, wide] = [0.8, 0.99].map((confidence) => sampleOf([3, 5, 4, 8, 1], confidence).interval);
    expect(wide?.low).toBeLessThan(narrow?.low ?? 0);
    expect(wide?.high).toBeGreaterThan(narrow?.high ?? 0);
  });
});

describe('a quantile (type 7: position (n − 1)·share, straight between two readings; Hyndman and Fan 1996, from memory)', () => {
  it.each([
    [0, 1],
    [0.25, 1.75],
    [0.5, 2.5],
    [0.75, 3.25],
    [1, 4],
  ])('of 1, 2, 3, 4 at share %f is %f', (share, value) => {
    expect(quantileOf([1, 2, 3, 4], share)).toBe(value);
  });

  it('of one value is that value; of none a fault of the program', () => {
    expect(quantileOf([5], 0.3)).toBe(5);
    expect(() => quantileOf([], 0.5)).toThrow('at least one value');
  });
});
