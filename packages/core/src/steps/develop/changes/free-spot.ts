import type { WorkPlace } from '../work/index.ts';
import { areaOf, type BenchPoint, leastGap, type ReachChoice, roomOf } from '../workplace/index.ts';

/** What takes room on the bench, millimetres. */
export interface Taken {
  readonly at: BenchPoint;
  readonly room: { readonly x: number; readonly y: number };
}

export interface SpotLimits {
  readonly bench: { readonly width: number; readonly depth: number };
  readonly reach: ReachChoice;
  readonly taken: readonly Taken[];
}

export function takenBy(place: WorkPlace, at: BenchPoint): Taken {
  return { at, room: roomOf(place) };
}

export function inMirror({ x, y }: BenchPoint): BenchPoint {
  return { x: x === 0 ? 0 : -x, y };
}

/**
 * The spot nearest to a wish on the left half of the bench that is clear of what is taken: on the bench, and within reach of the
 * left hand where the wish is. Where there is no such spot, one out of reach, else one beyond the edges; never one that is taken.
 * @param wish millimetres, on the left half
 */
export function freeSpotOnLeft(place: WorkPlace, wish: BenchPoint, limits: SpotLimits): BenchPoint {
  const room = roomOf(place);
  const { taken, bench, reach } = limits;
  const innermost = -Math.ceil(room.x / 2 + leastGap / 2);
  const start = { x: Math.min(wish.x, innermost), y: wish.y };
  const clear = (at: BenchPoint) =>
    at.x <= innermost && !taken.some((other) => inTheWay({ at, room }, other));
  const onBench = ({ x, y }: BenchPoint) =>
    room.x / 2 - x <= bench.width / 2 && y >= room.y / 2 && y + room.y / 2 <= bench.depth;
  const reached = (at: BenchPoint) => areaOf({ name: place.name, at }, 'left', reach).reached;
  const wanted = reached(start) ? reached : () => true;
  if (clear(start) && onBench(start)) return start;
  const spots = besideTaken(start, room, limits, innermost).filter(clear);
  const best = [spots.filter((at) => onBench(at) && wanted(at)), spots.filter(onBench), spots].find(
    ({ length }) => length > 0,
  );
  return best?.[0] ?? start;
}

function inTheWay(one: Taken, other: Taken): boolean {
  return (
    Math.abs(one.at.x - other.at.x) < (one.room.x + other.room.x) / 2 + leastGap &&
    Math.abs(one.at.y - other.at.y) < (one.room.y + other.room.y) / 2 + leastGap
  );
}

/** Where a place just clears what is taken or the edges: among these is the free spot that is nearest; nearest first. */
function besideTaken(
  { x, y }: BenchPoint,
  room: Taken['room'],
  { taken, bench }: SpotLimits,
  innermost: number,
): readonly BenchPoint[] {
  const away = (side: 'x' | 'y', { at, room: its }: Taken) => {
    const least = Math.ceil((room[side] + its[side]) / 2 + leastGap);
    return [at[side] - least, at[side] + least];
  };
  const across = [x, innermost, room.x / 2 - bench.width / 2, ...taken.flatMap((item) => away('x', item))];
  const deep = [y, room.y / 2, bench.depth - room.y / 2, ...taken.flatMap((item) => away('y', item))];
  return across
    .flatMap((column) => deep.map((row) => ({ x: column, y: row })))
    .sort((a, b) => Math.hypot(a.x - x, a.y - y) - Math.hypot(b.x - x, b.y - y) || a.x - b.x || a.y - b.y);
}
