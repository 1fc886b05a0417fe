import type { Comparison, TimeStudy, TimeStudyElement, TimeStudyReading } from '@evenhand/core/ground/study';
import { allowanceEditions, ratingScales } from '@evenhand/core/ground/tables';
import { timeUnitNames } from '@evenhand/core/ground/units';
import fc from 'fast-check';

/** Time studies and comparisons of the studies in `study-arbitraries.ts`: methods `filmed` and `plain`. */

const textArb = fc.oneof(
  fc.constantFrom('fit ring', 'he said “stop”', '=1+1', 'Schlauch ß'),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
);
const ratingArb = fc.constantFrom(60, 75, 80, 95, 100, 120.5, 400);

const readingsArb = (timed: boolean): fc.Arbitrary<TimeStudyReading[]> =>
  fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 12 }).chain((cycles) =>
    fc
      .array(
        fc.record(
          {
            ...(timed ? { us: fc.oneof(fc.integer({ min: 1, max: 90_000_000 }), fc.constant(0)) } : {}),
            rating: ratingArb,
            setAside: textArb,
          },
          { requiredKeys: [] },
        ),
        { minLength: cycles.length, maxLength: cycles.length },
      )
      .map((list) =>
        [...cycles]
          .sort((a, b) => a - b)
          .map((cycle, index) => ({ cycle, ...list[index] }) as TimeStudyReading),
      ),
  );

const elementArb = (id: string, timed: boolean): fc.Arbitrary<TimeStudyElement> =>
  fc.record(
    {
      id: fc.constant(id),
      name: textArb,
      work: fc.constantFrom<TimeStudyElement['work']>('worker', 'worker', 'process', 'inside'),
      endsWhen: textArb,
      occurs: fc.record({ times: fc.integer({ min: 1, max: 3 }), cycles: fc.integer({ min: 1, max: 10 }) }),
      rating: ratingArb,
      relaxation: fc.constantFrom(0, 0.12, 0.9, 1.5),
      readings: readingsArb(timed),
    },
    { requiredKeys: ['id', 'name', 'work', 'readings'] },
  );

const editions = Object.keys(allowanceEditions) as (keyof typeof allowanceEditions)[];

const allowancesArb: fc.Arbitrary<TimeStudy['allowances']> = fc.record({
  convention: fc.constantFrom<TimeStudy['allowances']['convention']>('share-of-basic-time', 'share-of-shift'),
  relaxation: fc.oneof(
    fc.record({ kind: fc.constant('share' as const), share: fc.constantFrom(0, 0.12, 0.5, 1.2) }),
    fc.constantFrom(...editions).chain((edition) => {
      const { rows } = allowanceEditions[edition];
      return fc.record({
        kind: fc.constant('table' as const),
        edition: fc.constant(edition),
        column: fc.constantFrom<'one' | 'men' | 'women'>('one', 'men', 'women'),
        choices: fc
          .subarray(rows.map(({ id }) => id))
          .map((ids) => ids.map((row, index) => ({ row, level: index % 4 }))),
      });
    }),
  ),
  process: fc.constantFrom(0, 0.05, 1.1),
  contingency: fc.constantFrom(0, 0.05, 0.4),
});

const sourceArb: fc.Arbitrary<TimeStudy['source']> = fc.oneof(
  fc.record(
    {
      kind: fc.constant('readings' as const),
      method: fc.constantFrom('filmed', 'plain'),
      timing: fc.constantFrom<'continuous' | 'repetitive' | 'typed'>('continuous', 'repetitive', 'typed'),
    },
    { requiredKeys: ['kind', 'timing'] },
  ),
  fc.record(
    {
      kind: fc.constant('record' as const),
      method: fc.constantFrom('filmed', 'plain'),
      cycles: fc.uniqueArray(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 3 }),
      proposed: fc.boolean(),
    },
    { requiredKeys: ['kind', 'method'] },
  ),
);

export const timeStudyArb = (id: string): fc.Arbitrary<TimeStudy> =>
  fc.tuple(sourceArb, fc.integer({ min: 0, max: 4 })).chain(([source, count]) => {
    const elements = Array.from({ length: count }, (_, index) =>
      elementArb(`t${index}`, source.kind === 'readings'),
    );
    return fc.record(
      {
        id: fc.constant(id),
        name: textArb,
        source: fc.constant(source),
        unit: fc.constantFrom(...timeUnitNames),
        scale: fc.constantFrom(...(Object.keys(ratingScales) as TimeStudy['scale'][])),
        rating: ratingArb,
        ratingError: fc.constantFrom(0, 0.05, 0.5),
        confidence: fc.constantFrom(0.6, 0.95, 0.99),
        precision: fc.constantFrom<TimeStudy['precision']>(
          { kind: 'relative', share: 0.05 },
          { kind: 'absolute', us: 200_000 },
        ),
        allowances: allowancesArb,
        piecesPerCycle: fc.constantFrom(1, 2, 0.5),
        elements: fc.tuple(...elements),
        sittings: fc
          .uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 3 })
          .map((starts) =>
            [...starts]
              .sort((a, b) => a - b)
              .map((start, index) => ({
                id: `s${index}`,
                start,
                operatorCode: `K${index % 2}`,
                date: '2026-03-31',
              })),
          ),
        foreign: fc
          .array(
            fc.record({
              cycle: fc.integer({ min: 1, max: 40 }),
              us: fc.integer({ min: 0, max: 9_000_000 }),
              what: textArb,
            }),
            { minLength: 1, maxLength: 2 },
          )
          .map((list) => list.map((item, index) => ({ id: `f${index}`, ...item }))),
        note: textArb,
      },
      {
        requiredKeys: [
          'id',
          'name',
          'source',
          'unit',
          'scale',
          'ratingError',
          'confidence',
          'precision',
          'allowances',
          'piecesPerCycle',
          'elements',
        ],
      },
    );
  });

const rangeArb = fc.constantFrom({ low: 1, high: 9 });

export const comparisonArb = (id: string): fc.Arbitrary<Comparison> =>
  fc.boolean().chain((turned) =>
    fc.record(
      {
        id: fc.constant(id),
        name: textArb,
        before: fc.constant({ method: turned ? 'plain' : 'filmed' }),
        after: fc.constantFrom(
          { method: turned ? 'filmed' : 'plain' },
          { method: turned ? 'filmed' : 'plain', cycles: [1] },
        ),
        proposed: fc.boolean(),
        confidence: fc.constantFrom(0.8, 0.95),
        money: fc.record(
          {
            currency: fc.constantFrom('€', 'CHF'),
            basis: fc.constantFrom<'measured' | 'equal-pace'>('measured', 'equal-pace'),
            unitsAYear: fc.constantFrom(0, 5, 200_000),
            hourlyCost: fc.constantFrom(5, 42.5),
            cost: fc.constantFrom(0, 5, 3000),
            years: fc.constantFrom(1, 5),
            discountRate: fc.constantFrom(0, 0.08),
            runningCost: fc.constantFrom(-3, 0, 250),
            learning: fc.constantFrom({ firstUnit: 1.6, rate: 0.85 }),
            ranges: fc.record(
              { cost: rangeArb, hourlyCost: rangeArb, years: rangeArb },
              { requiredKeys: [] },
            ),
          },
          {
            requiredKeys: ['currency', 'basis', 'unitsAYear', 'hourlyCost', 'cost', 'years', 'discountRate'],
          },
        ),
        note: textArb,
      },
      { requiredKeys: ['id', 'before', 'after', 'confidence'] },
    ),
  );
