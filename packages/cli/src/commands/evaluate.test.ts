import { evaluateReportSchema } from '@evenhand/core/evaluate';
import { writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const files = { 'a.json': writeStudy(smallStudy) };
const evaluate = (...more: string[]) => call(['evaluate', 'a.json', ...more], { files });
const both = ['--before', 'present', '--after', 'better'];

describe('evenhand evaluate', () => {
  it('says time saved and output gained for a unit, and adds up where it comes from', async () => {
    // 2.5 s and 1.5 s a cycle of one unit: mean 2 s. One cycle of 2 s for two units: 1 s. Half the time, twice the output.
    const { code, out } = await evaluate(...both);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain(
      '50.0 % of the time is saved, which is 100.0 % more output in the same time: 1.00 s a unit.',
    );
    expect(out).toMatch(/removed +\d/);
    expect(out).not.toMatch(/undefined|NaN/);
    const json = JSON.parse((await evaluate(...both, '--json')).out);
    expect(json.difference.saving).toMatchObject({ timeSaved: 0.5, outputGained: 1 });
    const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0);
    expect(json.decomposition.saved).toBe(1_000_000);
    expect(sum(Object.values(json.decomposition.totals))).toBe(1_000_000);
    expect(sum(json.decomposition.rows.map((row: { saved: number }) => row.saved))).toBe(1_000_000);
  });

  it('says what one cycle cannot tell', async () => {
    const { err, out } = await evaluate(...both);
    expect(err + out).toMatch(/one cycle|1 cycle/i);
    expect(out).toContain('cannot be told from these cycles');
  });

  it('turns the saving into money, low, likely and high, and keeps to its published schema', async () => {
    const asked = [
      ...both,
      ...['--units-a-year', '80000..100000..120000', '--hourly-cost', '36', '--cost', '900', '--years', '2'],
      ...['--discount', '8', '--first-unit', '1.5', '--learning', '90', '--json'],
    ];
    const { code, out } = await evaluate(...asked);
    expect(code).toBe(0);
    const json = JSON.parse(out);
    const read = evaluateReportSchema.safeParse(json);
    expect(read.success ? [] : read.error.issues).toEqual([]);
    // One second a unit and 100,000 units: 27.78 hours of 36 are 1000 a year; 900 are paid back in 0.9 years and a little for learning.
    expect(json.money.likely.yearly.money).toBeCloseTo(1000, 6);
    expect(json.money.likely.payback.years).toBeGreaterThan(0.9);
    expect(json.money.likely.payback.years).toBeLessThan(0.91);
    expect(json.money.tornado[0].field).toBe('unitsAYear');
    const text = (await evaluate(...asked.slice(0, -1))).out;
    expect(text).toMatch(/Money over 2 years/);
    expect(text).toMatch(/Money saved a year +€ 800 +€ 1\s000 +€ 1\s200/);
  });

  it('writes the proof on one page', async () => {
    const { code, files: written, err } = await evaluate(...both, '-o', 'proof.svg', '--date', '2026-03-31');
    expect(code).toBe(0);
    expect(err).toContain('Wrote proof.svg');
    expect(String(written['proof.svg'])).toContain('What it rests on');
  });

  it('takes a comparison that is kept in the study', async () => {
    const kept = {
      ...smallStudy,
      comparisons: [
        {
          id: 'c1',
          name: 'Old and new',
          before: { method: 'present' },
          after: { method: 'better' },
          confidence: 0.9,
        },
      ],
    };
    const wanted = { files: { 'a.json': writeStudy(kept) } };
    const { code, out } = await call(['evaluate', 'a.json', '--comparison', 'old and new', '--json'], wanted);
    expect(code).toBe(0);
    expect(JSON.parse(out).comparison).toEqual({ id: 'c1', name: 'Old and new' });
    const wrong = await call(['evaluate', 'a.json', '--comparison', 'other'], wanted);
    expect(wrong.err).toContain('The study has no comparison “other”. It has: c1 (Old and new).');
  });

  it('what is not said about the money is as the kept comparison has it', async () => {
    const kept = {
      ...smallStudy,
      comparisons: [
        {
          id: 'c1',
          before: { method: 'present' },
          after: { method: 'better' },
          confidence: 0.9,
          money: {
            currency: 'CHF',
            basis: 'measured' as const,
            unitsAYear: 100_000,
            hourlyCost: 36,
            cost: 900,
            years: 2,
            discountRate: 0,
            ranges: { cost: { low: 800, high: 1200 }, hourlyCost: { low: 30, high: 40 } },
          },
        },
      ],
    };
    const asked = (...more: string[]) =>
      call(['evaluate', 'a.json', '--comparison', 'c1', ...more], { files: { 'a.json': writeStudy(kept) } });
    const { out } = await asked('--cost', '500', '--years', '1..2..4', '--running=-100..0..50', '--json');
    const json = JSON.parse(out);
    const read = evaluateReportSchema.safeParse(json);
    expect(read.success ? [] : read.error.issues).toEqual([]);
    expect(json.money.given).toMatchObject({ currency: 'CHF', cost: 500, hourlyCost: 36, years: 2 });
    expect(json.money.given.ranges).toEqual({
      hourlyCost: { low: 30, high: 40 },
      years: { low: 1, high: 4 },
      runningCost: { low: -100, high: 50 },
    });
    // By hand, without discount: 1000 a year over 1 year less 500, over 4 years less 500; 27.78 h at 30 and 40 over 2 years.
    const bar = (field: string) => json.money.tornado.find((item: { field: string }) => item.field === field);
    expect(bar('years').low.netPresentValue).toBeCloseTo(500, 6);
    expect(bar('years').high.netPresentValue).toBeCloseTo(3500, 6);
    expect(bar('hourlyCost').low.netPresentValue).toBeCloseTo((2 * 1000 * 30) / 36 - 500, 6);
    expect(bar('runningCost').low.netPresentValue).toBeCloseTo(2 * 1100 - 500, 6);
    expect(json.money.tornado[0].field).toBe('years');
    const text = (await asked('--years', '1..2..4')).out;
    expect(text).toMatch(/What matters most.*\n *The number of years +1 to 4 +CHF 100 to CHF 3\s100/);
    expect(text.replace(/\s+/g, ' ')).toContain(
      'Reckoned with 100 000 units a year, CHF 36 an hour (CHF 30 to CHF 40)',
    );
    // Nothing said at all: the case as it is kept.
    expect(JSON.parse((await asked('--json')).out).money.given).toEqual(kept.comparisons[0]?.money);
  });

  it.each<[readonly string[], RegExp]>([
    [['--before', 'present'], /--after/],
    [['--before', 'present', '--after', 'other'], /other/],
    [[...both, '--confidence', '0'], /confidence/i],
    [[...both, '--confidence', 'sure'], /--confidence sure is no percentage/],
    [[...both, '--unit', 'jiffies'], /--unit jiffies is not known/],
    [['--before', 'present', '--after', 'present'], /Both sides are the met/],
    [[...both, '--cost', '5'], /--units-a-year N is missing/],
    [[...both, '--cost', '5..2', '--units-a-year', '9', '--hourly-cost', '1'], /--cost 5\.\.2 is neither/],
    [[...both, '--cost', '9..5..7', '--units-a-year', '9', '--hourly-cost', '1'], /cost of the change/i],
    [
      [...both, '--cost', '9', '--units-a-year', '9', '--hourly-cost', '1', '--years', '0.5'],
      /number of years/,
    ],
    [
      [...both, '--cost', '9', '--units-a-year', '9', '--hourly-cost', '1', '--learning', '90'],
      /both --first-unit/,
    ],
    [
      [...both, '--cost', '9', '--units-a-year', '9', '--hourly-cost', '1', '--discount', '2..x..8'],
      /--discount x is no percentage.* It stands in 2\.\.x\.\.8/,
    ],
    [[...both, '--basis', 'guess'], /--units-a-year N is missing|--basis guess is not known/],
    [[...both, '-o', 'proof.txt'], /does not end in \.svg or \.pdf/],
    [[...both, '--cycles-before', '9'], /cycle 9/i],
  ])('%j is refused in words', async (more, words) => {
    const { code, err } = await evaluate(...more);
    expect(code).toBe(2);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\{\w+\}|undefined|NaN/);
  });
});
