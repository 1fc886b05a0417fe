import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moneyOf } from './change-case.ts';
import { learningLoss } from './learning-loss.ts';
import { outlookOf } from './outlook.ts';
import { discountedPayback, payback } from './payback.ts';
import { annuityFactor, netPresentValue } from './present-value.ts';
import type { ChangeCase } from './yearly-flows.ts';

function told<T>(
  result:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly error: { readonly message: string } },
): T {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const second = 1_000_000;
/** Invented: hose couplings, 7.6 s before and 4.8 s after. */
const couplings: ChangeCase = {
  before: 7.6 * second,
  after: 4.8 * second,
  unitsAYear: 180_000,
  hourlyCost: 30,
  cost: 6000,
  years: 3,
  discountRate: 0.08,
};

describe('a change of method in money', () => {
  it('gives hours, money, payback and value that can be worked by hand (2.8 s on 180,000 units are 140 hours)', () => {
    const found = told(moneyOf(couplings));
    expect(found.yearly.hours).toBeCloseTo(140, 9);
    expect(found.yearly.money).toBeCloseTo(4200, 9);
    expect(found.flows).toHaveLength(3);
    expect(found.payback.years).toBeCloseTo(6000 / 4200, 9);
    expect(found.netPresentValue).toBeCloseTo(4200 / 1.08 + 4200 / 1.08 ** 2 + 4200 / 1.08 ** 3 - 6000, 9);
    // 6000 at 30 an hour are 200 hours, which at 2.8 s are 257,142.86 units.
    expect(found.breakEven.units).toBe(257_143);
    expect(found.conventions.join(' ')).toMatch(/at the end of its year and discounted at 8\.0 % a year/);
  });

  it('the break-even volume is the least whole number a year at which the value is not below 0', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.option(
          fc.record({
            firstUnit: fc.double({ min: 1, max: 3, noNaN: true }),
            rate: fc.double({ min: 0.75, max: 0.92, noNaN: true }),
          }),
          { nil: undefined },
        ),
        (cost, years, discountRate, runningCost, learning) => {
          const change = { ...couplings, cost, years, discountRate, runningCost, learning };
          const { unitsAYear = -1, units = -1 } = told(moneyOf(change)).breakEven;
          const valueAt = (volume: number) =>
            told(moneyOf({ ...change, unitsAYear: volume })).netPresentValue;
          const room = 1e-6 + 1e-8 * cost;
          expect(valueAt(unitsAYear)).toBeGreaterThanOrEqual(-room);
          if (unitsAYear > 0) expect(valueAt(unitsAYear - 1)).toBeLessThan(room);
          // One year without running cost and discount: the saving of those units pays for the change.
          const once = { ...change, years: 1, discountRate: 0, runningCost: 0 };
          expect(told(moneyOf({ ...once, unitsAYear: units })).netPresentValue).toBeGreaterThanOrEqual(-room);
          if (units > 0)
            expect(told(moneyOf({ ...once, unitsAYear: units - 1 })).netPresentValue).toBeLessThan(room);
        },
      ),
      { seed: 51, numRuns: 200 },
    );
  });

  it('a method that saves nothing never pays, and no volume helps', () => {
    const found = told(moneyOf({ ...couplings, after: 8 * second }));
    expect(found.yearly.money).toBeLessThan(0);
    expect(found.breakEven).toEqual({ units: undefined, unitsAYear: undefined });
    expect(found.payback.years).toBeUndefined();
    expect(found.payback.words).toBe('No payback within 3 years.');
    expect(found.payback.missing).toBeGreaterThan(6000);
  });

  it.each([
    [{ unitsAYear: -1 }, /The units a year must be a number of at least 0/],
    [{ before: 0 }, /The time for a unit before must be a number above 0/],
    [{ after: Number.NaN }, /The time for a unit after .* something that is no number/],
    [{ years: 2.5 }, /The number of years must be a whole number/],
    [{ discountRate: -0.1 }, /The yearly rate of discount/],
    [{ cost: Number.POSITIVE_INFINITY }, /The cost of the change .* beyond all measure/],
    [{ learning: { firstUnit: 0.5, rate: 0.9 } }, /The first unit, in times of the learned time, must be/],
    [{ learning: { firstUnit: 2, rate: 1 } }, /The learning rate, as a share, must be/],
    [{ learning: { firstUnit: 2, rate: 0.99 } }, /^At a learning rate of 99\.0 % the new method would reach/],
  ])('%j is refused in words', (part, words) => {
    const result = moneyOf({ ...couplings, ...part });
    expect(result.ok ? '' : result.error.message).toMatch(words);
  });
});

describe('learning', () => {
  it('loses what a unit-by-unit count loses (from the definition; sums beyond a thousand terms too)', () => {
    for (const [firstUnit, rate] of [
      [2, 0.8],
      [1.5, 0.9],
      [3, 0.85],
      [1.7, 0.95],
      [1.9, 0.5],
      [1, 0.9],
    ] as const) {
      const found = told(learningLoss(5, { firstUnit, rate }));
      let [sum, units] = [0, 0];
      for (let unit = 1; ; unit += 1) {
        const extra = 5 * firstUnit * unit ** Math.log2(rate) - 5;
        if (extra <= 1e-12) break;
        sum += extra;
        units = unit;
        if (unit === 700 || unit === 1500) expect(found.upTo(unit)).toBeCloseTo(sum, 6);
      }
      expect(found.units).toBe(units);
      expect(Math.abs(found.total - sum)).toBeLessThan(1e-9 * (1 + sum));
    }
  });

  it('is paid in the years in which the units are made, and lengthens the payback', () => {
    const slow = { ...couplings, unitsAYear: 1000, cost: 10, learning: { firstUnit: 2, rate: 0.9 } };
    const [found, without] = [told(moneyOf(slow)), told(moneyOf({ ...slow, learning: undefined }))];
    const loss = told(learningLoss(slow.after, slow.learning));
    expect(loss.units).toBe(Math.ceil(2 ** (-1 / Math.log2(0.9))) - 1);
    const paid = without.flows.map((flow, year) => flow - (found.flows[year] ?? 0));
    expect(paid.reduce((sum, part) => sum + part, 0)).toBeCloseTo((loss.total / 3.6e9) * 30, 9);
    expect(found.payback.years ?? 99).toBeGreaterThan(without.payback.years ?? 99);
    expect(found.conventions.at(-1)).toMatch(/unit model, Crawford/);
  });
});

describe('payback', () => {
  it('discounted later than simple, and equal at a rate of 0', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.array(fc.double({ min: -1e5, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (cost, flows, rate) => {
          const [simple, later] = [
            told(payback({ cost, flows })),
            told(discountedPayback({ cost, flows: flows.map(Math.abs) }, rate)),
          ];
          expect(told(discountedPayback({ cost, flows }, 0)).years).toEqual(simple.years);
          const positive = told(payback({ cost, flows: flows.map(Math.abs) })).years;
          if (later.years !== undefined) expect(later.years).toBeGreaterThanOrEqual((positive ?? 99) - 1e-9);
          if (simple.years === undefined) expect(simple.missing).toBeGreaterThan(0);
        },
      ),
      { seed: 52, numRuns: 300 },
    );
  });

  it('says when a later loss leaves part of the cost open again', () => {
    const found = told(payback({ cost: 100, flows: [150, -80, 5] }));
    expect(found.years).toBeCloseTo(100 / 150, 12);
    expect(found.lostAgain).toBe(true);
    expect(found.words).toMatch(/later year brings a loss/);
  });

  it('of nothing is at once, and no year is refused', () => {
    expect(told(payback({ cost: 0, flows: [1] })).years).toBe(0);
    expect(payback({ cost: 1, flows: [] })).toMatchObject({
      ok: false,
      error: { code: 'evaluate/no-years' },
    });
  });
});

it('the annuity factor is the present value of 1 a year, also at a rate of 0', () => {
  for (const [rate, years] of [
    [0, 7],
    [1e-9, 30],
    [0.08, 12],
    [1.5, 3],
  ] as const) {
    const flows = Array.from({ length: years }, () => 1);
    expect(told(annuityFactor(rate, years))).toBeCloseTo(told(netPresentValue({ cost: 0, flows }, rate)), 9);
  }
});

describe('low, likely and high', () => {
  const ranges = {
    after: { low: 4.5 * second, high: 5.4 * second },
    unitsAYear: { low: 120_000, high: 200_000 },
    cost: { low: 5000, high: 9000 },
    discountRate: { low: 0.08, high: 0.08 },
    firstUnit: { low: 1, high: 2 },
  };

  it('shows each field alone, the widest first, and all worse and all better ends together', () => {
    const found = told(outlookOf({ likely: couplings, ranges }));
    expect(found.tornado.map(({ field }) => field)).toEqual([
      'unitsAYear',
      'cost',
      'after',
      'firstUnit',
      'discountRate',
    ]);
    const cost = found.tornado[1];
    // 4000 more is paid at the start, so the value falls by 4000.
    expect(cost?.swing).toBeCloseTo(4000, 9);
    expect((cost?.low.netPresentValue ?? 0) - (cost?.high.netPresentValue ?? 0)).toBeCloseTo(4000, 9);
    const worst = told(
      moneyOf({
        ...couplings,
        after: 5.4 * second,
        unitsAYear: 120_000,
        cost: 9000,
        learning: { firstUnit: 2, rate: 0.9 },
      }),
    );
    expect(found.low.netPresentValue).toBeCloseTo(worst.netPresentValue, 9);
    expect(found.likely.netPresentValue).toBeCloseTo(told(moneyOf(couplings)).netPresentValue, 12);
    expect(found.high.netPresentValue).toBeGreaterThan(found.likely.netPresentValue);
  });

  it('nothing uncertain gives three times the same', () => {
    const found = told(outlookOf({ likely: couplings, ranges: {} }));
    expect(found.tornado).toEqual([]);
    expect(found.low).toEqual(found.likely);
    expect(found.high).toEqual(found.likely);
  });

  it('refuses values that are not in order, and ends that cannot be', () => {
    const wrong = outlookOf({ likely: couplings, ranges: { cost: { low: 7000, high: 8000 } } });
    expect(wrong.ok ? '' : wrong.error.message).toBe(
      'The cost of the change: low 7000, likely 6000, high 8000 are not in order. Low must not be above likely, and likely not above high.',
    );
    const beyond = outlookOf({ likely: couplings, ranges: { cost: { low: -5, high: 8000 } } });
    expect(beyond.ok ? '' : beyond.error.message).toMatch(/The cost of the change must be/);
  });
});
