import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../ground/numerics/index.ts';
import { readingsOf } from './reading.ts';
import { trendOf } from './trend.ts';

const told = (times: readonly (number | undefined)[]) => {
  const result = trendOf('fill', readingsOf(times));
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('drift within a study', () => {
  it('a fall from 12 to 8 about a mean of 10 is a change of −40 % and told as a fall', () => {
    const random = seededRandom(3);
    const times = Array.from({ length: 41 }, (_, index) => 12 - index / 10 + (random() - 0.5) * 0.2);
    const { drifts, change, words } = told(times);
    expect(drifts).toBe(true);
    expect(change).toBeCloseTo(-0.4, 1);
    expect(words).toMatch(/“fill” fall by (39|40)\.\d %/);
    expect(words).toContain('in less than 0.1 % of studies');
  });

  it('the change is the slope times the cycles between, as a share of the mean, with its interval', () => {
    const { change, changeInterval, line } = told([10, 14, 13, 19, 24]);
    // Slope 3.3 a cycle, four cycles between, mean 16; t(0.975; 3) = 3.182.
    expect(change).toBeCloseTo((3.3 * 4) / 16, 12);
    const half = (3.182 * line.slopeError * 4) / 16;
    expect(changeInterval.low).toBeCloseTo(change - half, 3);
    expect(changeInterval.high).toBeCloseTo(change + half, 3);
  });

  it('steady readings show none, and how much could still be hidden', () => {
    const { drifts, words, changeInterval } = told([10, 11, 9, 10, 11, 9, 10, 9, 11, 10]);
    expect(drifts).toBe(false);
    expect(changeInterval.low).toBeLessThan(0);
    expect(words).toContain('No drift is shown');
    expect(words).toContain('could still be hidden');
  });

  it('readings set aside do not pull, but keep their place in time', () => {
    const even = readingsOf([10, 10.2, 300, 9.9, 10.1]).map((reading) =>
      reading.time === 300 ? { ...reading, setAside: 'dropped part' } : reading,
    );
    const result = trendOf('fill', even);
    expect(result.ok && Math.abs(result.value.change)).toBeLessThan(0.05);
  });

  it('steady work is told as drifting in about one study of twenty (2,000 made studies, seed 17)', () => {
    const random = seededRandom(17);
    const noise = () => random() + random() + random() + random() + 8;
    const drifting = Array.from({ length: 2000 }, () => told(Array.from({ length: 20 }, noise))).filter(
      ({ drifts }) => drifts,
    ).length;
    // 100 expected, standard deviation 9.7.
    expect(drifting).toBeGreaterThan(65);
    expect(drifting).toBeLessThan(135);
  });

  it('equal readings say so; two readings and one cycle number are refused', () => {
    expect(told([4, 4, 4]).words).toContain('are equal, so no drift can be seen');
    expect(trendOf('fill', readingsOf([4, 5]))).toMatchObject({ error: { code: 'define/too-few-readings' } });
    const same = [4, 5, 6].map((time) => ({ cycle: 1, time }));
    expect(trendOf('fill', same)).toMatchObject({ error: { code: 'define/same-cycle' } });
    expect(trendOf('fill', readingsOf([4, 0, 6]))).toMatchObject({ error: { code: 'define/reading-zero' } });
  });
});
