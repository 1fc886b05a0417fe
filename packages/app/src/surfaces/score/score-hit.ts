import { endOf, findItem, type Hand, hands, type MethodClock } from '@evenhand/core/ground/study';
import { inside, motionAtTime, rowTimes, type ScoreAreas, type TimeScale } from '@evenhand/core/record';
import type { ScoreState } from './score-events.ts';

/** What lies under a point of the score. */
export type ScoreHit =
  | { readonly part: 'boundary'; readonly row: Hand | 'cycles'; readonly id: string | undefined }
  | { readonly part: 'motion'; readonly hand: Hand; readonly motionId: string }
  | { readonly part: 'cycle'; readonly cycleId: string }
  | { readonly part: 'axis' | 'overview' | 'nothing' };

/** A boundary is caught this near, in CSS pixels, but never from further than half a motion. */
const reach = 6;

export function scoreHit(
  state: ScoreState,
  clock: MethodClock,
  areas: ScoreAreas,
  scale: TimeScale,
  x: number,
  y: number,
): ScoreHit {
  if (inside(areas.overview, x, y)) return { part: 'overview' };
  if (inside(areas.axis, x, y)) return { part: 'axis' };
  for (const hand of hands) {
    if (inside(areas[hand], x, y)) return handHit(state, clock, hand, scale, x);
  }
  return inside(areas.cycles, x, y) ? cycleHit(state, clock, scale, x) : { part: 'nothing' };
}

function handHit(state: ScoreState, clock: MethodClock, hand: Hand, scale: TimeScale, x: number): ScoreHit {
  const row = state.method[hand];
  const times = rowTimes(row, clock);
  const us = scale.us(x);
  const index = motionAtTime(times, us);
  const motion = row.items[index];
  if (motion === undefined) return { part: 'nothing' };
  const start = scale.exactX(times.startUs[index] ?? 0);
  const end = scale.exactX(times.startUs[index + 1] ?? 0);
  const near = Math.min(reach, Math.max(2, (end - start) / 2));
  if (Math.abs(x - start) <= near && (index > 0 || motion.start > 0))
    return { part: 'boundary', row: hand, id: motion.id };
  if (Math.abs(x - end) <= near) return { part: 'boundary', row: hand, id: row.items[index + 1]?.id };
  return x < start - near || x > end + near
    ? { part: 'nothing' }
    : { part: 'motion', hand, motionId: motion.id };
}

function cycleHit(state: ScoreState, clock: MethodClock, scale: TimeScale, x: number): ScoreHit {
  const { cycles } = state.method;
  let found: ScoreHit = { part: 'nothing' };
  for (const [index, cycle] of cycles.items.entries()) {
    const start = scale.exactX(clock.timeOf(cycle.start));
    const end = scale.exactX(clock.timeOf(endOf(cycles, index)));
    if (Math.abs(x - start) <= reach) return { part: 'boundary', row: 'cycles', id: cycle.id };
    if (index === cycles.items.length - 1 && Math.abs(x - end) <= reach)
      return { part: 'boundary', row: 'cycles', id: undefined };
    if (x > start && x < end) found = { part: 'cycle', cycleId: cycle.id };
  }
  return found;
}

/** Where a boundary stands now; undefined when it is gone. */
export function boundaryAt(
  state: ScoreState,
  row: Hand | 'cycles',
  id: string | undefined,
): number | undefined {
  const items: {
    readonly items: readonly { readonly id: string; readonly start: number }[];
    readonly end: number;
  } = state.method[row];
  return id === undefined ? items.end : findItem(items, id)?.start;
}
