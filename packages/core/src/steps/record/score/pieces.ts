import { motionKinds } from '../../../ground/tables/index.ts';
import { motionAtTime, type RowTimes } from './row-times.ts';
import type { TimeView } from './view.ts';

/** One motion, wide enough to be drawn as itself. Uncut: it may begin before the view and end after it. */
export interface MotionPiece {
  readonly piece: 'motion';
  readonly index: number;
  readonly fromUs: number;
  readonly toUs: number;
}

/** Neighbouring motions too narrow to be told apart: how long each kind lasts among them. */
export interface RunPiece {
  readonly piece: 'run';
  readonly index: number;
  readonly count: number;
  readonly fromUs: number;
  readonly toUs: number;
  /**
   * Places of the kinds in `motionKinds` and the time of each; the times add up to toUs − fromUs. What is only proposed
   * stands apart, after the rest; each part is growing.
   */
  readonly kinds: readonly number[];
  readonly times: readonly number[];
  readonly proposed: readonly boolean[];
}

export type Piece = MotionPiece | RunPiece;

/** Narrower motions are merged. CSS pixels. */
export const narrowest = 1.5;
/**
 * Runs are cut at a grid of real time of this width, so that they stand still while the view pans. Twice as wide where
 * more than four motions fall on a pixel: a finer cut would show nothing more and be slower. CSS pixels.
 */
export const runWidth = 3;
const crowded = 4;

/**
 * What a row shows at a scale: every motion that touches the view is in exactly one piece, the pieces follow each other
 * without a gap, and runs hold the whole time of their motions. Pieces at the sides may reach beyond the view.
 */
export function rowPieces(times: RowTimes, view: TimeView, usPerPixel: number): Piece[] {
  const pieces: Piece[] = [];
  const { startUs, kind, proposed, count } = times;
  const leastUs = narrowest * usPerPixel;
  const gridUs = gridOf(times, usPerPixel);
  const sums = new Float64Array(2 * motionKinds.length);
  let runFrom = -1;
  let line = 0;
  let index = firstOfPiece(times, view.fromUs, leastUs, gridUs);
  let start = startUs[index] as number;
  for (; index < count && start < view.toUs; index += 1) {
    const end = startUs[index + 1] as number;
    if (end - start >= leastUs) {
      if (runFrom >= 0) takeRun(pieces, times, sums, runFrom, index, view.fromUs);
      runFrom = -1;
      if (end > view.fromUs) pieces.push({ piece: 'motion', index, fromUs: start, toUs: end });
    } else {
      if (runFrom < 0) {
        runFrom = index;
        line = lineAfter(start, gridUs);
      }
      const place = (kind[index] as number) + (proposed[index] === 1 ? motionKinds.length : 0);
      sums[place] = (sums[place] as number) + (end - start);
      if (end >= line) {
        takeRun(pieces, times, sums, runFrom, index + 1, view.fromUs);
        runFrom = -1;
      }
    }
    start = end;
  }
  if (runFrom >= 0) takeRun(pieces, times, sums, runFrom, index, view.fromUs);
  return pieces;
}

/** The width of the grid. It goes by the whole row and not by what is in sight, so that panning does not change it. */
function gridOf({ startUs, count }: RowTimes, usPerPixel: number): number {
  const pixels = ((startUs[count] ?? 0) - (startUs[0] ?? 0)) / usPerPixel;
  return (count > crowded * pixels ? 2 : 1) * runWidth * usPerPixel;
}

/** The first line of the grid after a time. */
function lineAfter(us: number, gridUs: number): number {
  return (Math.floor(us / gridUs) + 1) * gridUs;
}

/** A motion at or before the view that begins a piece whatever comes before it. */
function firstOfPiece(times: RowTimes, fromUs: number, leastUs: number, gridUs: number): number {
  const line = (Math.floor(fromUs / gridUs) - 1) * gridUs;
  const index = Math.max(0, motionAtTime(times, line));
  if (index === 0) return 0;
  const start = times.startUs[index] as number;
  const end = times.startUs[index + 1] as number;
  return end - start < leastUs && end >= lineAfter(start, gridUs) ? index + 1 : index;
}

/** Closes a run over the motions from `from` to before `to`, and clears the sums for the next one. */
function takeRun(
  pieces: Piece[],
  { startUs }: RowTimes,
  sums: Float64Array,
  from: number,
  to: number,
  seenFromUs: number,
): void {
  const kinds: number[] = [];
  const times: number[] = [];
  const proposed: boolean[] = [];
  for (let place = 0; place < sums.length; place += 1) {
    const span = sums[place] as number;
    if (span === 0) continue;
    kinds.push(place % motionKinds.length);
    proposed.push(place >= motionKinds.length);
    times.push(span);
    sums[place] = 0;
  }
  const [fromUs, toUs] = [startUs[from] as number, startUs[to] as number];
  if (toUs > seenFromUs)
    pieces.push({ piece: 'run', index: from, count: to - from, fromUs, toUs, kinds, times, proposed });
}
