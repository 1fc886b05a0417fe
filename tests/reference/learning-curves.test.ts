import {
  batchTime,
  firstFrom,
  fitLearning,
  type LearningCurve,
  learningExponent,
  nearBatchTime,
  rateFromTwo,
  roundedUp,
  timeUpTo,
  unitReaching,
  unitTime,
} from '@evenhand/core/define';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as others from './published-learning.ts';
import * as totals from './published-learning-totals.ts';
import * as units from './published-learning-units.ts';

const crawford = (first: number, rate: number): LearningCurve => ({ model: 'unit', first, rate });
const wright = (first: number, rate: number): LearningCurve => ({
  model: 'cumulative-average',
  first,
  rate,
});

describe('unit model (Crawford)', () => {
  it.each(titled(units.unitTimes, units.sources))('$title', ({ check }) => {
    const { a, n, r } = check.inputs;
    expectCheck(check, { y: told(unitTime(crawford(a, r), n)) });
  });

  it.each(titled(totals.unitTotals, totals.sources))('$title', ({ check }) => {
    const { a, n1, n2, r } = check.inputs;
    const total = told(batchTime(crawford(a, r), n1, n2));
    expectCheck(check, { total, avg: total / (n2 - n1 + 1) });
  });

  it.each(titled(others.unitsReaching, others.sources))('$title', ({ check }) => {
    const { a, y, r } = check.inputs;
    const n = told(unitReaching(crawford(a, r), y));
    const found = { n, nCeil: roundedUp(n), nRound: Math.round(n) };
    expectCheck(check, Object.fromEntries(Object.entries(found).filter(([name]) => name in check.computed)));
  });

  it.each(titled(others.firstFromLater, others.sources))('$title', ({ check }) => {
    const { t, m, n, r } = check.inputs;
    const first = told(firstFrom({ model: 'unit', rate: r }, m, t));
    expectCheck(check, { y: told(unitTime(crawford(first, r), n)) });
  });

  it.each(titled(others.nearTotals, others.sources))('$title', ({ check }) => {
    const { a, n, r } = check.inputs;
    expectCheck(check, { total: nearBatchTime(a, r, 1, n) });
  });
});

describe('cumulative average model (Wright)', () => {
  it.each(titled(others.cumulativeAverages, others.sources))('$title', ({ check }) => {
    const { a, n, r } = check.inputs;
    const { total, average } = told(timeUpTo(wright(a, r), n));
    expectCheck(check, { avg: average, total, unit: told(unitTime(wright(a, r), n)) });
  });

  it.each(titled(others.averageBatches, others.sources))('$title', ({ check }) => {
    const { a, m, n, r } = check.inputs;
    expectCheck(check, { total: told(batchTime(wright(a, r), m, n)) });
  });
});

describe('rates', () => {
  it.each(titled(others.ratesFromTwo, others.sources))('$title', ({ check }) => {
    const { t1, t2, n1, n2 } = check.inputs;
    const { rate, exponent } = told(rateFromTwo({ unit: n1, time: t1 }, { unit: n2, time: t2 }));
    expectCheck(check, { r: rate, b: exponent });
  });

  it.each(titled(others.fits, others.sources))('$title', ({ check }) => {
    const { x, y } = check.inputs;
    const points = x.map((unit, index) => ({ unit, time: y[index] ?? 0 }));
    const { first, rate, exponent, explained } = told(fitLearning('unit', points));
    expectCheck(check, { b: exponent, a: first, r: rate, r2: explained });
  });
});

it('the same “80 %” is 381.2 and 260.6 hours for unit 20: the model must be said (pair 5-16a and 5-18)', () => {
  expect(told(unitTime(crawford(1000, 0.8), 20))).toBeCloseTo(381.2, 1);
  expect(told(unitTime(wright(1000, 0.8), 20))).toBeCloseTo(260.6, 1);
});

it('an exponent is the logarithm to base 2: −0.737 at 60 %, not the −0.833 of a page that is wrong (5-59)', () => {
  expect(learningExponent(0.6)).toBeCloseTo(-0.737, 3);
});

it('106 published checks on learning curves ran, five of them wrong prints', () => {
  expect(tally()).toMatchObject({ checks: 106, traps: 5 });
});
