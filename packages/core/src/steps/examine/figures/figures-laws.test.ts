import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mirrored,
  twoHandStudyArb,
  withBoundaries,
} from '../../../../../../tests/helpers/two-hand-records.ts';
import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Hand, hands, otherHand, type Study } from '../../../ground/study/index.ts';
import { type MethodReading, readMethod, type Trace, traceTime } from '../reading/index.ts';
import { type Figure, type Figures, figuresOf, type Traced } from './index.ts';

interface Made {
  readonly reading: MethodReading;
  readonly figures: Figures;
}

function made(study: Study, tolerance: Micros = micros(10)): Made | undefined {
  const read = readMethod(study, 'm');
  if (!read.ok) return undefined;
  return { reading: read.value, figures: figuresOf(read.value, 'niebel-freivalds', { tolerance }) };
}

function forAll(check: (made: Made, study: Study) => void) {
  fc.assert(
    fc.property(twoHandStudyArb(), (study) => {
      const found = made(study);
      fc.pre(found !== undefined);
      if (found !== undefined) check(found, study);
    }),
    { seed: 33, numRuns: 150 },
  );
}

/** Cycle by cycle, in whole microseconds. */
function added(figures: readonly Figure[], cycles: number): number[] {
  const lists = figures.map((figure) => figure.perCycle());
  return Array.from({ length: cycles }, (_, cycle) =>
    lists.reduce((sum, list) => sum + (list[cycle] ?? 0), 0),
  );
}

const timesOf = (rows: readonly { readonly time: Figure }[]) => rows.map(({ time }) => time);

describe('what adds up, in whole microseconds', () => {
  it('states of each hand, what both do, and the overlap: to the cycle', () => {
    forAll(({ reading, figures }) => {
      const whole = figures.cycle.perCycle();
      const parts = [
        ...hands.map((hand) => figures.states.filter((row) => row.hand === hand)),
        figures.together,
        figures.overlap.cells,
      ];
      for (const part of parts) expect(added(timesOf(part), reading.cycles.length)).toEqual(whole);
    });
  });

  it('motions, objects, places and groups: to the marked time of the hand', () => {
    forAll(({ reading, figures }) => {
      const { times, groups, marked } = figures;
      for (const hand of hands) {
        for (const rows of [times.motions, times.objects, times.places, groups.rows]) {
          const own = (rows as readonly { hand: string; time: Figure }[]).filter((row) => row.hand === hand);
          expect(added(timesOf(own), reading.cycles.length)).toEqual(marked[hand].perCycle());
        }
      }
    });
  });

  it('a row and a column of the overlap: to the time of that motion', () => {
    forAll(({ reading, figures }) => {
      const count = reading.cycles.length;
      for (const { hand, kind, time } of figures.times.motions) {
        if (hand === 'both') continue;
        const cells = figures.overlap.cells.filter((cell) => cell[hand] === kind);
        expect(added(timesOf(cells), count)).toEqual(time.perCycle());
      }
    });
  });

  it('the rows of both hands: left and right', () => {
    forAll(({ reading, figures }) => {
      for (const both of figures.times.motions.filter(({ hand }) => hand === 'both')) {
        const rows = figures.times.motions.filter(({ hand, kind }) => hand !== 'both' && kind === both.kind);
        for (const of of ['time', 'count'] as const) {
          const sides = rows.map((row) => row[of]);
          expect(added(sides, reading.cycles.length)).toEqual(both[of].perCycle());
        }
      }
    });
  });

  it('motions by kind: to the number of motions', () => {
    forAll(({ reading, figures }) => {
      for (const { hand, aCycle } of figures.pace) {
        const counts = figures.times.motions.filter((row) => row.hand === hand).map(({ count }) => count);
        expect(added(counts, reading.cycles.length)).toEqual(aCycle.perCycle());
      }
    });
  });
});

/** Everything that is a number or a word in the figures; what is worked out on demand as its values. */
function flat(value: unknown): unknown {
  if (typeof value === 'function') return undefined;
  if (Array.isArray(value)) return value.map(flat);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value as Record<string, unknown>);
  const values = 'perCycle' in value ? (value as Figure).perCycle() : undefined;
  return { ...Object.fromEntries(entries.map(([key, item]) => [key, flat(item)])), values };
}

const swap = (hand: Hand | 'both' | 'either' | 'neither') =>
  hand === 'left' || hand === 'right' ? otherHand(hand) : hand;

it('with the hands exchanged every figure is that of the other hand', () => {
  forAll(({ figures }, study) => {
    const other = made(mirrored(study))?.figures;
    if (other === undefined) throw new Error('the mirrored record can be read as well');
    const keyed = (rows: readonly { hand: Hand | 'both' }[], turn: boolean) =>
      new Map(
        rows.map((row) => {
          const hand = turn ? swap(row.hand) : row.hand;
          const { kind, object, place, group, state } = row as Record<string, unknown>;
          return [
            JSON.stringify([hand, kind, object, place, group, state]),
            { ...(flat(row) as object), hand },
          ];
        }),
      );
    for (const rows of [
      (of: Figures) => of.times.motions,
      (of: Figures) => of.times.objects,
      (of: Figures) => of.times.places,
      (of: Figures) => of.groups.rows,
      (of: Figures) => of.pace,
      (of: Figures) => of.states,
      (of: Figures) => of.beginEnd.begin.motions,
      (of: Figures) => of.beginEnd.end.motions,
    ]) {
      expect(keyed(rows(other), true)).toEqual(keyed(rows(figures), false));
    }
    const cells = (of: Figures, turn: boolean) =>
      new Set(
        of.overlap.cells.map(({ left, right, time }) =>
          JSON.stringify([turn ? [right, left] : [left, right], time.perCycle()]),
        ),
      );
    expect(cells(other, true)).toEqual(cells(figures, false));
    expect(other.balance.ratio.value).toBe(figures.balance.ratio.value);
    expect(other.balance.difference.perCycle().map((value) => 0 - (value ?? 0))).toEqual(
      figures.balance.difference.perCycle(),
    );
    const [a, b] = [figures.sameMotion.lag, other.sameMotion.lag];
    expect(b?.best).toEqual(
      a === undefined ? undefined : { ...a.best, leads: swap(a.best.leads), traces: expect.any(Function) },
    );
    expect(b?.curve.map(({ agreement }) => agreement).reverse()).toEqual(
      a?.curve.map(({ agreement }) => agreement),
    );
  });
});

it('in a record seven times as long every time is seven times as long, and every share the same', () => {
  const units = new Set<string>();
  forAll(({ figures }, study) => {
    const long = made(
      withBoundaries(study, (at) => at * 7),
      micros(70),
    )?.figures;
    const compare = (a: unknown, b: unknown, path: string): void => {
      if (typeof a !== 'object' || a === null) {
        if (typeof a !== 'function' && !/lag|reach|tolerance|curve/.test(path))
          expect([path, b]).toEqual([path, a]);
        return;
      }
      if ('perCycle' in a) {
        const [short, stretched] = [a as Figure, b as Figure];
        units.add(short.unit);
        const by = short.unit === 'time' ? 7 : short.unit === 'rate' ? 1 / 7 : 1;
        const scaled = stretched.perCycle();
        short.perCycle().forEach((value, cycle) => {
          expect(scaled[cycle] ?? 0).toBeCloseTo((value ?? 0) * by, 6);
        });
        return;
      }
      for (const [key, item] of Object.entries(a)) {
        compare(item, (b as Record<string, unknown>)[key], `${path}.${key}`);
      }
    };
    compare(figures, long, '');
    expect(long?.sameMotion.lag?.atZero).toBe(figures.sameMotion.lag?.atZero);
  });
  expect([...units].sort()).toEqual(['count', 'rate', 'ratio', 'share', 'time']);
});

describe('where a figure is seen', () => {
  const timeOfTraces = (reading: MethodReading, traces: readonly Trace[]) =>
    traces.reduce((sum, trace) => sum + traceTime(reading, trace), 0);

  it('the traces of a time last as long as it, lie in their cycle, and are in order', () => {
    forAll(({ reading, figures }) => {
      const { times, groups, states, together, overlap } = figures;
      const rows: readonly (Traced & { readonly time: Figure })[] = [
        ...times.motions,
        ...times.objects,
        ...times.places,
        ...groups.rows,
        ...states,
        ...together,
        ...overlap.cells,
      ];
      for (const { time, traces } of rows) {
        const found = traces();
        expect(timeOfTraces(reading, found)).toBe(
          added([time], reading.cycles.length).reduce((a, b) => a + b, 0),
        );
        for (const { cycle, from, to } of found) {
          expect(from).toBeGreaterThanOrEqual(reading.cycles[cycle]?.from ?? Number.NaN);
          expect(to).toBeLessThanOrEqual(reading.cycles[cycle]?.to ?? Number.NaN);
        }
        const order = found.map(({ cycle, from }) => [cycle, from] as const);
        expect(order).toEqual([...order].sort((a, b) => a[0] - b[0] || a[1] - b[1]));
      }
    });
  });

  it('of what both hands do at once, neighbours are one trace', () => {
    forAll(({ figures }) => {
      for (const { traces } of figures.together) {
        const found = traces();
        const touching = found.filter(({ cycle, from }, index) => {
          const before = found[index - 1];
          return before?.to === from && before.cycle === cycle;
        });
        expect(touching).toEqual([]);
      }
    });
  });

  it('motions together and motions apart are all the motions, and as many as counted', () => {
    forAll(({ figures }) => {
      for (const { motions } of [figures.beginEnd.begin, figures.beginEnd.end]) {
        for (const { within, of, traces, apart } of motions) {
          expect([traces().length, apart().length]).toEqual([within, of - within]);
        }
      }
      for (const { aCycle, traces } of figures.pace) {
        expect(traces()).toHaveLength(
          aCycle.perCycle().reduce<number>((sum, value) => sum + (value ?? 0), 0),
        );
      }
    });
  });
});
