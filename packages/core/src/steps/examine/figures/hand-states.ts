import { hands } from '../../../ground/study/index.ts';
import { type HandState, type MethodReading, type Piece, stateOf } from '../reading/index.ts';
import {
  addTo,
  amount,
  dense,
  emptyTally,
  type Measuring,
  portion,
  type Tally,
  totalOf,
  valued,
  type Whole,
} from './measure.ts';
import type { Balance, Figures, Pace } from './shape.ts';
import { inOrder, tracesTogether } from './traces.ts';

const stateOrder: readonly HandState[] = ['working', 'holding', 'idle', 'unmarked'];

function piecesWhere(
  reading: MethodReading,
  hand: 'left' | 'right',
  fits: (piece: Piece) => boolean,
): Piece[] {
  return reading.cycles.flatMap((cycle) => cycle[hand].filter(fits));
}

/** Working, holding, idle and unmarked time of each hand. */
export function statesOf(measuring: Measuring, reading: MethodReading, cycle: Whole): Figures['states'] {
  return hands.flatMap((hand) => {
    const tallies = stateTallies(reading, hand);
    return stateOrder.map((state) => {
      const fits = ({ kind }: Piece) => stateOf(kind) === state;
      const tally = tallies[state];
      return {
        hand,
        state,
        time: amount(measuring, tally, 'time'),
        share: portion(measuring, tally, cycle),
        traces: () => inOrder(piecesWhere(reading, hand, fits)),
      };
    });
  });
}

function stateTallies(reading: MethodReading, hand: 'left' | 'right'): Record<HandState, Tally> {
  const tallies = {
    working: emptyTally(),
    holding: emptyTally(),
    idle: emptyTally(),
    unmarked: emptyTally(),
  };
  for (const cycle of reading.cycles) {
    for (const { kind, duration } of cycle[hand]) addTo(tallies[stateOf(kind)], cycle.position, duration);
  }
  return tallies;
}

const minute = 60_000_000;

/** Motions a cycle and a minute. */
export function paceOf(
  measuring: Measuring,
  reading: MethodReading,
  marked: Readonly<Record<'left' | 'right', Whole>>,
): Pace[] {
  const begins = ({ kind, cut }: Piece) => kind !== 'unmarked' && !cut;
  return hands.map((hand) => {
    const tally = emptyTally();
    for (const cycle of reading.cycles) {
      for (const piece of cycle[hand]) if (begins(piece)) addTo(tally, cycle.position, 1);
    }
    return {
      hand,
      aCycle: amount(measuring, tally, 'count'),
      aMinute: portion(measuring, tally, marked[hand], 'rate', minute),
      traces: () => inOrder(piecesWhere(reading, hand, begins)),
    };
  });
}

/** Working time of one hand against that of the other; traced to where only one of them works. */
export function balanceOf(measuring: Measuring, reading: MethodReading): Balance {
  const left = stateTallies(reading, 'left').working;
  const right = stateTallies(reading, 'right').working;
  const rights = dense(right, measuring.cycles);
  const lefts = dense(left, measuring.cycles);
  const perCycle = lefts.map((value, cycle) => evenness(value, rights[cycle] ?? 0));
  const difference = lefts.map((value, cycle) => value - (rights[cycle] ?? 0));
  const works = ({ kind }: Piece) => stateOf(kind) === 'working';
  return {
    ratio: valued('ratio', perCycle, evenness(totalOf(left), totalOf(right))),
    difference: valued('time', difference),
    traces: () => tracesTogether(reading, (a, b) => works(a) !== works(b)),
  };
}

function evenness(a: number, b: number): number | undefined {
  const larger = Math.max(a, b);
  return larger === 0 ? undefined : Math.min(a, b) / larger;
}
