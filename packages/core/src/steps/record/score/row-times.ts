import {
  type Hand,
  isProposed,
  type MethodClock,
  type Motion,
  type Row,
} from '../../../ground/study/index.ts';
import { type MotionKind, motionKinds } from '../../../ground/tables/index.ts';
import type { ScorePreview } from './score-input.ts';

/**
 * A hand's row as flat lists, so that a picture of 60,000 motions is a walk over two arrays: `startUs[i]` is the real
 * time at which motion i starts, `startUs[count]` the end of the row, `kind[i]` the place of its kind in `motionKinds`,
 * `proposed[i]` 1 where the program only proposes it.
 */
export interface RowTimes {
  readonly count: number;
  readonly startUs: Float64Array;
  readonly kind: Uint8Array;
  readonly proposed: Uint8Array;
}

const places: ReadonlyMap<MotionKind, number> = new Map(motionKinds.map((kind, place) => [kind, place]));

interface Known {
  readonly clock: MethodClock;
  readonly times: RowTimes;
}
const cache = new WeakMap<Row<Motion>, Known>();

/** Real times of a row; kept with the row, which never changes, so that only an edit makes them anew. */
export function rowTimes(row: Row<Motion>, clock: MethodClock): RowTimes {
  const known = cache.get(row);
  if (known?.clock === clock) return known.times;
  const times = unpack(row, clock);
  cache.set(row, { clock, times });
  return times;
}

function unpack(row: Row<Motion>, clock: MethodClock): RowTimes {
  const count = row.items.length;
  const startUs = new Float64Array(count + 1);
  const kind = new Uint8Array(count);
  const proposed = new Uint8Array(count);
  row.items.forEach((motion, index) => {
    startUs[index] = clock.timeOf(motion.start);
    kind[index] = places.get(motion.kind) as number;
    proposed[index] = isProposed(motion) ? 1 : 0;
  });
  startUs[count] = clock.timeOf(row.end);
  return { count, startUs, kind, proposed };
}

/** The same row with one boundary elsewhere: `index` is the motion that starts there, or `count` for the end. */
export function withBoundary(times: RowTimes, index: number, us: number): RowTimes {
  const startUs = times.startUs.slice();
  startUs[index] = us;
  return { ...times, startUs };
}

/** The times of a hand's row as they are shown: with the boundary that a pointer holds where it would go. */
export function shownTimes(
  row: Row<Motion>,
  clock: MethodClock,
  hand: Hand,
  preview: ScorePreview | undefined,
): RowTimes {
  const times = rowTimes(row, clock);
  if (preview?.row !== hand) return times;
  const index =
    preview.id === undefined ? times.count : row.items.findIndex((motion) => motion.id === preview.id);
  return index < 0 ? times : withBoundary(times, index, clock.timeOf(preview.to));
}

/** The motion that covers a time; the first one before the row starts, the last one after it ends; −1 when empty. */
export function motionAtTime(times: RowTimes, us: number): number {
  let low = 0;
  let high = times.count - 1;
  if (high < 0) return -1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((times.startUs[middle] as number) <= us) low = middle;
    else high = middle - 1;
  }
  return low;
}
