import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import {
  observationNumbers,
  relativeObservationNumbers,
  sharePrecisions,
  sources,
} from '../../../../tests/reference/published-work-sampling.ts';
import { call } from '../testing/fake-io.ts';

const sampling = (...more: string[]) => call(['define', 'sampling', ...more]);
const asJson = async (...more: string[]) => JSON.parse((await sampling(...more, '--json')).out);

describe('evenhand define sampling: published examples', () => {
  it.each(titled(observationNumbers, sources))('$title', async ({ check }) => {
    const { p, e, z } = check.inputs;
    const { needed } = await asJson(
      '--share',
      `${p * 100}%`,
      '--precision',
      `${e * 100}%`,
      '--multiplier',
      `${z}`,
    );
    expect(needed.unrounded / Number(check.computed.n)).toBeCloseTo(1, 9);
    if (check.computed.nCeil !== undefined) expect(needed.needed).toBe(check.computed.nCeil);
  });

  it.each(titled(relativeObservationNumbers, sources))('of the share itself $title', async ({ check }) => {
    const { p, s, z } = check.inputs;
    const words = [
      '--share',
      `${p * 100}%`,
      '--precision',
      `${s * 100}%`,
      '--of',
      'share',
      '--multiplier',
      `${z}`,
    ];
    const { needed } = await asJson(...words);
    expect(needed.unrounded).toBeCloseTo(Number(check.computed.n), 7);
    expect(needed.needed).toBe(check.computed.nCeil);
  });

  it.each(titled(sharePrecisions, sources))('precision $title', async ({ check }) => {
    const { x, n, z } = check.inputs;
    const { seen } = await asJson('--seen', `${x}`, '--count', `${n}`, '--multiplier', `${z}`);
    expect(seen.halfWidth).toBeCloseTo(Number(check.computed.e), 9);
    expect(seen.interval.low).toBeCloseTo(Number(check.computed.lo), 9);
  });
});

describe('evenhand define sampling', () => {
  const shift = ['--shifts', '22:00-06:00,06:00-14:00', '--breaks', '02:00-02:30,10:00-10:15', '--days', '2'];
  const minutes = ({ day, clock }: { day: number; clock: string }) => {
    const [hour, minute] = clock.split(':').map(Number);
    return (day - 1) * 1440 + (hour ?? 0) * 60 + (minute ?? 0);
  };

  it('draws times in order within the shifts, none twice, none in a break; the same seed draws the same', async () => {
    const { times } = await asJson(...shift, '--times', '200', '--seed', '7');
    const all = times.map(minutes);
    expect(new Set(all).size).toBe(200);
    expect([...all].sort((a: number, b: number) => a - b)).toEqual(all);
    for (const at of all) {
      const clock = at % 1440;
      expect((clock > 360 && clock <= 840) || clock > 1320 || clock <= 360).toBe(true);
      expect((clock >= 120 && clock < 150) || (clock >= 600 && clock < 615)).toBe(false);
    }
    expect((await asJson(...shift, '--times', '200', '--seed', '7')).times).toEqual(times);
    expect((await asJson(...shift, '--times', '200', '--seed', '8')).times).not.toEqual(times);
  });

  it('without a number draws as many as are needed, and prints them by day', async () => {
    const more = ['--share', '10', '--multiplier', '2', '--shifts', '06:00-14:00', '--seed', '1'];
    const { code, out } = await sampling(...more);
    expect(code).toBe(0);
    // 2² · 0.1 · 0.9 / 0.05² = 144.
    expect(out).toContain(
      'within ±5.00 points of the whole with 2.00 standard errors: 144 (unrounded 144.00',
    );
    expect(out).toContain('Times to look (144), drawn at random:');
    expect(out.match(/\d\d:\d\d/g)?.length).toBe(144);
  });

  it('gives the interval of a share by both ways, and says when the plain one is poor', async () => {
    const { out, err } = await sampling('--seen', '3', '--count', '100');
    expect(out).toContain('Seen 3 times in 100 observations: 3.00 % ± 3.34 points at 95.0 %');
    expect(out).toContain('after Wilson');
    expect(err).toContain('define/few-seen');
  });

  it.each<[readonly string[], RegExp]>([
    [[], /Say what is wanted/],
    [['--share', '0'], /The expected share must be/],
    [['--share', '100'], /The expected share must be/],
    [['--share', '0.3'], /write 30/],
    [['--share', '30', '--of', 'basic'], /it can be whole or share/],
    [['--share', '30', '--confidence', '95', '--multiplier', '2'], /two ways/],
    [['--seen', '3'], /belong together/],
    [['--seen', '9', '--count', '3'], /seen 9 times in 3 observations, which cannot be/],
    [['--share', '30', '--seed', '3'], /--seed is for drawing times; give --shifts/],
    [['--shifts', '06:00-14:00', '--times', '5'], /needs --seed N/],
    [['--shifts', '06:00-14:00', '--seed', '5'], /Say how many times to draw/],
    [['--shifts', '6-14', '--times', '5', '--seed', '1'], /“6-14” is no stretch of the day/],
    [['--shifts', '25:00-26:00', '--times', '5', '--seed', '1'], /is no stretch of the day/],
    [
      ['--shifts', '06:00-14:00', '--breaks', '15:00-15:10', '--times', '5', '--seed', '1'],
      /lies in no shift/,
    ],
    [
      ['--shifts', '06:00-14:00,13:00-15:00', '--times', '5', '--seed', '1'],
      /starts before the one before it ends/,
    ],
    [['--shifts', '06:00-06:10', '--times', '50', '--seed', '1'], /only 10 moments/],
    [['--shifts', '06:00-14:00', '--times', '0', '--seed', '1'], /number of observations must be/],
    [
      ['--shifts', '06:00-14:00', '--times', '5', '--seed', '1', '--step', '0'],
      /The step between moments must be/,
    ],
    [
      ['--shifts', '06:00-14:00', '--times', '5', '--seed', '1', '--days', '0'],
      /--days 0 is not between 1 and 366/,
    ],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await sampling(...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}/);
  });
});
