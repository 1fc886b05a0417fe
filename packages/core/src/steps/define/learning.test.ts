import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learningByAddition } from '../../../../../tests/oracles/learning-by-addition.ts';
import {
  batchTime,
  firstFrom,
  type LearningCurve,
  type LearningModel,
  nearBatchTime,
  rateFromTwo,
  timeUpTo,
  unitReaching,
  unitTime,
} from './learning.ts';

const curveArb = fc.record({
  model: fc.constantFrom<LearningModel>('unit', 'cumulative-average'),
  first: fc.double({ min: 0.5, max: 1000, noNaN: true }),
  rate: fc.double({ min: 0.55, max: 1, noNaN: true }),
});
const value = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('learning curves', () => {
  it('units, batches and averages are those found by adding one unit after another from the definition', () => {
    fc.assert(
      fc.property(
        curveArb,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        (curve, from, more) => {
          const units = learningByAddition(curve, from + more);
          expect(value(unitTime(curve, from)) / (units[from - 1] ?? 0)).toBeCloseTo(1, 8);
          const batch = units.slice(from - 1).reduce((sum, time) => sum + time, 0);
          expect(value(batchTime(curve, from, from + more)) / batch).toBeCloseTo(1, 8);
          const { total, average } = value(timeUpTo(curve, from + more));
          expect(total / average).toBeCloseTo(from + more, 8);
        },
      ),
      { seed: 405, numRuns: 300 },
    );
  });

  it('a doubling brings the unit (Crawford) or the average (Wright) to the rate, and only that', () => {
    for (const model of ['unit', 'cumulative-average'] as const) {
      const curve: LearningCurve = { model, first: 100, rate: 0.8 };
      const units = value(unitTime(curve, 16)) / value(unitTime(curve, 8));
      const averages = value(timeUpTo(curve, 16)).average / value(timeUpTo(curve, 8)).average;
      expect(model === 'unit' ? units : averages).toBeCloseTo(0.8, 12);
      expect(model === 'unit' ? averages : units).not.toBeCloseTo(0.8, 3);
    }
  });

  it('a unit that is reached, and the first unit from a later one, undo the curve', () => {
    fc.assert(
      fc.property(curveArb, fc.integer({ min: 2, max: 5000 }), (curve, unit) => {
        fc.pre(curve.rate < 0.995);
        const time = value(unitTime(curve, unit));
        expect(value(unitReaching(curve, time)) / unit).toBeCloseTo(1, 6);
        expect(value(firstFrom(curve, unit, time)) / curve.first).toBeCloseTo(1, 9);
      }),
      { seed: 406, numRuns: 300 },
    );
  });

  it('beyond 20,000 units the area under the line is the sum to ten digits (sum of 30,000 units one by one)', () => {
    const curve: LearningCurve = { model: 'unit', first: 10, rate: 0.7 };
    const sum = learningByAddition(curve, 30_000).reduceRight((total, time) => total + time, 0);
    expect(value(batchTime(curve, 1, 30_000)) / sum).toBeCloseTo(1, 10);
    expect(nearBatchTime(10, 0.7, 1, 30_000)).toBeGreaterThan(sum);
    expect(nearBatchTime(3, 0.5, 2, 4)).toBeCloseTo(3 * Math.log(4.5 / 1.5), 12);
    expect(value(batchTime(curve, 1e9, 1e9 + 1))).toBeCloseTo(2 * value(unitTime(curve, 1e9)), 6);
  });

  const curve: LearningCurve = { model: 'unit', first: 100, rate: 0.8 };
  const average: LearningCurve = { ...curve, model: 'cumulative-average' };
  it('a time that is not below the first is reached with the first unit', () => {
    expect(unitReaching(curve, 100)).toEqual({ ok: true, value: 1 });
    expect(unitReaching(average, 200)).toEqual({ ok: true, value: 1 });
  });

  it.each([
    [unitTime({ ...curve, rate: 80 }, 2), 'define/number'],
    [unitTime({ ...curve, rate: 0 }, 2), 'define/number'],
    [unitTime({ ...curve, first: Number.NaN }, 2), 'define/number'],
    [unitTime(curve, 0), 'define/number'],
    [unitTime(curve, 1.5), 'define/number'],
    [unitTime({ ...average, rate: 0.5 }, 2), 'define/learning-average'],
    [batchTime(curve, 5, 4), 'define/number'],
    [unitReaching({ ...curve, rate: 1 }, 50), 'define/learning-never'],
    [unitReaching(curve, 1e-9), 'define/learning-far'],
    [unitReaching(average, 1e-9), 'define/learning-far'],
    [unitReaching(curve, 0), 'define/number'],
    [firstFrom(curve, 2, -1), 'define/number'],
    [rateFromTwo({ unit: 4, time: 10 }, { unit: 4, time: 8 }), 'define/number'],
    [rateFromTwo({ unit: 1, time: 0 }, { unit: 4, time: 8 }), 'define/number'],
  ])('bad input is refused (%#)', (result, code) => {
    expect(result).toMatchObject({ ok: false, error: { code } });
  });
});
