import { describe, expect, it } from 'vitest';
import { axisSteps, axisTicks } from './axis-ticks.ts';

describe('the steps of the axis', () => {
  it('are 1, 2 or 5 times a power of ten and the finest that keep the numbers apart', () => {
    // 1 s on 100 px: 72 px are 0.72 s, so the next of 0.5, 1, 2 is 1 s; a tenth is 10 px, which is enough.
    expect(axisSteps(10_000, 'seconds', 72)).toEqual({ majorUs: 1_000_000, parts: 10, decimals: 0 });
    // 1 s on 10 px: 7.2 s → 10 s in tenths of 10 px.
    expect(axisSteps(100_000, 'seconds', 72)).toEqual({ majorUs: 10_000_000, parts: 10, decimals: 0 });
    // 1 s on 40 px: 1.8 s → 2 s in quarters of 20 px.
    expect(axisSteps(25_000, 'seconds', 72)).toEqual({ majorUs: 2_000_000, parts: 4, decimals: 0 });
    // 1 ms on 4 px: 0.018 s → 0.02 s.
    expect(axisSteps(250, 'seconds', 72)).toEqual({ majorUs: 20_000, parts: 4, decimals: 2 });
  });

  it('a wink is 1/2000 of a minute, a TMU 1/100 000 of an hour (definitions)', () => {
    expect(axisSteps(10_000, 'winks', 72).majorUs).toBe(50 * 30_000);
    expect(axisSteps(10_000, 'tmu', 72).majorUs).toBe(20 * 36_000);
    expect(axisSteps(10_000, 'minutes', 72)).toMatchObject({ majorUs: 0.02 * 60_000_000, decimals: 2 });
  });

  it('count from the zero of the film and bear exact numbers', () => {
    const ticks = axisTicks(
      5_900_000,
      6_500_000,
      5_000_000,
      { majorUs: 200_000, parts: 2, decimals: 1 },
      'seconds',
    );
    expect(ticks).toEqual([
      { us: 5_900_000 },
      { us: 6_000_000, text: '1.0' },
      { us: 6_100_000 },
      { us: 6_200_000, text: '1.2' },
      { us: 6_300_000 },
      { us: 6_400_000, text: '1.4' },
      { us: 6_500_000 },
    ]);
  });

  it('keep their numbers apart at every scale from a frame to a day', () => {
    for (let usPerPixel = 10; usPerPixel < 1e8; usPerPixel *= 1.37) {
      for (const unit of ['seconds', 'minutes', 'winks', 'tmu', 'hours'] as const) {
        const { majorUs, parts } = axisSteps(usPerPixel, unit, 72);
        expect(majorUs / usPerPixel).toBeGreaterThanOrEqual(72 * 0.999);
        expect(majorUs / usPerPixel).toBeLessThanOrEqual(72 * 2.5 * 1.001);
        expect(parts === 1 || majorUs / parts / usPerPixel >= 6).toBe(true);
      }
    }
  });
});
