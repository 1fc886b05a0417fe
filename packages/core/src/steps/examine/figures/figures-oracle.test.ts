import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { twoHandStudyArb } from '../../../../../../tests/helpers/two-hand-records.ts';
import {
  agreementAt,
  beginPerCycle,
  type Look,
  looks,
  momentsOf,
  type OracleRecord,
  placeAt,
  timePerCycle,
} from '../../../../../../tests/oracles/two-hand-figures.ts';
import { micros } from '../../../ground/base/index.ts';
import { hands, otherHand, parseStudy, type Study } from '../../../ground/study/index.ts';
import { groupOf, type MotionKind } from '../../../ground/tables/index.ts';
import { type HandState, type MethodReading, readMethod, stateOf } from '../reading/index.ts';
import { type Figure, type Figures, figuresOf, type TimeRow } from './index.ts';

/** Readings in microseconds, and in the frames of films whose frames differ in length. */
const readings = [
  ['microseconds', twoHandStudyArb(), 'm'],
  ['frames', studyArb, 'filmed'],
] as const;

interface Case {
  readonly reading: MethodReading;
  readonly record: OracleRecord;
  readonly figures: Figures;
}

function caseOf(study: Study, method: string): Case {
  const read = readMethod(study, method);
  if (!read.ok) throw new fc.PreconditionFailure();
  const { clock, cycles, method: own } = read.value;
  const record = { left: own.left, right: own.right, cycles, timeOf: clock.timeOf };
  return { reading: read.value, record, figures: figuresOf(read.value, 'groover') };
}

function forAll(arb: fc.Arbitrary<Study>, method: string, check: (made: Case) => void, numRuns = 150) {
  fc.assert(
    fc.property(arb, (study) => check(caseOf(study, method))),
    { seed: 3, numRuns },
  );
}

const kindOf = (look: Look, hand: 'left' | 'right') => (look[hand]?.kind ?? 'unmarked') as MotionKind;
const sum = (values: readonly (number | undefined)[]) =>
  values.reduce<number>((total, value) => total + (value ?? 0), 0);

/** Values agree to the last bits of a quotient. */
function near(found: readonly (number | undefined)[], expected: readonly (number | undefined)[]) {
  expect(found.map((value) => value === undefined)).toEqual(expected.map((value) => value === undefined));
  found.forEach((value, index) => {
    const wanted = expected[index] ?? 0;
    expect(Math.abs((value ?? 0) - wanted)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(wanted)));
  });
}

function expectTime(figure: Figure, perCycle: readonly number[]) {
  expect(figure.perCycle()).toEqual(perCycle);
  near([figure.value], [sum(perCycle) / perCycle.length]);
}

function expectShare(figure: Figure, part: readonly number[], whole: readonly number[]) {
  near(
    figure.perCycle(),
    whole.map((all, cycle) => (all > 0 ? (part[cycle] ?? 0) / all : undefined)),
  );
  near([figure.value], [sum(whole) > 0 ? sum(part) / sum(whole) : undefined]);
}

/** A row of times against the looks of its hand or hands. */
function expectRow({ record }: Case, row: TimeRow, fits: (look: Look, hand: 'left' | 'right') => boolean) {
  const sides = hands.filter((hand) => row.hand === 'both' || row.hand === hand);
  const add = (lists: readonly (readonly number[])[]) =>
    record.cycles.map((_, cycle) => sum(lists.map((list) => list[cycle])));
  const time = add(
    sides.map((hand) => timePerCycle(record, (look) => look[hand] !== undefined && fits(look, hand))),
  );
  const marked = add(sides.map((hand) => timePerCycle(record, (look) => look[hand] !== undefined)));
  expectTime(row.time, time);
  expectShare(row.share, time, marked);
}

describe.each(readings)('figures against looking at every unit of the record, in %s', (_, arb, method) => {
  it('time, share and number by motion', () => {
    forAll(arb, method, (made) => {
      for (const row of made.figures.times.motions) {
        expectRow(made, row, (look, hand) => kindOf(look, hand) === row.kind);
        const counts = hands
          .filter((hand) => row.hand === 'both' || row.hand === hand)
          .map((hand) => beginPerCycle(made.record, hand, ({ kind }) => kind === row.kind));
        expectTime(
          row.count,
          made.record.cycles.map((__, cycle) => sum(counts.map((list) => list[cycle]))),
        );
      }
      const seen = looks(made.record).flatMap((look) => hands.map((hand) => `${hand} ${kindOf(look, hand)}`));
      const expected = new Set(seen.filter((key) => !key.endsWith('unmarked')));
      const rows = made.figures.times.motions.filter(({ hand }) => hand !== 'both');
      expect(new Set(rows.map(({ hand, kind }) => `${hand} ${kind}`))).toEqual(expected);
    });
  });

  it('by object, by place, and by group', () => {
    forAll(arb, method, (made) => {
      const { groups, times } = made.figures;
      for (const row of times.objects) {
        expectRow(made, row, (look, hand) => look[hand]?.object === row.object);
      }
      for (const row of times.places) {
        expectRow(made, row, (look, hand) => placeAt(made.record, hand, look.cycle, look.at) === row.place);
      }
      for (const row of groups.rows) {
        expectRow(made, row, (look, hand) => groupOf(kindOf(look, hand), 'groover') === row.group);
      }
    });
  });

  it('states of each hand, and motions a cycle and minute', () => {
    forAll(arb, method, ({ record, figures }) => {
      const whole = timePerCycle(record, () => true);
      for (const { hand, state, time, share } of figures.states) {
        const part = timePerCycle(record, (look) => stateOf(kindOf(look, hand)) === state);
        expectTime(time, part);
        expectShare(share, part, whole);
      }
      for (const { hand, aCycle, aMinute } of figures.pace) {
        const count = beginPerCycle(record, hand, () => true);
        const minutes = timePerCycle(record, (look) => look[hand] !== undefined).map((time) => time / 60e6);
        expectTime(aCycle, count);
        expect(aMinute.value ?? -1).toBeCloseTo(sum(minutes) > 0 ? sum(count) / sum(minutes) : -1, 4);
      }
    });
  });

  it('both hands at once: states, motion by motion, the same motion, the balance', () => {
    forAll(arb, method, ({ record, figures }) => {
      const whole = timePerCycle(record, () => true);
      const words: Readonly<Record<HandState, string>> = {
        working: 'work',
        holding: 'hold',
        idle: 'wait',
        unmarked: '',
      };
      const nameOf = (look: Look) => {
        const [left, right] = hands.map((hand) => words[stateOf(kindOf(look, hand))]);
        if (left === '' || right === '') return 'a hand is not marked';
        if (left === right) return `both hands ${left}`;
        const leftFirst = left === 'work' || (left === 'hold' && right === 'wait');
        return leftFirst ? `left ${left}s, right ${right}s` : `right ${right}s, left ${left}s`;
      };
      for (const { name, time, share } of figures.together) {
        const part = timePerCycle(record, (look) => nameOf(look) === name);
        expectTime(time, part);
        expectShare(share, part, whole);
      }
      for (const { left, right, time } of figures.overlap.cells) {
        expectTime(
          time,
          timePerCycle(record, (look) => kindOf(look, 'left') === left && kindOf(look, 'right') === right),
        );
      }
      const isSame = (look: Look) => look.left !== undefined && look.left.kind === look.right?.kind;
      const isMarked = (look: Look) => look.left !== undefined && look.right !== undefined;
      const works = (look: Look, hand: 'left' | 'right') => stateOf(kindOf(look, hand)) === 'working';
      const bothWork = (look: Look) => works(look, 'left') && works(look, 'right');
      const { share, workShare } = figures.sameMotion;
      expectShare(share, timePerCycle(record, isSame), timePerCycle(record, isMarked));
      expectShare(
        workShare,
        timePerCycle(record, (look) => isSame(look) && bothWork(look)),
        timePerCycle(record, bothWork),
      );
      const [left, right] = hands.map((hand) => timePerCycle(record, (look) => works(look, hand)));
      expectTime(
        figures.balance.difference,
        (left ?? []).map((time, cycle) => time - (right?.[cycle] ?? 0)),
      );
      const [a, b] = [sum(left ?? []), sum(right ?? [])];
      near([figures.balance.ratio.value], [a + b === 0 ? undefined : Math.min(a, b) / Math.max(a, b)]);
    });
  });

  it('beginnings and ends, each against every one of the other hand', () => {
    forAll(arb, method, ({ reading, record }) => {
      const tolerance = micros(method === 'm' ? 5 : 60_000);
      const { beginEnd } = figuresOf(reading, 'groover', { tolerance });
      const works = ({ kind }: { kind: string }) => stateOf(kind as MotionKind) === 'working';
      for (const [edge, meeting] of [
        ['start', beginEnd.begin],
        ['end', beginEnd.end],
      ] as const) {
        for (const { hand, within, of } of meeting.motions) {
          const gaps = hands
            .filter((side) => hand === 'both' || hand === side)
            .flatMap((side) => {
              const others = momentsOf(record, otherHand(side), edge, works);
              return momentsOf(record, side, edge, works).flatMap((own, cycle) =>
                own.map((moment) =>
                  (others[cycle] ?? []).some((other) => Math.abs(other - moment) <= tolerance),
                ),
              );
            });
          expect([within, of]).toEqual([gaps.filter(Boolean).length, gaps.length]);
        }
      }
    });
  });

  it('the gap between the first work and the last work of the hands', () => {
    forAll(arb, method, ({ record, figures }) => {
      const all = looks(record);
      const gaps = (edge: 'first' | 'last') =>
        record.cycles.map((cycle, position) => {
          const [left, right] = hands.map((hand) => {
            const work = all.filter(
              (look) => look.cycle === position && stateOf(kindOf(look, hand)) === 'working',
            );
            const look = edge === 'first' ? work[0] : work.at(-1);
            const at = look === undefined ? undefined : edge === 'first' ? look.at : look.at + 1;
            return at === undefined ? undefined : record.timeOf(at) - record.timeOf(cycle.from);
          });
          return left === undefined || right === undefined ? undefined : Math.abs(left - right);
        });
      expect(figures.beginEnd.begin.gap.perCycle()).toEqual(gaps('first'));
      expect(figures.beginEnd.end.gap.perCycle()).toEqual(gaps('last'));
    });
  });
});

describe('the lag of best agreement against every whole microsecond', () => {
  it('finds the highest agreement, the smallest lag that has it, and the hand that leads', () => {
    forAll(
      twoHandStudyArb(60),
      'm',
      ({ record, figures }) => {
        const { lag } = figures.sameMotion;
        const zero = agreementAt(record, 0);
        if (lag === undefined) {
          expect(zero.marked).toBe(0);
          return;
        }
        expect(lag.atZero).toBe(zero.same / zero.marked);
        const tried = new Map<number, number>();
        for (let at = -lag.reach; at <= lag.reach; at += 1) {
          const { same, marked } = agreementAt(record, at);
          if (2 * marked >= zero.marked) tried.set(at, same / marked);
        }
        const highest = [...tried.values()].reduce((most, value) => Math.max(most, value), 0);
        const sizes = [...tried].flatMap(([at, value]) => (value === highest ? [Math.abs(at)] : []));
        const size = sizes.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
        const ways = [size, -size].filter((at) => tried.get(at) === highest);
        const leads =
          size === 0 ? 'neither' : ways.length === 2 ? 'either' : (ways[0] ?? 0) > 0 ? 'left' : 'right';
        expect(lag.best).toMatchObject({ lag: size, agreement: highest, leads });
        for (const { lag: at, agreement } of lag.curve) expect(agreement).toBe(tried.get(at));
        expect(lag.curve.at(-1)?.lag).toBe(lag.reach);
      },
      300,
    );
  });
});

it.each(['present', 'improved'])('the demonstration study, method %s, frame by frame', async (method) => {
  const text = await readFile(
    new URL('../../../../../../examples/couplings/couplings.evenhand.json', import.meta.url),
    'utf8',
  );
  const study = parseStudy(text);
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  const { record, figures } = caseOf(study.value, method);
  expect(record.cycles.length).toBe(6);
  for (const row of figures.times.motions.filter(({ hand }) => hand !== 'both')) {
    const side = row.hand === 'left' ? 'left' : 'right';
    expectTime(
      row.time,
      timePerCycle(record, (look) => kindOf(look, side) === row.kind),
    );
  }
  for (const { left, right, time } of figures.overlap.cells) {
    expectTime(
      time,
      timePerCycle(record, (look) => kindOf(look, 'left') === left && kindOf(look, 'right') === right),
    );
  }
});

it('the generator gives what the checks are about', () => {
  const seen = new Set<string>();
  forAll(twoHandStudyArb(60), 'm', ({ reading, figures }) => {
    const { lag } = figures.sameMotion;
    if (lag !== undefined) seen.add(`leads ${lag.best.leads}`);
    for (const { code, time } of figures.together) if ((time.value ?? 0) > 0) seen.add(code);
    for (const cycle of reading.cycles) if (cycle.left.some(({ cut }) => cut)) seen.add('cut');
    if (reading.cycles.length > 2) seen.add('cycles');
    for (const { place } of figures.times.places) seen.add(`place ${place}`);
  });
  const leads = ['left', 'right', 'neither'].map((name) => `leads ${name}`);
  const codes = ['both-work', 'right-holds-left-waits', 'both-wait', 'not-marked', 'both-hold'];
  for (const name of [...leads, ...codes, 'cut', 'cycles', 'place undefined', 'place bin']) {
    expect(seen).toContain(name);
  }
});
