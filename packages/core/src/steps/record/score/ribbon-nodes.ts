import type { SceneNode } from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { SpeedRibbon } from '../tracks/speed-ribbon.ts';
import type { Area, ScoreAreas } from './areas.ts';
import { box } from './marks.ts';
import type { TimeScale } from './scale.ts';
import type { ScoreGround } from './score-input.ts';

/**
 * The speed of the hands on the time scale of the score: the left hand’s stands up from the middle line, the right
 * hand’s hangs from it, as their motions do. Where a hand is not seen the ribbon is shaded and has no line.
 */
export function ribbonNodes(ground: ScoreGround, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  const { ribbon } = ground;
  const area = areas.ribbon;
  if (ribbon === undefined || area.height < 8) return [];
  const middle = area.y + Math.floor(area.height / 2);
  const nodes: SceneNode[] = [];
  for (const hand of hands) {
    const values = columnsOf(ribbon, hand, area, scale);
    const high = hand === 'left' ? middle - area.y : area.y + area.height - middle - 1;
    const [from, sign] = hand === 'left' ? [middle, -1] : [middle + 1, 1];
    nodes.push(...gapNodes(values, hand === 'left' ? area.y : middle + 1, high));
    const d = silhouette(values, from, sign * high, ribbon.full);
    if (d !== '')
      nodes.push({
        kind: 'path',
        d,
        fill: { ink: 'soft', opacity: 0.45 },
        stroke: { ink: 'soft', width: 1 },
      });
  }
  return [...nodes, box(area.x, middle, area.width, 1, { ink: 'rule' })];
}

/** Places along the ribbon with the speed there; NaN where the hand is not seen. */
interface Columns {
  readonly x: number[];
  readonly speed: number[];
}

/** One place for each frame where frames are wider than a pixel, else one for each pixel with the largest speed in it. */
function columnsOf({ times, speeds }: SpeedRibbon, hand: Hand, area: Area, scale: TimeScale): Columns {
  const speed = speeds[hand];
  const made: Columns = { x: [], speed: [] };
  const { fromUs, toUs } = scale.view;
  let frame = Math.max(0, firstAfter(times, fromUs) - 1);
  const add = (x: number, value: number) => {
    made.x.push(Math.min(Math.max(x, area.x), area.x + area.width));
    made.speed.push(value);
  };
  while (frame < times.length && (times[frame] as number) <= toUs) {
    const start = times[frame] as number;
    const end = start + scale.usPerPixel;
    let best = speed === undefined ? Number.NaN : (speed[frame] as number);
    // A plain loop over plain numbers: the whole of a long film is a hundred thousand frames.
    for (frame += 1; frame < times.length && (times[frame] as number) < end; frame += 1) {
      const value = speed === undefined ? Number.NaN : (speed[frame] as number);
      if (value > best || Number.isNaN(best)) best = value;
    }
    add(scale.exactX(start), best);
  }
  // The last frame lasts until the next one, which lies beyond the right side or the end of the film.
  const last = made.speed.at(-1);
  if (last !== undefined) {
    const next = times[frame] ?? (times[times.length - 1] as number);
    add(scale.exactX(Math.max(next, times[frame - 1] as number)), last);
  }
  return made;
}

function firstAfter(times: Float64Array, us: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times[middle] as number) <= us) low = middle + 1;
    else high = middle;
  }
  return low;
}

function silhouette({ x, speed }: Columns, from: number, high: number, full: number): string {
  const parts: string[] = [];
  const at = (place: number) => (x[place] as number).toFixed(1);
  let open = false;
  for (let place = 0; place < x.length; place += 1) {
    const value = speed[place] as number;
    if (Number.isNaN(value)) {
      if (open) parts.push(`L${at(place - 1)} ${from}Z`);
      open = false;
      continue;
    }
    if (!open) parts.push(`M${at(place)} ${from}`);
    open = true;
    parts.push(`L${at(place)} ${(from + high * Math.min(1, value / full)).toFixed(1)}`);
  }
  if (open) parts.push(`L${at(x.length - 1)} ${from}Z`);
  return parts.join('');
}

function gapNodes({ x, speed }: Columns, top: number, high: number): SceneNode[] {
  const nodes: SceneNode[] = [];
  let start = -1;
  for (let place = 0; place <= x.length; place += 1) {
    const missing = place < x.length && Number.isNaN(speed[place]);
    if (missing && start < 0) start = place;
    if (missing || start < 0) continue;
    const left = x[start] as number;
    const right = x[Math.min(place, x.length - 1)] as number;
    if (right - left >= 1) nodes.push(box(left, top, right - left, high, { ink: 'rule', opacity: 0.45 }));
    start = -1;
  }
  return nodes;
}
