import { lastAtOrBefore, type Micros } from '../../../ground/base/index.ts';
import { endOf, type Hand, hands } from '../../../ground/study/index.ts';
import { type CycleReading, type MethodReading, type Piece, stateOf } from '../reading/index.ts';
import { addTo, dense, emptyTally, type Measuring, portion, type Tally, valued, wholeOf } from './measure.ts';
import type { BeginEnd, Meeting, MotionsMeeting } from './shape.ts';
import { type RowHand, rowHands } from './time-rows.ts';
import { inOrder } from './traces.ts';

type Edge = 'start' | 'end';

/** Whether the hands begin and end their work together, as whole cycles and motion by motion. */
export function beginEndOf(measuring: Measuring, reading: MethodReading, tolerance: Micros): BeginEnd {
  return {
    tolerance,
    begin: meetingOf(measuring, reading, tolerance, 'start'),
    end: meetingOf(measuring, reading, tolerance, 'end'),
  };
}

function meetingOf(measuring: Measuring, reading: MethodReading, tolerance: Micros, edge: Edge): Meeting {
  const gaps = reading.cycles.map((cycle) => {
    const [left, right] = outermost(cycle, edge);
    return left === undefined || right === undefined ? undefined : Math.abs(left[edge] - right[edge]);
  });
  const known = gaps.filter((gap) => gap !== undefined);
  return {
    gap: valued('time', gaps),
    cycles: { within: known.filter((gap) => gap <= tolerance).length, of: known.length },
    motions: motionsMeeting(measuring, reading, tolerance, edge),
    traces: () =>
      inOrder(
        reading.cycles.flatMap((cycle) => outermost(cycle, edge).filter((piece) => piece !== undefined)),
      ),
  };
}

function isWork({ kind }: Piece): boolean {
  return stateOf(kind) === 'working';
}

/** The first, or the last, working motion of the left and of the right hand. */
function outermost(cycle: CycleReading, edge: Edge): (Piece | undefined)[] {
  return hands.map((hand) => (edge === 'start' ? cycle[hand].find(isWork) : cycle[hand].findLast(isWork)));
}

/** A working motion and how far the nearest one of the other hand begins (ends) from it; undefined when there is none. */
interface Met {
  readonly piece: Piece;
  readonly gap: number | undefined;
}

function motionsMeeting(
  measuring: Measuring,
  reading: MethodReading,
  tolerance: Micros,
  edge: Edge,
): MotionsMeeting[] {
  const tallies = (): Record<RowHand, Tally> => ({
    left: emptyTally(),
    right: emptyTally(),
    both: emptyTally(),
  });
  const [within, of] = [tallies(), tallies()];
  const isWithin = ({ gap }: Met) => gap !== undefined && gap <= tolerance;
  for (const cycle of reading.cycles) {
    const met = metIn(reading, cycle, edge);
    for (const hand of hands) {
      const count = met[hand].reduce((sum, item) => sum + (isWithin(item) ? 1 : 0), 0);
      for (const row of [hand, 'both'] as const) {
        addTo(within[row], cycle.position, count);
        addTo(of[row], cycle.position, met[hand].length);
      }
    }
  }
  const pieces = (row: RowHand, fits: (met: Met) => boolean) =>
    reading.cycles.flatMap((cycle) => {
      const { left, right } = metIn(reading, cycle, edge);
      const met = row === 'both' ? [...left, ...right] : row === 'left' ? left : right;
      return met.filter(fits).map(({ piece }) => piece);
    });
  return rowHands.map((hand) => {
    const whole = wholeOf(dense(of[hand], measuring.cycles));
    return {
      hand,
      within: within[hand].values.reduce((sum, value) => sum + value, 0),
      of: whole.total,
      share: portion(measuring, within[hand], whole),
      traces: () => inOrder(pieces(hand, isWithin)),
      apart: () => inOrder(pieces(hand, (met) => !isWithin(met))),
    };
  });
}

/** The working motions of each hand that begin (end) in the cycle. */
function metIn(reading: MethodReading, cycle: CycleReading, edge: Edge): Record<Hand, Met[]> {
  const left = edgesIn(reading, cycle, 'left', edge);
  const right = edgesIn(reading, cycle, 'right', edge);
  return { left: nearest(left, right, edge), right: nearest(right, left, edge) };
}

/** Both lists are in order of time. */
function nearest(own: readonly Piece[], others: readonly Piece[], edge: Edge): Met[] {
  let next = 0;
  return own.map((piece) => {
    const at = piece[edge];
    for (let other = others[next]; other !== undefined && other[edge] < at; other = others[next]) next += 1;
    const [before, after] = [others[next - 1], others[next]];
    const gap = Math.min(
      before === undefined ? Number.POSITIVE_INFINITY : at - before[edge],
      after === undefined ? Number.POSITIVE_INFINITY : after[edge] - at,
    );
    return { piece, gap: Number.isFinite(gap) ? gap : undefined };
  });
}

function edgesIn(reading: MethodReading, cycle: CycleReading, hand: Hand, edge: Edge): Piece[] {
  return cycle[hand].filter(
    (piece) => isWork(piece) && (edge === 'start' ? !piece.cut : !lastsLonger(reading, cycle, piece)),
  );
}

/** The motion goes on after the cycle. */
function lastsLonger({ method }: MethodReading, cycle: CycleReading, { hand, from, to }: Piece): boolean {
  if (to < cycle.to) return false;
  const row = method[hand];
  return (
    endOf(
      row,
      lastAtOrBefore(row.items, from, ({ start }) => start),
    ) > cycle.to
  );
}
