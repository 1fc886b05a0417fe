import { lastAtOrBefore, type Micros } from '../../../ground/base/index.ts';
import { endOf, type Hand, hands, otherHand } from '../../../ground/study/index.ts';
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
    for (const hand of hands) {
      const met = metIn(reading, cycle, hand, edge);
      const count = met.filter(isWithin).length;
      for (const row of [hand, 'both'] as const) {
        addTo(within[row], cycle.position, count);
        addTo(of[row], cycle.position, met.length);
      }
    }
  }
  const pieces = (row: RowHand, fits: (met: Met) => boolean) =>
    reading.cycles.flatMap((cycle) =>
      hands
        .filter((hand) => row === 'both' || row === hand)
        .flatMap((hand) =>
          metIn(reading, cycle, hand, edge)
            .filter(fits)
            .map(({ piece }) => piece),
        ),
    );
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

/** The working motions of a hand that begin (end) in the cycle. */
function metIn(reading: MethodReading, cycle: CycleReading, hand: Hand, edge: Edge): Met[] {
  const own = edgesIn(reading, cycle, hand, edge);
  const others = edgesIn(reading, cycle, otherHand(hand), edge);
  let next = 0;
  return own.map((piece) => {
    const at = piece[edge];
    while ((others[next]?.[edge] ?? Number.POSITIVE_INFINITY) < at) next += 1;
    const gaps = [others[next - 1], others[next]].map((other) =>
      other === undefined ? Number.POSITIVE_INFINITY : Math.abs(other[edge] - at),
    );
    const gap = Math.min(...gaps);
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
