import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { micros } from '../../ground/base/index.ts';
import type { Finding } from '../../ground/findings/index.ts';
import * as define from './index.ts';

/** Numbers that a person can type by mistake, and some that are right. */
const anyNumber = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(0.05, 0.5, 0.95, 1, 2, 5, 8) },
  fc.constantFrom(0, -1, 1, 2, 0.5, 0.05, 0.95, 5, 95, 100, 400, 1e-320, 1e-12, 1e9, 1e200, Number.MAX_VALUE),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
  fc.double({ min: -10, max: 500, noNaN: true }),
);
const anyReading = fc.record(
  {
    cycle: fc.integer({ min: 1, max: 6 }),
    time: fc.option(anyNumber, { nil: undefined }),
    rating: anyNumber,
  },
  { requiredKeys: ['cycle', 'time'] },
);
const anyReadings = fc.array(anyReading, { maxLength: 8 });
const convention = fc.constantFrom<define.AllowanceConvention>('share-of-basic-time', 'share-of-shift');
const model = fc.constantFrom<define.LearningModel>('unit', 'cumulative-average');

type Outcome =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly error: Finding | readonly Finding[] };

let answered = 0;

/** Every number of a result is one, and every refusal is a whole sentence. */
function expectHonest(outcome: Outcome): void {
  if (!outcome.ok) {
    for (const { message } of [outcome.error].flat() as Finding[]) {
      expect(message).not.toMatch(/\{\w+\}|NaN|Infinity|undefined/);
      expect(message).toMatch(/\.$/);
    }
    return;
  }
  answered += 1;
  expectNumbers(outcome.value);
}

function expectNumbers(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value), `${value} in a result`).toBe(true);
  else if (typeof value === 'string') expect(value).not.toMatch(/NaN|Infinity|undefined/);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectNumbers);
}

function holds(arbitrary: fc.Arbitrary<Outcome>, seed: number): void {
  answered = 0;
  fc.assert(fc.property(arbitrary, expectHonest), { seed, numRuns: 1500 });
  expect(answered).toBeGreaterThan(10);
}

describe('whatever is typed in, no number that is none comes out and every refusal is a sentence', () => {
  it('cycles needed', () => {
    const arbitrary = fc
      .record({
        n: fc.oneof(anyNumber, fc.integer({ min: 2, max: 40 })),
        mean: anyNumber,
        deviation: anyNumber,
        amount: anyNumber,
        confidence: anyNumber,
        form: fc.constantFrom<define.CyclesForm>('population', 'normal', 'student', 'student-iterated'),
        relative: fc.boolean(),
      })
      .map(({ form, amount, confidence, relative, ...pilot }) =>
        define.cyclesNeeded(pilot, {
          form,
          precision: relative ? { kind: 'relative', share: amount } : { kind: 'absolute', amount },
          assurance: { kind: 'confidence', confidence },
        }),
      );
    holds(arbitrary, 411);
  });

  it('summary, drift, basic times and the running watch', () => {
    holds(
      anyReadings.map((readings) => define.summarise('fill', readings)),
      412,
    );
    holds(
      anyReadings.map((readings) => define.trendOf('fill', readings)),
      413,
    );
    holds(
      fc
        .tuple(anyReadings, anyNumber)
        .map(([readings, study]) => define.basicTimes('fill', readings, { scale: '60-80', study })),
      414,
    );
    holds(
      fc
        .array(fc.option(anyNumber, { nil: undefined }), { maxLength: 4 })
        .map((clock) => define.timesFromRunningWatch(clock)),
      415,
    );
  });

  it('variance between operators', () => {
    const groups = fc.array(
      fc.record({ name: fc.constant('A'), times: fc.array(anyNumber, { maxLength: 3 }) }),
      {
        maxLength: 3,
      },
    );
    holds(
      groups.map((given) => define.varianceBetween(given)),
      416,
    );
  });

  it('standard time with its interval and its bootstrap', () => {
    const element = fc.record({
      name: fc.constant('fill'),
      work: fc.constantFrom<define.TimedElement['work']>('worker', 'process', 'inside'),
      readings: fc.array(fc.record({ cycle: fc.integer({ min: 1, max: 5 }), time: anyNumber }), {
        minLength: 1,
        maxLength: 4,
      }),
      frequency: fc.option(anyNumber, { nil: undefined }),
    });
    const plan = fc.record({
      scale: fc.constant('0-100' as const),
      rating: fc.oneof(anyNumber, fc.constant(100)),
      allowances: fc.record({
        convention,
        worker: fc.oneof(anyNumber, fc.constant(0.1)),
        process: fc.constant(0),
        contingency: fc.constant(0.05),
      }),
      confidence: fc.constant(0.95),
      ratingError: fc.constantFrom(0, 0.05),
      piecesPerCycle: fc.constant(1),
      hour: fc.constant(60),
    });
    holds(
      fc
        .tuple(fc.array(element, { maxLength: 2 }), plan)
        .map(([elements, given]) => define.studyStandard(elements, given)),
      417,
    );
    holds(
      fc.tuple(fc.array(element, { maxLength: 2 }), plan).map(([elements, given]) => {
        const study = define.studyStandard(elements, given);
        if (!study.ok) return study;
        return define.bootstrapStandard(study.value.measured, given.allowances, {
          ...given,
          draws: 100,
          seed: 1,
        });
      }),
      418,
    );
  });

  it('work sampling', () => {
    const [share, amount] = [anyNumber, anyNumber];
    holds(
      fc
        .tuple(share, amount, anyNumber)
        .map(([p, e, multiplier]) =>
          define.observationsNeeded(
            p,
            { kind: 'of-the-share', amount: e },
            { kind: 'multiplier', multiplier },
          ),
        ),
      419,
    );
    holds(
      fc
        .tuple(anyNumber, anyNumber)
        .map(([seen, count]) => define.shareSeen(seen, count, { kind: 'confidence', confidence: 0.9 })),
      420,
    );
    holds(
      fc
        .record({
          time: anyNumber,
          share,
          pace: anyNumber,
          pieces: anyNumber,
          allowance: anyNumber,
          convention,
        })
        .map(define.standardFromSampling),
      421,
    );
    holds(
      fc.tuple(anyNumber, anyNumber).map(([count, seed]) =>
        define.observationTimes([{ start: micros(0), end: micros(1000), breaks: [] }], {
          count,
          seed,
          step: micros(10),
        }),
      ),
      422,
    );
  });

  it('learning curves', () => {
    const curve = fc.record({ model, first: anyNumber, rate: fc.oneof(anyNumber, fc.constant(0.8)) });
    holds(
      fc.tuple(curve, anyNumber).map(([given, unit]) => define.unitTime(given, unit)),
      423,
    );
    holds(
      fc.tuple(curve, anyNumber, anyNumber).map(([given, from, to]) => define.batchTime(given, from, to)),
      424,
    );
    holds(
      fc.tuple(curve, anyNumber).map(([given, time]) => define.unitReaching(given, time)),
      425,
    );
    holds(
      fc
        .tuple(
          model,
          fc.array(fc.record({ unit: fc.integer({ min: 1, max: 9 }), time: anyNumber }), { maxLength: 5 }),
        )
        .map(([given, points]) => define.fitLearning(given, points)),
      426,
    );
  });
});
