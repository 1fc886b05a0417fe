import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clampView, followView, frameSpan, panView, zoomView } from './view.ts';

const limits = { fromUs: 1_000_000, toUs: 61_000_000, leastUs: 100_000 };
const view = { fromUs: 11_000_000, toUs: 21_000_000 };

describe('the view of a score', () => {
  it('zooms so that the time under the pointer stays where it is (arithmetic)', () => {
    expect(zoomView(view, 2, 13_500_000, limits)).toEqual({ fromUs: 12_250_000, toUs: 17_250_000 });
    expect(zoomView(view, 0.5, 16_000_000, limits)).toEqual({ fromUs: 6_000_000, toUs: 26_000_000 });
  });

  it('never leaves the film and never shows less than the least, whatever is asked (seeded property)', () => {
    const us = fc.integer({ min: -1e8, max: 2e8 });
    fc.assert(
      fc.property(us, us, fc.double({ min: 0.001, max: 1000, noNaN: true }), us, (from, span, factor, by) => {
        const start = clampView({ fromUs: from, toUs: from + Math.abs(span) }, limits);
        for (const next of [start, zoomView(start, factor, from, limits), panView(start, by, limits)]) {
          expect(next.fromUs).toBeGreaterThanOrEqual(limits.fromUs - 1e-3);
          expect(next.toUs).toBeLessThanOrEqual(limits.toUs + 1e-3);
          expect(next.toUs - next.fromUs).toBeGreaterThanOrEqual(limits.leastUs - 1e-3);
        }
      }),
      { seed: 20, numRuns: 500 },
    );
  });

  it('a film shorter than the least view is shown whole', () => {
    const short = { fromUs: 0, toUs: 40_000, leastUs: 100_000 };
    expect(clampView({ fromUs: 10_000, toUs: 12_000 }, short)).toEqual({ fromUs: 0, toUs: 40_000 });
  });

  it('turns over like a page when the film runs out of it, a tenth from the side', () => {
    expect(followView(view, 20_999_999, limits)).toBe(view);
    expect(followView(view, 21_000_000, limits)).toEqual({ fromUs: 20_000_000, toUs: 30_000_000 });
    expect(followView(view, 10_000_000, limits)).toEqual({ fromUs: 1_000_000, toUs: 11_000_000 });
    expect(followView(view, 60_900_000, limits)).toEqual({ fromUs: 51_000_000, toUs: 61_000_000 });
  });

  it('shows a span with 4 % of room at both sides', () => {
    expect(frameSpan(20_000_000, 30_000_000, limits)).toEqual({ fromUs: 19_600_000, toUs: 30_400_000 });
  });
});
