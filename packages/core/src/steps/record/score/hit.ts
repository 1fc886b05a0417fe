import { type Hand, hands } from '../../../ground/study/index.ts';
import { inside, type ScoreAreas } from './areas.ts';
import { overviewWindow } from './overlay-nodes.ts';
import { narrowest } from './pieces.ts';
import { motionAtTime, rowTimes } from './row-times.ts';
import type { TimeScale } from './scale.ts';
import type { BoundaryRef, ScoreGround } from './score-input.ts';

/** What lies under a point of the score. */
export type ScoreHit =
  | ({ readonly part: 'boundary' } & BoundaryRef)
  | { readonly part: 'motion'; readonly hand: Hand; readonly motionId: string }
  /** Motions too narrow to be told apart here. */
  | { readonly part: 'run'; readonly hand: Hand }
  | { readonly part: 'cycle'; readonly cycleId: string }
  | { readonly part: 'overview'; readonly grip: 'window' | 'from' | 'to' | 'outside' }
  | { readonly part: 'hand'; readonly hand: Hand }
  | { readonly part: 'axis' | 'cycles' | 'ribbon' | 'nothing' };

export interface ScorePoint {
  readonly x: number;
  readonly y: number;
  readonly touch: boolean;
}

/** A boundary is caught from this far on either side, in CSS pixels; a finger is broader than the tip of an arrow. */
const reachOf = (touch: boolean) => (touch ? 12 : 5);

/** Found by binary search in the rows; the painted nodes play no part. */
export function hitScore(
  ground: ScoreGround,
  areas: ScoreAreas,
  scale: TimeScale,
  point: ScorePoint,
): ScoreHit {
  const { x, y } = point;
  for (const hand of hands) {
    if (inside(areas[hand], x, y)) return handHit(ground, hand, scale, point);
  }
  if (inside(areas.axis, x, y)) return { part: 'axis' };
  if (inside(areas.cycles, x, y)) return cycleHit(ground, scale, point);
  if (inside(areas.overview, x, y)) return overviewHit(ground, areas, point);
  return { part: inside(areas.ribbon, x, y) ? 'ribbon' : 'nothing' };
}

/** Each side of a boundary gets up to a quarter of the motion there, so that half of every motion stays its own. */
function handHit(ground: ScoreGround, hand: Hand, scale: TimeScale, { x, touch }: ScorePoint): ScoreHit {
  const row = ground.method[hand];
  const times = rowTimes(row, ground.clock);
  const reach = reachOf(touch);
  const edge = (index: number) => scale.exactX(times.startUs[index] ?? 0);
  if (times.count === 0 || x < edge(0) - reach || x > edge(times.count) + reach)
    return { part: 'hand', hand };
  const index = motionAtTime(times, scale.us(x));
  const [start, end] = [edge(index), edge(index + 1)];
  // Before the first and after the last motion nothing else lays claim to the reach.
  if (x < start || x >= end) return outerHit(ground, hand, x < start ? 0 : times.count);
  if (end - start < narrowest) return { part: 'run', hand };
  const near = Math.min(reach, (end - start) / 4);
  const found = x - start <= near ? index : end - x <= near ? index + 1 : -1;
  if (found === 0) return outerHit(ground, hand, 0);
  if (found > 0) return { part: 'boundary', row: hand, id: row.items[found]?.id };
  return { part: 'motion', hand, motionId: row.items[index]?.id ?? '' };
}

/** The ends of a row. The very beginning of a film is not to be moved by chance. */
function outerHit(ground: ScoreGround, hand: Hand, index: number): ScoreHit {
  const item = ground.method[hand].items[index];
  if (item !== undefined && item.start === 0) return { part: 'motion', hand, motionId: item.id };
  return { part: 'boundary', row: hand, id: item?.id };
}

function cycleHit(ground: ScoreGround, scale: TimeScale, { x, touch }: ScorePoint): ScoreHit {
  const { items, end } = ground.method.cycles;
  const edge = (boundary: number) => scale.exactX(ground.clock.timeOf(boundary));
  const reach = reachOf(touch);
  let inner: ScoreHit = { part: 'cycles' };
  for (const [index, cycle] of items.entries()) {
    const [from, to] = [edge(cycle.start), edge(items[index + 1]?.start ?? end)];
    const near = Math.min(reach, (to - from) / 4);
    if (Math.abs(x - from) <= near) return { part: 'boundary', row: 'cycles', id: cycle.id };
    if (index === items.length - 1 && Math.abs(x - to) <= near)
      return { part: 'boundary', row: 'cycles', id: undefined };
    if (x > from && x < to) inner = { part: 'cycle', cycleId: cycle.id };
  }
  return inner;
}

function overviewHit(ground: ScoreGround, areas: ScoreAreas, { x, touch }: ScorePoint): ScoreHit {
  const window = overviewWindow(ground, areas);
  const near = Math.min(reachOf(touch), window.width / 4);
  const end = window.x + window.width;
  if (Math.abs(x - window.x) <= near) return { part: 'overview', grip: 'from' };
  if (Math.abs(x - end) <= near) return { part: 'overview', grip: 'to' };
  return { part: 'overview', grip: x > window.x && x < end ? 'window' : 'outside' };
}
