import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../ground/numerics/index.ts';
import { fitLearning } from './learning-fit.ts';

describe('fitting a learning curve', () => {
  it('the interval of the rate holds the true one in about 95 of 100 made curves (seed 31)', () => {
    const random = seededRandom(31);
    const studies = 1000;
    let held = 0;
    for (let study = 0; study < studies; study++) {
      const points = Array.from({ length: 12 }, (_, index) => {
        // The sum of twelve even draws is close to normal (deviation 1).
        const noise = Array.from({ length: 12 }, random).reduce((sum, draw) => sum + draw, -6);
        return { unit: index + 1, time: 50 * (index + 1) ** Math.log2(0.85) * Math.exp(0.05 * noise) };
      });
      const fit = fitLearning('unit', points);
      if (fit.ok && fit.value.rateInterval.low <= 0.85 && fit.value.rateInterval.high >= 0.85) held += 1;
    }
    expect(held / studies).toBeGreaterThan(0.93);
    expect(held / studies).toBeLessThan(0.97);
  });

  it('says which model it was fitted as', () => {
    const points = [1, 2, 4].map((unit) => ({ unit, time: 10 / unit ** 0.3 }));
    const fit = fitLearning('cumulative-average', points);
    expect(fit.ok && fit.value.words).toContain('cumulative average model (Wright)');
    expect(fit.ok && fit.value.rate).toBeCloseTo(2 ** -0.3, 12);
  });

  it('equal times are a curve of 100 %', () => {
    const fit = fitLearning(
      'unit',
      [1, 2, 3].map((unit) => ({ unit, time: 5 })),
    );
    expect(fit).toMatchObject({ ok: true, value: { rate: 1, explained: 1 } });
  });

  it.each([
    [
      [
        { unit: 1, time: 5 },
        { unit: 2, time: 4 },
      ],
    ],
    [[1, 1, 1].map((unit) => ({ unit, time: 5 }))],
    [[1, 2, 3].map((unit) => ({ unit, time: 0 }))],
    [[0, 2, 3].map((unit) => ({ unit, time: 5 }))],
    [[1, 2, Number.NaN].map((unit) => ({ unit, time: 5 }))],
  ])('%j is refused', (points) => {
    expect(fitLearning('unit', points)).toMatchObject({
      ok: false,
      error: { code: 'define/learning-points' },
    });
  });

  it('times that scatter beyond all measure are refused', () => {
    const points = [1, 1e9, 1e-9, 1e9].map((time, index) => ({ unit: index + 1, time }));
    expect(fitLearning('unit', points)).toMatchObject({
      ok: false,
      error: { code: 'define/learning-scatter' },
    });
  });
});
