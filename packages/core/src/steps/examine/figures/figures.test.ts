import { describe, expect, it } from 'vitest';
import { rowOf, studyOf } from '../../../../../../tests/helpers/two-hand-records.ts';
import { micros } from '../../../ground/base/index.ts';
import type { Method } from '../../../ground/study/index.ts';
import type { GroupingId } from '../../../ground/tables/index.ts';
import { type ReadingChoice, readMethod } from '../reading/index.ts';
import { type Figure, type FigureChoice, figuresOf } from './index.ts';

interface Asked {
  readonly cycles?: readonly number[];
  readonly grouping?: GroupingId;
  readonly choice?: FigureChoice;
  readonly reading?: ReadingChoice;
}

/** Rows as text, starts of the cycles in milliseconds. */
function figures(left: string, right: string, asked: Asked = {}) {
  const rows = { left: rowOf('left', left), right: rowOf('right', right) };
  const starts = asked.cycles ?? [0];
  const cycles: Method['cycles'] = {
    items: starts.map((start, index) => ({ id: `c${index}`, start: start * 1000 })),
    end: Math.max(rows.left.end, rows.right.end),
  };
  const read = readMethod(studyOf({ ...rows, cycles }), 'm', asked.reading);
  if (!read.ok) throw new Error(read.error.code);
  return figuresOf(read.value, asked.grouping ?? 'niebel-freivalds', asked.choice);
}

const ms = (figure: Figure | undefined) =>
  figure?.perCycle().map((value) => (value === undefined ? undefined : value / 1000));

/**
 * Two cycles, 1.0 and 1.2 s. The left hand reaches for a ring and holds it; the right waits, reaches for a body and
 * assembles.
 *
 *     left   TE 300 G 200  H 500        | TE 400      G 200 H 600
 *     right  UD 200 TE 200 G 100 A 500  | UD 400      TE 200 A 600
 */
const left =
  'TE 300 to=bin o=ring, G 200 o=ring, H 500 o=ring, TE 400 to=bin o=ring, G 200 o=ring, H 600 o=ring';
const right =
  'UD 200, TE 200 to=bin o=body, G 100 from=bin o=body, A 500 to=bench o=body, UD 400, TE 200 to=bin o=body, A 600 to=bench o=body';
const bench = (choice?: FigureChoice) =>
  figures(left, right, { cycles: [0, 1000], ...(choice === undefined ? {} : { choice }) });

describe('two cycles at the bench, worked by hand', () => {
  it('the cycle: 1.0 and 1.2 s, mean 1.1, deviation 0.1414, interval 1.1 ± 12.706·0.1414/√2', () => {
    const { cycle } = bench();
    expect(ms(cycle)).toEqual([1000, 1200]);
    expect(cycle.value).toBe(1_100_000);
    expect(cycle.sample?.deviation).toBeCloseTo(141_421.356, 2);
    expect(cycle.sample?.interval?.low).toBeCloseTo(1_100_000 - 1_270_620, -2);
    expect(cycle.traces()).toEqual([
      { cycle: 0, hand: 'both', from: 0, to: 1_000_000 },
      { cycle: 1, hand: 'both', from: 1_000_000, to: 2_200_000 },
    ]);
  });

  it('by motion: the left hand reaches 0.35 s a cycle, 0.7 of 2.2 s', () => {
    const rows = bench().times.motions;
    expect(rows.map(({ hand, kind, time }) => [hand, kind, ...(ms(time) ?? [])])).toEqual([
      ['left', 'H', 500, 600],
      ['left', 'TE', 300, 400],
      ['left', 'G', 200, 200],
      ['right', 'A', 500, 600],
      ['right', 'UD', 200, 400],
      ['right', 'TE', 200, 200],
      ['right', 'G', 100, 0],
      ['both', 'TE', 500, 600],
      ['both', 'H', 500, 600],
      ['both', 'A', 500, 600],
      ['both', 'UD', 200, 400],
      ['both', 'G', 300, 200],
    ]);
    const reach = rows[1];
    expect([reach?.time.value, reach?.count.value]).toEqual([350_000, 1]);
    expect(reach?.share.value).toBeCloseTo(0.7 / 2.2, 12);
    expect(reach?.share.sample?.mean).toBeCloseTo((0.3 + 1 / 3) / 2, 12);
    expect(reach?.traces()).toEqual([
      { cycle: 0, hand: 'left', from: 0, to: 300_000 },
      { cycle: 1, hand: 'left', from: 1_000_000, to: 1_400_000 },
    ]);
  });

  it('by object and by place: what says neither has a row of its own', () => {
    const { objects, places } = bench().times;
    const rightRows = <T extends { hand: string }>(rows: readonly T[]) =>
      rows.filter(({ hand }) => hand === 'right');
    expect(rightRows(objects).map(({ object, time }) => [object, ...(ms(time) ?? [])])).toEqual([
      ['body', 800, 800],
      [undefined, 200, 400],
    ]);
    expect(rightRows(places).map(({ place, name, time }) => [place, name, ...(ms(time) ?? [])])).toEqual([
      ['bench', 'The bench', 500, 600],
      [undefined, undefined, 200, 400],
      ['bin', 'The bin', 300, 200],
    ]);
    const all = places.filter(({ hand, place }) => hand === 'left' && place === 'bin');
    expect(all.map(({ time }) => ms(time))).toEqual([[1000, 1200]]);
  });

  it('motions: right 4 and 3, so 3.5 a cycle and 7 in 2.2 s, 190.9 a minute', () => {
    const pace = bench().pace.find(({ hand }) => hand === 'right');
    expect(pace?.aCycle.perCycle()).toEqual([4, 3]);
    expect(pace?.aCycle.value).toBe(3.5);
    expect(pace?.aMinute.value).toBeCloseTo((7 / 2.2) * 60, 9);
  });

  it('states: left works 0.5 and 0.6 s and holds as long, right waits 0.2 and 0.4 s', () => {
    const rows = bench().states.map(({ hand, state, time }) => [hand, state, ...(ms(time) ?? [])]);
    expect(rows).toEqual([
      ['left', 'working', 500, 600],
      ['left', 'holding', 500, 600],
      ['left', 'idle', 0, 0],
      ['left', 'unmarked', 0, 0],
      ['right', 'working', 800, 800],
      ['right', 'holding', 0, 0],
      ['right', 'idle', 200, 400],
      ['right', 'unmarked', 0, 0],
    ]);
  });

  it('together: left works while right waits, then both work, then right works while left holds', () => {
    const { together } = bench();
    const shown = together.filter(({ time }) => time.value !== 0);
    expect(shown.map(({ code, time }) => [code, ...(ms(time) ?? [])])).toEqual([
      ['both-work', 300, 200],
      ['right-works-left-holds', 500, 600],
      ['left-works-right-waits', 200, 400],
    ]);
    expect(shown[0]?.share.value).toBeCloseTo(0.5 / 2.2, 12);
    expect(shown[0]?.traces()).toEqual([
      { cycle: 0, hand: 'both', from: 200_000, to: 500_000 },
      { cycle: 1, hand: 'both', from: 1_400_000, to: 1_600_000 },
    ]);
    expect(together).toHaveLength(10);
  });

  it('overlap, motion by motion', () => {
    const { overlap } = bench();
    expect([overlap.left, overlap.right]).toEqual([
      ['TE', 'G', 'H'],
      ['TE', 'G', 'A', 'UD'],
    ]);
    expect(overlap.cells.map((cell) => [cell.left, cell.right, ...(ms(cell.time) ?? [])])).toEqual([
      ['TE', 'TE', 100, 0],
      ['TE', 'UD', 200, 400],
      ['G', 'TE', 100, 200],
      ['G', 'G', 100, 0],
      ['H', 'A', 500, 600],
    ]);
  });

  it('balance: 1.1 s of work against 1.6 s, and 0.3 and 0.2 s more in the right hand', () => {
    const { ratio, difference, traces } = bench().balance;
    expect(ratio.value).toBe(1.1 / 1.6);
    expect(ratio.perCycle()).toEqual([5 / 8, 6 / 8]);
    expect([ms(difference), difference.value]).toEqual([[-300, -200], -250_000]);
    expect(traces().map(({ from, to }) => [from / 1000, to / 1000])).toEqual([
      [0, 200],
      [500, 1000],
      [1000, 1400],
      [1600, 2200],
    ]);
  });

  it('beginning: the right hand 0.2 and 0.4 s late; of nine working motions five begin within 0.1 s of another', () => {
    const { begin, tolerance } = bench().beginEnd;
    expect(tolerance).toBe(100_000);
    expect(ms(begin.gap)).toEqual([200, 400]);
    expect(begin.cycles).toEqual({ within: 0, of: 2 });
    expect(begin.motions.map(({ hand, within, of }) => [hand, within, of])).toEqual([
      ['left', 2, 4],
      ['right', 3, 5],
      ['both', 5, 9],
    ]);
    expect(begin.motions[0]?.traces().map(({ from }) => from)).toEqual([300_000, 1_400_000]);
    expect(begin.motions[0]?.apart().map(({ from }) => from)).toEqual([0, 1_000_000]);
    expect(begin.traces().map(({ hand, from }) => [hand, from / 1000])).toEqual([
      ['left', 0],
      ['right', 200],
      ['left', 1000],
      ['right', 1400],
    ]);
  });

  it('ending: the left hand 0.5 and 0.6 s early; a wider tolerance counts more as together', () => {
    const { end } = bench().beginEnd;
    expect([ms(end.gap), end.cycles]).toEqual([[500, 600], { within: 0, of: 2 }]);
    const wide = bench({ tolerance: micros(550_000) }).beginEnd;
    expect([wide.end.cycles, wide.begin.cycles]).toEqual([
      { within: 1, of: 2 },
      { within: 2, of: 2 },
    ]);
  });

  it('the same motion: 0.1 s reaching and 0.1 s grasping of 2.2 s, all of it work, of 0.5 s', () => {
    const { share, workShare, traces } = bench().sameMotion;
    expect(share.value).toBeCloseTo(0.2 / 2.2, 12);
    expect(workShare.value).toBeCloseTo(0.2 / 0.5, 12);
    expect(traces().map(({ from, to }) => [from, to])).toEqual([
      [200_000, 300_000],
      [400_000, 500_000],
    ]);
  });
});

describe('effective and ineffective under a named grouping', () => {
  const rows = (grouping: GroupingId) => {
    const { groups } = figures('I 100, PP 300, F 100', 'R 500', { grouping });
    return [
      groups.grouping.name,
      ...groups.rows.map(({ hand, group, time }) => `${hand} ${group} ${ms(time)}`),
    ];
  };

  it('Niebel & Freivalds: inspect and rest ineffective, pre-position effective, find not listed', () => {
    expect(rows('niebel-freivalds')).toEqual([
      'Niebel & Freivalds',
      'left effective 300',
      'left ineffective 100',
      'left unlisted 100',
      'right effective 0',
      'right ineffective 500',
      'right unlisted 0',
      'both effective 300',
      'both ineffective 600',
      'both unlisted 100',
    ]);
  });

  it('Groover: inspect and rest effective, pre-position ineffective, find not listed', () => {
    expect(rows('groover').slice(0, 7)).toEqual([
      'Groover',
      'left effective 100',
      'left ineffective 300',
      'left unlisted 100',
      'right effective 500',
      'right ineffective 0',
      'right unlisted 0',
    ]);
  });
});

describe('the lag between the rows', () => {
  const first = 'TE 300, G 200, TL 500';
  const later = 'UD 200, TE 300, G 200, TL 300';

  it('as recorded 0.4 of 1.0 s agree; with the right hand 0.2 s later all does, and the left hand leads', () => {
    const { lag } = figures(first, later).sameMotion;
    expect(lag).toMatchObject({ reach: 500_000, atZero: 0.4 });
    expect(lag?.best).toMatchObject({ lag: 200_000, leads: 'left', agreement: 1 });
    expect(lag?.best.traces()).toHaveLength(6);
    // At 0.1 s: TE 0.2 and TL 0.4 of the 0.9 s that are left, G not at all.
    expect(lag?.curve.find((point) => point.lag === 100_000)?.agreement).toBeCloseTo(0.6 / 0.9, 12);
    expect(lag?.curve.map((point) => point.lag)).toHaveLength(201);
  });

  it('the other way round the right hand leads', () => {
    const { lag } = figures(later, first).sameMotion;
    expect(lag?.best).toMatchObject({ lag: 200_000, leads: 'right', agreement: 1 });
  });

  it('hands that do the same at once agree without a lag, and neither leads', () => {
    const { lag } = figures(first, first).sameMotion;
    expect([lag?.atZero, lag?.best.lag, lag?.best.leads]).toEqual([1, 0, 'neither']);
  });

  it('hands that take turns agree in either order', () => {
    const { lag } = figures('TE 100, G 100, TE 100, G 100', 'G 100, TE 100, G 100, TE 100').sameMotion;
    expect(lag?.atZero).toBe(0);
    expect(lag?.best).toMatchObject({ lag: 100_000, leads: 'either', agreement: 1 });
  });

  it('each cycle is compared with itself only: turns that come round in the next cycle do not agree', () => {
    const rows = ['A 400, UD 400', 'UD 400, A 400'] as const;
    const { lag } = figures(rows[0], rows[1], { cycles: [0, 400] }).sameMotion;
    expect(lag?.best).toMatchObject({ lag: 0, leads: 'neither', agreement: 0 });
  });

  it('reaches half the mean cycle, and fifty motions of mean length in a long record without cycles', () => {
    const hundred = Array.from({ length: 400 }, (_, index) => (index % 2 === 0 ? 'A 100' : 'G 100')).join(
      ', ',
    );
    expect(figures(hundred, hundred).sameMotion.lag?.reach).toBe(5_000_000);
    expect(figures(hundred, hundred, { cycles: [0, 10_000, 16_000] }).sameMotion.lag?.reach).toBe(5_000_000);
    const short = { cycles: [0, 4000, 8000, 12_000, 16_000, 20_000, 24_000, 28_000, 32_000, 36_000] };
    expect(figures(hundred, hundred, short).sameMotion.lag?.reach).toBe(2_000_000);
  });

  it('hands that are never marked at the same time have none, and no share either', () => {
    const { share, lag } = figures('A 400, unmarked 400', 'unmarked 400, A 400').sameMotion;
    expect([share.value, share.sample, lag]).toEqual([undefined, undefined, undefined]);
  });
});

describe('edges', () => {
  it('a motion that goes on into the next cycle counts once, where it begins, and lasts in both', () => {
    const { pace, times, beginEnd } = figures('A 1500, UD 500', 'A 2000', { cycles: [0, 1000] });
    expect(pace.map(({ aCycle }) => aCycle.perCycle())).toEqual([
      [1, 1],
      [1, 0],
    ]);
    const assembled = times.motions.filter(({ kind, hand }) => kind === 'A' && hand !== 'both');
    expect(assembled.map(({ hand, time }) => [hand, ...(ms(time) ?? [])])).toEqual([
      ['left', 1000, 500],
      ['right', 1000, 1000],
    ]);
    const ends = beginEnd.end.motions.map(({ hand, within, of }) => [hand, within, of]);
    expect([beginEnd.begin.motions[2]?.of, ends]).toEqual([
      2,
      [
        ['left', 0, 1],
        ['right', 0, 1],
        ['both', 0, 2],
      ],
    ]);
  });

  it('what is not marked counts in no figure: rates and shares are those of the marked time', () => {
    const { pace, times, together, marked } = figures('A 500, unmarked 500', 'A 1000');
    expect(ms(marked.left)).toEqual([500]);
    expect(pace[0]?.aMinute.value).toBe(120);
    expect(times.motions[0]?.share.value).toBe(1);
    expect(together.find(({ code }) => code === 'not-marked')?.time.value).toBe(500_000);
    expect(times.motions.map(({ kind }) => kind)).not.toContain('unmarked');
  });

  it('a hand that is not marked at all has no share and no rate, but no time either', () => {
    const { pace, groups, balance, beginEnd } = figures('unmarked 1000', 'UD 1000');
    expect([pace[0]?.aMinute.value, pace[0]?.aCycle.value]).toEqual([undefined, 0]);
    expect(groups.rows[0]?.share.value).toBeUndefined();
    expect([balance.ratio.value, balance.difference.value]).toEqual([undefined, 0]);
    expect([beginEnd.begin.gap.value, beginEnd.begin.cycles.of]).toEqual([undefined, 0]);
    expect(beginEnd.begin.motions[2]?.share.value).toBeUndefined();
  });

  it('after a transport to nowhere said, and after a stretch not marked, the place is not said', () => {
    const { times } = figures(
      'P 100 to=bench, U 100, TL 100, H 100, RL 100 from=box, unmarked 100, G 100',
      'UD 700',
    );
    const rows = times.places.filter(({ hand }) => hand === 'left');
    expect(rows.map(({ place, time }) => [place, ...(ms(time) ?? [])])).toEqual([
      [undefined, 300],
      ['bench', 200],
      ['box', 100],
    ]);
  });

  it('one cycle has values and no spread', () => {
    const { cycle } = figures('A 500', 'A 500');
    expect(cycle.sample).toEqual({
      n: 1,
      mean: 500_000,
      deviation: undefined,
      variation: undefined,
      interval: undefined,
    });
  });

  it('figures of chosen cycles are those of these cycles alone', () => {
    const one = figures(left, right, { cycles: [0, 1000], reading: { cycles: [2] } });
    expect(ms(one.cycle)).toEqual([1200]);
    expect(one.balance.ratio.value).toBe(0.75);
  });
});
