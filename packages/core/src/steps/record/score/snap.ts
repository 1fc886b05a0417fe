import type { Method, MethodClock } from '../../../ground/study/index.ts';
import type { BoundaryRef } from './score-input.ts';

/** The boundary nearest to a real time: between two frames the nearer one, never outside the film. */
export function nearestBoundary(clock: MethodClock, us: number): number {
  const before = clock.boundaryAt(us);
  if (clock.unit === 'micros') return before;
  const after = before + 1;
  if (clock.last !== undefined && after > clock.last) return before;
  return clock.timeOf(after) - us < us - clock.timeOf(before) ? after : before;
}

/** The boundary as it stands in the method, and how far it may go; undefined when it is not there (any more). */
export interface BoundaryRange {
  readonly at: number;
  readonly least: number;
  readonly most: number;
}

/**
 * How far a boundary may be moved: one step from its neighbours, the ends of the film included.
 * @returns undefined when the method has no such boundary
 */
export function boundaryRange(
  method: Method,
  clock: MethodClock,
  ref: BoundaryRef,
): BoundaryRange | undefined {
  const row: {
    readonly items: readonly { readonly id: string; readonly start: number }[];
    readonly end: number;
  } = method[ref.row];
  const farthest = clock.last ?? Number.MAX_SAFE_INTEGER;
  if (ref.id === undefined) {
    const last = row.items.at(-1);
    return last === undefined ? undefined : { at: row.end, least: last.start + 1, most: farthest };
  }
  const index = row.items.findIndex((item) => item.id === ref.id);
  const item = row.items[index];
  if (item === undefined) return undefined;
  const before = row.items[index - 1];
  const after = row.items[index + 1]?.start ?? row.end;
  return { at: item.start, least: before === undefined ? 0 : before.start + 1, most: after - 1 };
}

/** Where a boundary stands; undefined when the method has no such boundary (any more). */
export function boundaryOf(method: Method, ref: BoundaryRef): number | undefined {
  const row: {
    readonly items: readonly { readonly id: string; readonly start: number }[];
    readonly end: number;
  } = method[ref.row];
  return ref.id === undefined ? row.end : row.items.find((item) => item.id === ref.id)?.start;
}

/** A wished boundary brought into its range. */
export function clampBoundary(range: BoundaryRange, wished: number): number {
  return Math.min(range.most, Math.max(range.least, wished));
}

/** The span of real time in which a score of the method is shown: the whole film, or a little more than the rows. */
export function scoreLimits(
  method: Method,
  clock: MethodClock,
): { readonly fromUs: number; readonly toUs: number; readonly leastUs: number } {
  if (clock.last === undefined) {
    const end = Math.max(1, method.left.end, method.right.end, method.cycles.end);
    return { fromUs: 0, toUs: Math.ceil(end * 1.05), leastUs: Math.min(end, 20_000) };
  }
  const fromUs = clock.timeOf(0);
  const toUs = clock.timeOf(clock.last);
  // Twelve frames across the whole width are as close as is of use.
  const frameUs = (toUs - fromUs) / clock.last;
  return { fromUs, toUs, leastUs: Math.min(toUs - fromUs, 12 * frameUs) };
}
