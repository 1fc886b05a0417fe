import { type Micros, micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { GroupingId } from '../../../ground/tables/index.ts';
import type { CycleReading, MethodReading, Trace } from '../reading/index.ts';
import { beginEndOf } from './begin-end.ts';
import type { Figure, Traced } from './figure.ts';
import { balanceOf, paceOf, statesOf } from './hand-states.ts';
import { lagAgreementOf } from './lag.ts';
import { measuringOf, valued, wholeOf } from './measure.ts';
import type { Figures } from './shape.ts';
import { groupsOf, timesOf } from './times.ts';
import { markedTogether, overlapOf, pairTimesOf, sameShares, togetherOf } from './together.ts';
import { traceOfPiece } from './traces.ts';

/** The tenth of a second that counts as together unless another tolerance is asked for: our choice, no source. */
export const togetherTolerance = micros(100_000);

export interface FigureChoice {
  /** Largest gap between two beginnings or ends that counts as together, microseconds, 0 or more. */
  readonly tolerance?: Micros | undefined;
}

/** All figures of a reading. Figures are numbers about a method and its cycles, never about a person. */
export function figuresOf(reading: MethodReading, grouping: GroupingId, choice: FigureChoice = {}): Figures {
  const measuring = measuringOf(reading);
  const marked = markedWholes(reading);
  const cycle = wholeOf(reading.cycles.map(({ duration }) => duration));
  const times = pairTimesOf(reading);
  const parts = { measuring, reading, times, cycle };
  const same = sameShares(parts);
  return {
    cycle: wholeFigure(reading, cycle.perCycle, 'both'),
    marked: {
      left: wholeFigure(reading, marked.left.perCycle, 'left'),
      right: wholeFigure(reading, marked.right.perCycle, 'right'),
    },
    times: timesOf(measuring, reading, marked),
    groups: groupsOf(measuring, reading, marked, grouping),
    pace: paceOf(measuring, reading, marked),
    states: statesOf(measuring, reading, cycle),
    together: togetherOf(parts),
    overlap: overlapOf(parts),
    balance: balanceOf(measuring, reading),
    beginEnd: beginEndOf(measuring, reading, choice.tolerance ?? togetherTolerance),
    sameMotion: { ...same, lag: lagAgreementOf(reading, markedTogether(times)) },
  };
}

function markedWholes({ cycles }: MethodReading) {
  const both = ({ marked }: CycleReading) => marked.left + marked.right;
  return {
    left: wholeOf(cycles.map(({ marked }) => marked.left)),
    right: wholeOf(cycles.map(({ marked }) => marked.right)),
    both: wholeOf(cycles.map(both)),
  };
}

function wholeFigure(
  { cycles }: MethodReading,
  perCycle: readonly number[],
  hand: Hand | 'both',
): Figure & Traced {
  const whole = ({ position, from, to }: CycleReading): Trace => ({
    cycle: position,
    hand: 'both',
    from,
    to,
  });
  const markedOf = (cycle: CycleReading, side: Hand) =>
    cycle[side].filter(({ kind }) => kind !== 'unmarked').map(traceOfPiece);
  const traces = () =>
    hand === 'both' ? cycles.map(whole) : cycles.flatMap((cycle) => markedOf(cycle, hand));
  return { ...valued('time', perCycle), traces };
}
