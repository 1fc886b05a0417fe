import { type MotionKind, motionKinds } from '../../../ground/tables/index.ts';
import { type HandState, type MethodReading, type Segment, segmentsOf, stateOf } from '../reading/index.ts';
import {
  addTo,
  amount,
  dense,
  emptyTally,
  type Measuring,
  portion,
  type Tally,
  totalOf,
  type Whole,
  wholeOf,
} from './measure.ts';
import type { CyclePart, Overlap, SameMotion, Together, TogetherCode } from './shape.ts';
import { tracesTogether } from './traces.ts';

const names: Readonly<Record<TogetherCode, string>> = {
  'both-work': 'both hands work',
  'left-works-right-holds': 'left works, right holds',
  'right-works-left-holds': 'right works, left holds',
  'left-works-right-waits': 'left works, right waits',
  'right-works-left-waits': 'right works, left waits',
  'both-hold': 'both hands hold',
  'left-holds-right-waits': 'left holds, right waits',
  'right-holds-left-waits': 'right holds, left waits',
  'both-wait': 'both hands wait',
  'not-marked': 'a hand is not marked',
};
const codes = Object.keys(names) as TogetherCode[];

const codeOfStates: Readonly<Record<string, TogetherCode>> = {
  'working working': 'both-work',
  'working holding': 'left-works-right-holds',
  'holding working': 'right-works-left-holds',
  'working idle': 'left-works-right-waits',
  'idle working': 'right-works-left-waits',
  'holding holding': 'both-hold',
  'holding idle': 'left-holds-right-waits',
  'idle holding': 'right-holds-left-waits',
  'idle idle': 'both-wait',
};

/** The row of `Together` for what the left and the right hand do. */
export function togetherCode(left: HandState, right: HandState): TogetherCode {
  return codeOfStates[`${left} ${right}`] ?? 'not-marked';
}

type Pair = readonly [left: MotionKind, right: MotionKind];

/** Time of each pair of motions that the hands did at once, cycle by cycle. */
export interface PairTimes {
  readonly cells: readonly { readonly pair: Pair; readonly tally: Tally }[];
}

/** The one walk over all segments; the figures of both hands are sums of its cells. */
export function pairTimesOf(reading: MethodReading): PairTimes {
  const rank = new Map(motionKinds.map((kind, index) => [kind, index]));
  const cells = new Map<number, { pair: Pair; tally: Tally }>();
  const add = (cycle: number, { left, right, duration }: Segment) => {
    if (duration === 0) return;
    const key = (rank.get(left.kind) ?? 0) * motionKinds.length + (rank.get(right.kind) ?? 0);
    let cell = cells.get(key);
    if (cell === undefined) {
      cell = { pair: [left.kind, right.kind], tally: emptyTally() };
      cells.set(key, cell);
    }
    addTo(cell.tally, cycle, duration);
  };
  for (const cycle of reading.cycles) {
    for (const segment of segmentsOf(cycle)) add(cycle.position, segment);
  }
  return { cells: [...cells].sort(([a], [b]) => a - b).map(([, cell]) => cell) };
}

/** The cells that fit, added up for each cycle. */
function sumOf(times: PairTimes, cycles: number, fits: (pair: Pair) => boolean): Tally {
  const sums = new Array<number>(cycles).fill(0);
  for (const { pair, tally } of times.cells) {
    if (!fits(pair)) continue;
    tally.cycles.forEach((cycle, index) => {
      sums[cycle] = (sums[cycle] ?? 0) + (tally.values[index] ?? 0);
    });
  }
  const found = emptyTally();
  sums.forEach((value, cycle) => {
    if (value > 0) addTo(found, cycle, value);
  });
  return found;
}

interface Parts {
  readonly measuring: Measuring;
  readonly reading: MethodReading;
  readonly times: PairTimes;
  readonly cycle: Whole;
}

function part({ measuring, reading, cycle }: Parts, tally: Tally, fits: (pair: Pair) => boolean): CyclePart {
  return {
    time: amount(measuring, tally, 'time'),
    share: portion(measuring, tally, cycle),
    traces: () => tracesTogether(reading, (left, right) => fits([left.kind, right.kind])),
  };
}

/** What the hands do at once, by their states. */
export function togetherOf(parts: Parts): Together[] {
  return codes.map((code) => {
    const fits = ([left, right]: Pair) => togetherCode(stateOf(left), stateOf(right)) === code;
    const tally = sumOf(parts.times, parts.measuring.cycles, fits);
    return { code, name: names[code], ...part(parts, tally, fits) };
  });
}

/** What the hands do at once, motion by motion. */
export function overlapOf(parts: Parts): Overlap {
  const { cells } = parts.times;
  const kindsOf = (side: 0 | 1) =>
    motionKinds.filter((kind) => cells.some(({ pair }) => pair[side] === kind));
  return {
    left: kindsOf(0),
    right: kindsOf(1),
    cells: cells.map(({ pair: [left, right], tally }) => ({
      left,
      right,
      ...part(parts, tally, ([a, b]) => a === left && b === right),
    })),
  };
}

const isSame = ([left, right]: Pair) => left === right && left !== 'unmarked';
const isMarked = ([left, right]: Pair) => left !== 'unmarked' && right !== 'unmarked';
const isWork = (pair: Pair) => pair.every((kind) => stateOf(kind) === 'working');

/** How much of the time both hands do the same; the totals are those at lag 0. */
export function sameShares(parts: Parts): Omit<SameMotion, 'lag'> {
  const { measuring, reading, times } = parts;
  const of = (fits: (pair: Pair) => boolean, whole: (pair: Pair) => boolean) =>
    portion(
      measuring,
      sumOf(times, measuring.cycles, fits),
      wholeOf(dense(sumOf(times, measuring.cycles, whole), measuring.cycles)),
    );
  return {
    share: of(isSame, isMarked),
    workShare: of((pair) => isSame(pair) && isWork(pair), isWork),
    traces: () => tracesTogether(reading, (left, right) => isSame([left.kind, right.kind])),
  };
}

/** Time in which both hands are marked, over all cycles. */
export function markedTogether(times: PairTimes): number {
  return times.cells.reduce((sum, { pair, tally }) => sum + (isMarked(pair) ? totalOf(tally) : 0), 0);
}
