import {
  type GroupingId,
  groupings,
  groupOf,
  type MotionGroup,
  motionKinds,
} from '../../../ground/tables/index.ts';
import type { MethodReading, Piece } from '../reading/index.ts';
import type { Measuring, Whole } from './measure.ts';
import type { Groups, Times } from './shape.ts';
import { byTime, type RowHand, timeRows } from './time-rows.ts';

type Wholes = Readonly<Record<RowHand, Whole>>;

/** Time by motion, by object and by place. */
export function timesOf(measuring: Measuring, reading: MethodReading, marked: Wholes): Times {
  const rows = <K>(keys: (pieces: readonly Piece[]) => readonly K[], order: (a: K, b: K) => number) =>
    byTime(timeRows(measuring, reading, marked, keys), order);
  const motions = rows(
    (pieces) => pieces.map(({ kind }) => kind),
    (a, b) => motionKinds.indexOf(a) - motionKinds.indexOf(b),
  );
  const objects = rows((pieces) => pieces.map(({ object }) => object), byName);
  const places = rows(placesOf, byName);
  return {
    motions: motions.map(({ key, ...row }) => ({ kind: key, ...row })),
    objects: objects.map(({ key, ...row }) => ({ object: key, ...row })),
    places: places.map(({ key, ...row }) => ({
      place: key,
      name: key === undefined ? undefined : reading.placeName(key),
      ...row,
    })),
  };
}

/** Not said comes last. */
function byName(a: string | undefined, b: string | undefined): number {
  if (a === b) return 0;
  if (a === undefined || b === undefined) return a === undefined ? 1 : -1;
  return a < b ? -1 : 1;
}

/** The place at which each piece of a hand counts; the rule stands with `Times.places`. */
export function placesOf(pieces: readonly Piece[]): (string | undefined)[] {
  let last: string | undefined;
  return pieces.map(({ kind, motion }) => {
    if (kind === 'unmarked') last = undefined;
    else if (kind === 'TE' || kind === 'TL') last = motion?.to;
    else last = motion?.to ?? motion?.from ?? last;
    return last;
  });
}

const groupOrder: readonly MotionGroup[] = ['effective', 'ineffective', 'unlisted'];

/** Time in effective, ineffective and unlisted motions, as the author of the grouping divides them. */
export function groupsOf(
  measuring: Measuring,
  reading: MethodReading,
  marked: Wholes,
  grouping: GroupingId,
): Groups {
  const groupByKind = new Map(motionKinds.map((kind) => [kind, groupOf(kind, grouping)]));
  const keys = (pieces: readonly Piece[]) => pieces.map(({ kind }) => groupByKind.get(kind) ?? 'unlisted');
  const rows = timeRows(measuring, reading, marked, keys, groupOrder);
  return {
    grouping: groupings[grouping],
    rows: rows.map(({ key, ...row }) => ({ group: key, ...row })),
  };
}
