import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameIndex, lastAtOrBefore, micros, roundMicros } from './index.ts';

describe('times and frames', () => {
  it.each([0, -5, 9_007_199_254_740_991])('%d is a time', (value) => expect(micros(value)).toBe(value));

  it.each([0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])('%d is no time', (value) => {
    expect(() => micros(value)).toThrow(`got ${value}`);
  });

  it.each([-1, 1.5, Number.NaN])('%d is no frame', (value) =>
    expect(() => frameIndex(value)).toThrow(RangeError),
  );

  it('rounding is half away from zero, the same on both sides, and never gives −0', () => {
    expect([0.5, 1.5, -0.5, -1.5, 2.4, -2.4].map(roundMicros)).toEqual([1, 2, -1, -2, 2, -2]);
    expect(Object.is(roundMicros(-0.2), 0)).toBe(true);
    expect(() => roundMicros(Number.NaN)).toThrow(RangeError);
    fc.assert(
      fc.property(fc.double({ min: -1e15, max: 1e15, noNaN: true }), (value) => {
        expect(roundMicros(-value)).toBe(roundMicros(value) === 0 ? 0 : -roundMicros(value));
        expect(Math.abs(roundMicros(value) - value)).toBeLessThanOrEqual(0.5);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('looking up in a sorted list', () => {
  it('finds what a walk through the list finds', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(50)), fc.integer({ min: -2, max: 52 }), (list, key) => {
        const sorted = [...list].sort((a, b) => a - b);
        expect(lastAtOrBefore(sorted, key, (item) => item)).toBe(sorted.findLastIndex((item) => item <= key));
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
