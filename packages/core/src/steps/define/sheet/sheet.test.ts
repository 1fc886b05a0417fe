import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { standardByDefinition } from '../../../../../../tests/oracles/study-standard.ts';
import {
  emptyStudy,
  type Study,
  type TimeStudy,
  type TimeStudyElement,
} from '../../../ground/study/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import { timeStudySheet } from './sheet.ts';

const seconds = (...times: readonly (number | undefined)[]): TimeStudyElement['readings'] =>
  times.map((time, index) => ({
    cycle: index + 1,
    ...(time === undefined ? {} : { us: Math.round(time * 1_000_000) }),
  }));

const element = (
  id: string,
  readings: TimeStudyElement['readings'],
  more: Partial<TimeStudyElement> = {},
): TimeStudyElement => ({ id, name: id, work: 'worker', readings, ...more });

const timeStudy = (elements: readonly TimeStudyElement[], more: Partial<TimeStudy> = {}): TimeStudy => ({
  id: 't',
  name: 'Time study',
  source: { kind: 'readings', timing: 'typed' },
  unit: 'seconds',
  scale: '0-100',
  rating: 100,
  ratingError: 0,
  confidence: 0.95,
  precision: { kind: 'relative', share: 0.05 },
  allowances: {
    convention: 'share-of-basic-time',
    relaxation: { kind: 'share', share: 0.1 },
    process: 0,
    contingency: 0,
  },
  piecesPerCycle: 1,
  elements: [...elements],
  ...more,
});

/** The same with nothing in it that stops a standard, as long as it has an element with a reading. */
function sound({ rating: _, ...of }: TimeStudy): TimeStudy {
  const elements = of.elements.map(({ rating: __, relaxation: ___, ...item }) => ({
    ...item,
    work: 'worker' as const,
    readings: item.readings.map(({ cycle, us }) => ({ cycle, us: 1 + (us ?? 0) })),
  }));
  return timeStudy(elements, { ...of, rating: 75, allowances: timeStudy([]).allowances, elements });
}

/** Keeps machines, work inside them, rare elements and readings that are set aside; only what cannot be is put right. */
function usable(of: TimeStudy): TimeStudy {
  const elements = of.elements.map(({ rating: _, relaxation: __, ...item }, index) => ({
    ...item,
    work: index === 0 ? ('process' as const) : item.work,
    relaxation: 0.1 * index,
    readings: [
      ...item.readings.map(({ rating, us = 0, ...reading }) => ({
        ...reading,
        us: us + 1,
        ...(rating !== undefined && rating <= 120 ? { rating } : {}),
      })),
      { cycle: 50, us: 1_000_000 },
      { cycle: 51, us: 1_300_000 },
    ],
  }));
  const { convention } = of.allowances;
  const allowances = {
    convention,
    relaxation: { kind: 'share', share: 0.15 },
    process: 0.05,
    contingency: 0.1,
  } as const;
  return { ...of, rating: 90, allowances, elements };
}

const harshArb = fc.record({
  us: fc.array(fc.constantFrom(1, 1e6, 1e12), { minLength: 1, maxLength: 5 }),
  cycles: fc.array(fc.constantFrom(1, 2, 1_000_000), { minLength: 1, maxLength: 5 }),
  rating: fc.constantFrom(5e-324, 1e-9, 75),
  confidence: fc.constantFrom(0.5000001, 0.95, 0.9999999999),
  contingency: fc.constantFrom(0, 0.9999999),
  share: fc.constantFrom(0, 0.9999999, 10),
  convention: fc.constantFrom('share-of-basic-time' as const, 'share-of-shift' as const),
  piecesPerCycle: fc.constantFrom(5e-324, 1, 1_000_000),
  precision: fc.constantFrom(5e-324, 0.05, 0.9999999999),
  occurs: fc.constantFrom({ times: 1, cycles: 1_000_000 }, { times: 10_000, cycles: 1 }),
});

function harshened(
  of: TimeStudy,
  harsh: typeof harshArb extends fc.Arbitrary<infer T> ? T : never,
): TimeStudy {
  const { us, cycles, share, rating, convention, contingency, piecesPerCycle, confidence } = harsh;
  const record = of.source.kind === 'record';
  return {
    ...of,
    rating,
    confidence,
    piecesPerCycle,
    precision: { kind: 'relative', share: harsh.precision },
    allowances: { convention, relaxation: { kind: 'share', share }, process: share, contingency },
    elements: of.elements.map(({ relaxation: _, rating: __, ...item }, at) => ({
      ...item,
      ...(at === 0 ? { work: 'process' as const } : { occurs: harsh.occurs }),
      readings: us.map((time, index) => ({
        cycle: cycles[(index + at) % cycles.length] ?? 1,
        ...(record ? {} : { us: time }),
      })),
    })),
  };
}

const study: Study = emptyStudy('s', 'S');
const sheetOf = (...of: Parameters<typeof timeStudy>) => timeStudySheet(study, timeStudy(...of));

describe('the sheet of a time study', () => {
  it('worked by hand: ratings, an occasional element, a machine with work inside it, allowance of the shift', () => {
    const sheet = sheetOf(
      [
        // Mean 4 s at 90 is 3.6 s basic.
        element('fit', seconds(3, 4, 5), { rating: 90 }),
        // 10 s every fifth cycle is 2 s a cycle.
        element(
          'fetch',
          [
            { cycle: 2, us: 10_000_000 },
            { cycle: 3, us: 10_000_000 },
          ],
          {
            occurs: { times: 1, cycles: 5 },
          },
        ),
        element('cure', seconds(20, 20, 20), { work: 'process' }),
        element('load next', seconds(8, 8, 8), { work: 'inside' }),
      ],
      {
        allowances: {
          convention: 'share-of-shift',
          relaxation: { kind: 'share', share: 0.2 },
          process: 0,
          contingency: 0.1,
        },
      },
    );
    expect(sheet.faults).toEqual([]);
    // Outside work (3.6 + 2) / 0.8 = 7; the machine 20 is longer than inside work 8 / 0.8 = 10; (7 + 20) · 1.1 = 29.7.
    expect(sheet.standard?.standard.standard).toBeCloseTo(29.7, 10);
    expect(sheet.standard?.piecesPerHour.whole).toBe(121);
    expect(sheet.rows.map(({ standard }) => standard?.perCycle.toFixed(3))).toEqual([
      '3.600',
      '2.000',
      '20.000',
      '8.000',
    ]);
    expect(sheet.allowances?.other.share).toBeCloseTo(0.25, 12);
    expect(sheet.words.allowance).toMatch(/20.0 %, a share of the shift.*other convention is 25.0 %/);
    // Without the occasional and the inside element.
    expect(sheet.whole.cycles.map(({ time }) => time)).toEqual([23, 24, 25]);
  });

  it('the table of allowances is one of basic time and is turned into the convention of the study', () => {
    const both = (['share-of-basic-time', 'share-of-shift'] as const).map((convention) =>
      sheetOf([element('fit', seconds(4, 4, 4))], {
        allowances: {
          convention,
          relaxation: {
            kind: 'table',
            edition: 'kilograms',
            column: 'men',
            choices: [
              { row: 'personal', level: 0 },
              { row: 'basic-fatigue', level: 0 },
            ],
          },
          process: 0,
          contingency: 0,
        },
      }),
    );
    // 5 % and 4 % of basic time for men: 4 · 1.09, whichever way it is told.
    expect(both.map(({ faults }) => faults)).toEqual([[], []]);
    for (const { standard } of both) expect(standard?.standard.standard).toBeCloseTo(4.36, 10);
    expect(both[1]?.allowances?.worker.share).toBeCloseTo(0.09 / 1.09, 12);
  });

  it('a bad cell stops the standard, says where, and takes nothing from the other elements', () => {
    const sheet = sheetOf([
      element('fit', [
        { cycle: 1, us: 0 },
        { cycle: 2, us: 2_000_000 },
      ]),
      element('press', [
        { cycle: 1, us: 1_000_000 },
        { cycle: 2, us: 1_000_000, rating: 400 },
      ]),
      element('turn', seconds(1, 2, 3)),
    ]);
    expect(sheet.standard).toBeUndefined();
    expect(sheet.faults.map(({ finding, element: id, cycle }) => [finding.code, id, cycle])).toEqual([
      ['define/reading-zero', 'fit', 1],
      ['define/rating', 'press', 2],
    ]);
    expect(sheet.rows[2]?.summary?.mean).toBe(2);
  });

  it('missing ratings, missing readings, no elements and a full shift of allowance are told at their field', () => {
    const { rating: _, ...bare } = timeStudy([element('fit', seconds(1, 2))]);
    const codes = (of: TimeStudy) =>
      timeStudySheet(study, of).faults.map(({ finding, field, element: id }) => [finding.code, field ?? id]);
    expect(codes(bare)).toEqual([['define/no-rating', 'rating']]);
    expect(codes(timeStudy([]))).toEqual([['define/no-elements', 'elements']]);
    expect(codes(timeStudy([element('fit', [{ cycle: 1 }])]))).toEqual([['define/no-reading', 'fit']]);
    const allowances = {
      convention: 'share-of-shift',
      relaxation: { kind: 'share', share: 1 },
      process: 0,
      contingency: 0,
    } as const;
    expect(codes(timeStudy([element('fit', seconds(1, 2))], { allowances }))).toEqual([
      ['define/allowance-shift', 'allowances'],
    ]);
  });

  it('work inside a machine that is not there, an allowance of the whole shift and a share above 1 stand at their place', () => {
    const allowances = {
      convention: 'share-of-shift',
      relaxation: { kind: 'share', share: 0.1 },
      process: 1.1,
      contingency: 0,
    } as const;
    const { faults, standard, rows } = sheetOf(
      [
        element('fit', seconds(1, 2, 3), { relaxation: 1 }),
        element('look', seconds(1, 2), { work: 'inside' }),
        element('wipe', seconds(1, 2), { work: 'inside' }),
      ],
      { allowances },
    );
    expect(standard).toBeUndefined();
    expect(faults.map(({ finding, element: id, field }) => [finding.code, id ?? field])).toEqual([
      ['define/allowance-shift', 'fit'],
      ['define/no-process', 'look'],
      ['define/no-process', 'wipe'],
      ['define/allowance-shift', 'allowances'],
    ]);
    expect(faults[0]?.finding.message).toContain('The allowance of “fit” is 100.0 % of the shift');
    expect(rows.map(({ summary }) => summary?.mean)).toEqual([2, 1.5, 1.5]);
  });

  it('readings that are set aside leave the sum and n, and keep their reason', () => {
    const readings = [...seconds(4, 4.2, 3.8, 4.1), { cycle: 5, us: 40_000_000, setAside: 'phone rang' }];
    const { rows } = sheetOf([element('fit', readings)]);
    expect(rows[0]?.summary).toMatchObject({ n: 4, missed: 0 });
    expect(rows[0]?.summary?.sum).toBeCloseTo(16.1, 12);
    expect(rows[0]?.cells[4]).toMatchObject({ setAside: 'phone rang', us: 40_000_000 });
  });

  it('operators are told apart by the sittings, and a single code is no comparison', () => {
    const readings = seconds(4, 4.1, 3.9, 6, 6.1, 5.9);
    const sittings = [
      { id: 'a', start: 1, operatorCode: 'K1' },
      { id: 'b', start: 4, operatorCode: 'K2' },
    ];
    const { rows, whole } = sheetOf([element('fit', readings)], { sittings });
    expect(rows[0]?.operators?.differs).toBe(true);
    // F = between 6 over within 0.04/4: two groups of three with means 4 and 6.
    expect(rows[0]?.operators?.ratio).toBeCloseTo(6 / 0.01, 6);
    expect(whole.operators?.ratio).toBeCloseTo(6 / 0.01, 6);
    const one = sheetOf([element('fit', readings)], { sittings: sittings.slice(0, 1) });
    expect(one.rows[0]?.operators).toBeUndefined();
  });

  it('any time study of the schema gives a sheet without NaN, with its standard or the reason', () => {
    let standards = 0;
    fc.assert(
      fc.property(studyArb, (made) => {
        for (const item of (made.timeStudies ?? []).flatMap((of) => [of, sound(of)])) {
          const sheet = timeStudySheet(made, item);
          const text = JSON.stringify(sheet, (key, value) => {
            if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is ${value}`);
            return value;
          });
          expect(text).not.toMatch(/NaN|undefined is|\{\w+\}/);
          expect(sheet.standard === undefined).toBe(sheet.faults.length > 0);
          if (sheet.standard !== undefined) standards += 1;
          expect(sheet.rows.length).toBe(item.elements.length);
          const known = new Set(item.elements.map(({ id }) => id));
          for (const { element: id, field } of sheet.faults) {
            expect(field !== undefined || (id !== undefined && known.has(id))).toBe(true);
          }
        }
      }),
      { seed: 7, numRuns: 400 },
    );
    expect(standards).toBeGreaterThan(10);
  });

  it('the far ends of the schema give a sheet too: cycles out of order and twice, the least and the greatest of all', () => {
    let standards = 0;
    fc.assert(
      fc.property(studyArb, harshArb, (made, harsh) => {
        for (const item of made.timeStudies ?? []) {
          const of = harshened(item, harsh);
          const sheet = timeStudySheet(made, of);
          JSON.stringify(sheet, (key, value) => {
            if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is ${value}`);
            return value;
          });
          expect(sheet.standard === undefined).toBe(sheet.faults.length > 0);
          if (sheet.standard !== undefined) standards += 1;
        }
      }),
      { seed: 17, numRuns: 500 },
    );
    expect(standards).toBeGreaterThan(10);
  });

  it('any standard is the one of the definition: means of rated readings, how often they come, allowances (oracle)', () => {
    let compared = 0;
    fc.assert(
      fc.property(studyArb, (made) => {
        for (const item of made.timeStudies ?? []) {
          if (item.source.kind === 'record') continue;
          for (const of of [item, usable(item)]) {
            const { standard } = timeStudySheet(made, of);
            if (standard === undefined || of.allowances.relaxation.kind === 'table') continue;
            const us = standard.standard.standard * timeUnits[of.unit].microseconds;
            const wanted = standardByDefinition(of);
            expect(Math.abs(us - wanted)).toBeLessThanOrEqual(1e-9 * wanted);
            compared += 1;
          }
        }
      }),
      { seed: 13, numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(60);
  });
});
