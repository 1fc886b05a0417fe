import { describe, expect, it } from 'vitest';
import { cycleBootstrap } from '../../../../../tests/oracles/cycle-bootstrap.ts';
import { type Random, sampleOf, seededRandom, standardNormalQuantile } from '../../ground/numerics/index.ts';
import { bootstrapStandard } from './standard-bootstrap.ts';
import { type MeasuredElement, measuredStandard } from './standard-interval.ts';
import type { AllowancePlan } from './standard-time.ts';

const plan: AllowancePlan = { convention: 'share-of-shift', worker: 0.1, process: 0, contingency: 0.02 };
const certain = { confidence: 0.95, ratingError: 0 };

const element = (
  name: string,
  times: readonly number[],
  more: Partial<MeasuredElement> = {},
): MeasuredElement => ({
  name,
  work: 'worker',
  readings: times.map((basic, index) => ({ cycle: index + 1, basic })),
  ...more,
});

function told(elements: readonly MeasuredElement[], uncertainty = certain, allowances = plan) {
  const result = measuredStandard(elements, allowances, uncertainty);
  if (!result.ok) throw new Error(result.error.message);
  if (result.value.interval === undefined) throw new Error('there is no interval');
  return { standard: result.value.standard.standard, ...result.value.interval };
}

const normal = (random: Random) => standardNormalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, random())));

describe('the interval of a standard time', () => {
  const times = [10, 12, 11, 9, 13, 10, 11];

  it('of one element is its t interval times the factor', () => {
    const { interval } = told([element('fill', times)]);
    const sample = sampleOf(times);
    const factor = 1.02 / 0.9;
    expect(interval.low).toBeCloseTo((sample.interval?.low ?? 0) * factor, 10);
    expect(interval.high).toBeCloseTo((sample.interval?.high ?? 0) * factor, 10);
  });

  it('of elements read in the same cycles is that of the cycle times: what varies together is told', () => {
    const other = times.map((time) => 30 - time);
    const { interval } = told([element('fill', times), element('screw on', other)]);
    expect(interval.high - interval.low).toBeCloseTo(0, 9);
    const together = told([element('fill', times), element('screw on', times)]);
    const whole = told([
      element(
        'both',
        times.map((time) => 2 * time),
      ),
    ]);
    expect(together.samplingError).toBeCloseTo(whole.samplingError, 10);
    expect(together.interval.low).toBeLessThanOrEqual(whole.interval.low + 1e-9);
  });

  it('the error of the rating does not touch machine time, and no number of readings makes it smaller', () => {
    const rated = { confidence: 0.95, ratingError: 0.05 };
    const machine = element('press', times, { work: 'process' });
    expect(told([machine], rated).ratingError).toBe(0);
    const few = told([element('fill', times)], rated);
    const many = told([element('fill', [...times, ...times, ...times, ...times])], rated);
    expect(few.ratingError).toBeCloseTo(0.05 * few.standard, 12);
    expect(many.ratingError).toBeCloseTo(few.ratingError, 12);
    expect(many.samplingError).toBeLessThan(few.samplingError);
    expect(few.words).toContain('more readings do not make that smaller');
  });

  it('worked by hand: with a rating error as large as the sampling error, seven readings give 6 · 2² degrees of freedom', () => {
    const sampling = told([element('fill', times)]);
    const ratingError = sampling.samplingError / sampling.standard;
    const both = told([element('fill', times)], { confidence: 0.95, ratingError });
    expect(sampling.degrees).toBeCloseTo(6, 10);
    expect(both.degrees).toBeCloseTo(24, 8);
    // t(0.975; 24) = 2.064 (Student's t as printed in many tables, from memory).
    const half = (both.interval.high - both.interval.low) / 2;
    expect(half / (Math.SQRT2 * sampling.samplingError)).toBeCloseTo(2.064, 3);
  });

  it('inside work that the machine outlasts adds no error', () => {
    const machine = element('press', [50, 51, 50, 52, 50, 49, 50], { work: 'process' });
    const alone = told([machine]);
    const both = told([machine, element('look over', times, { work: 'inside' })]);
    expect(both.samplingError).toBeCloseTo(alone.samplingError, 12);
  });

  it('holds the true standard time in about 95 of 100 made studies, sampling and rating error together (seed 7)', () => {
    const random = seededRandom(7);
    const studies = 2000;
    let held = 0;
    for (let study = 0; study < studies; study++) {
      const level = 1 + 0.05 * normal(random);
      const made = (mean: number, spread: number, n: number) =>
        Array.from({ length: n }, () => level * (mean + spread * normal(random)));
      const elements = [
        element('fill', made(10, 1.5, 12)),
        element('screw on', made(6, 1, 12)),
        element('change box', made(20, 3, 4), { frequency: 1 / 5 }),
      ];
      const { interval } = told(elements, { confidence: 0.95, ratingError: 0.05 });
      const truth = (20 * 1.02) / 0.9;
      if (interval.low <= truth && truth <= interval.high) held += 1;
    }
    // 1,900 expected, standard deviation 9.7; the rule of degrees of freedom leaves a little on the wide side.
    expect(held / studies).toBeGreaterThan(0.935);
    expect(held / studies).toBeLessThan(0.97);
  });
});

describe('the bootstrap beside it', () => {
  const random = seededRandom(11);
  const made = (mean: number, spread: number, n: number) =>
    Array.from({ length: n }, () => mean + spread * normal(random));
  const elements = [
    element('fill', made(10, 1.5, 60)),
    element('screw on', made(6, 1, 60)),
    element('press', made(15, 0.5, 60), { work: 'process' }),
    element('change box', made(20, 3, 12), { frequency: 1 / 5 }),
  ];
  const wish = { confidence: 0.95, ratingError: 0.04, draws: 4000, seed: 5 };

  it('agrees with the interval within a twentieth of its width', () => {
    const { interval } = told(elements, wish);
    const check = bootstrapStandard(elements, plan, wish);
    if (!check.ok) throw new Error(check.error.message);
    const width = interval.high - interval.low;
    expect(Math.abs(check.value.interval.low - interval.low)).toBeLessThan(0.05 * width);
    expect(Math.abs(check.value.interval.high - interval.high)).toBeLessThan(0.05 * width);
    expect(check.value.words).toContain('from seed 5');
  });

  it('is, to the last digits, what its definition gives: mostly read, rarely read, read twice in a cycle, inside a machine', () => {
    const given = [
      element('fill', made(10, 1.5, 23)),
      { ...element('screw on', made(6, 1, 23)), readings: element('', made(6, 1, 23)).readings.slice(2) },
      element('change box', made(20, 3, 6), { frequency: 1 / 5 }),
      {
        ...element('twice', []),
        readings: [...element('', made(2, 0.3, 23)).readings, { cycle: 4, basic: 2.5 }],
      },
      element('press', made(15, 4, 23), { work: 'process' }),
      element('look over', made(14, 4, 23), { work: 'inside' }),
    ];
    const asked = { confidence: 0.9, ratingError: 0, draws: 300, seed: 9 };
    const fast = bootstrapStandard(given, plan, asked);
    const slow = cycleBootstrap(given, plan, asked);
    expect(fast.ok && fast.value.interval.low / slow.low).toBeCloseTo(1, 12);
    expect(fast.ok && fast.value.interval.high / slow.high).toBeCloseTo(1, 12);
  });

  it('is the same for the same seed and another for another', () => {
    const low = (seed: number) => {
      const result = bootstrapStandard(elements, plan, { ...wish, draws: 200, seed });
      return result.ok ? result.value.interval.low : undefined;
    };
    expect(low(1)).toBe(low(1));
    expect(low(1)).not.toBe(low(2));
  });

  it('draws again when a rare element does not occur', () => {
    const rare = [element('fill', times20()), element('change box', [20, 22], { frequency: 1 / 10 })];
    const result = bootstrapStandard(rare, plan, { ...wish, draws: 500 });
    expect(result.ok && result.value.repeated).toBeGreaterThan(20);
    expect(result.ok && Number.isFinite(result.value.interval.low)).toBe(true);
  });

  it('draws the level of the rater for outside and inside work, never for the machine', () => {
    const steady = (name: string, time: number, work: MeasuredElement['work']) =>
      element(name, [time, time, time], { work });
    const share = (elements: readonly MeasuredElement[]) => {
      const result = bootstrapStandard(elements, plan, { ...wish, ratingError: 0.05 });
      const standard = measuredStandard(elements, plan, certain);
      return result.ok && standard.ok
        ? result.value.deviation / standard.value.standard.standard
        : Number.NaN;
    };
    expect(share([steady('fill', 9, 'worker')])).toBeCloseTo(0.05, 2);
    expect(share([steady('press', 2, 'process'), steady('look over', 9, 'inside')])).toBeCloseTo(0.05, 2);
    expect(share([steady('press', 90, 'process'), steady('look over', 9, 'inside')])).toBeLessThan(1e-10);
  });

  it('takes readings without spread to a width of nothing', () => {
    const result = bootstrapStandard([element('fill', [9, 9, 9])], plan, { ...wish, ratingError: 0 });
    expect(result.ok && result.value.interval.high).toBeCloseTo((9 * 1.02) / 0.9, 10);
    expect(result.ok && result.value.deviation).toBeCloseTo(0, 10);
  });

  it.each([
    [{ ...wish, draws: 10 }, 'The number of draws'],
    [{ ...wish, seed: 0.5 }, 'The seed'],
    [{ ...wish, ratingError: 5 }, 'The rating error'],
    [{ ...wish, confidence: 95 }, 'The confidence'],
  ])('%j is refused', (asked, words) => {
    const result = bootstrapStandard(elements, plan, asked);
    expect(!result.ok && result.error.message).toContain(words);
  });
});

function times20(): number[] {
  return Array.from({ length: 20 }, (_, index) => 10 + (index % 3));
}

it('an element with one reading gives a standard time, and a note instead of an interval', () => {
  const result = measuredStandard([element('fill', [10, 11]), element('change box', [20])], plan, certain);
  expect(result).toMatchObject({ ok: true, value: { interval: undefined } });
  expect(result.ok && result.value.notes.map(({ code }) => code)).toEqual(['define/no-interval']);
  expect(measuredStandard([element('fill', [])], plan, certain)).toMatchObject({
    error: { code: 'define/no-reading' },
  });
  expect(measuredStandard([element('fill', [1, 0])], plan, certain)).toMatchObject({
    error: { code: 'define/number' },
  });
});
