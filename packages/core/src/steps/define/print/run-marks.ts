import { lineNode, type SceneNode } from '../../../ground/scene/index.ts';
import type { RunFacts, RunPoint } from './run-facts.ts';
import type { RunPlan } from './run-plan.ts';

export interface RunMarks {
  readonly nodes: readonly SceneNode[];
  /** The line shows the least and the most of each column, not every reading. */
  readonly thinned: boolean;
}

/** Readings closer than this many paper units cannot be told apart. */
const closest = 0.5;
/** Dots closer than this are a blot; the line stays. */
const closestDots = 2.2;

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The readings themselves: a line through those that count, and a sign for each that is missed, proposed or set aside. */
export function runMarks({ points }: RunFacts, plan: RunPlan): RunMarks {
  const counted = points.filter(({ time, setAside }) => time !== undefined && setAside === undefined);
  const thinned = counted.length > 2 && plan.step < closest;
  const dots = plan.step >= closestDots;
  const radius = Math.min(plan.size * 0.16, Math.max(0.8, plan.step * 0.3));
  const line = thinned ? columnsPath(points, plan) : linePath(points, plan);
  const nodes: SceneNode[] = [];
  if (line !== '') {
    nodes.push({ kind: 'path', d: line, stroke: { ink: 'ink', width: dots ? 0.5 : 0.4 } });
  }
  if (dots) {
    const full = spots(counted, plan).map((spot) => circle(spot, radius));
    if (full.length > 0) nodes.push({ kind: 'path', d: full.join(' '), fill: { ink: 'ink' } });
  }
  nodes.push(
    ...missedNodes(points, plan),
    ...proposedNodes(points, plan, radius),
    ...asideNodes(points, plan),
  );
  return { nodes, thinned };
}

function linePath(points: readonly RunPoint[], { x, y }: RunPlan): string {
  const parts: string[] = [];
  let pen = false;
  let before: number | undefined;
  for (const { cycle, time, setAside } of points) {
    if (setAside !== undefined) {
      before = cycle;
      continue;
    }
    if (time === undefined || (before !== undefined && cycle > before + 1)) pen = false;
    before = cycle;
    if (time === undefined) continue;
    parts.push(`${pen ? 'L' : 'M'} ${place(x(cycle))} ${place(y(time))}`);
    pen = true;
  }
  return parts.join(' ');
}

/** Least and most of the readings of each column, joined to those of the column before. */
function columnsPath(points: readonly RunPoint[], { x, y, left }: RunPlan): string {
  const columns = new Map<number, { low: number; high: number }>();
  for (const { cycle, time, setAside } of points) {
    if (time === undefined || setAside !== undefined) continue;
    const column = Math.floor(x(cycle) - left);
    const seen = columns.get(column);
    if (seen === undefined) columns.set(column, { low: time, high: time });
    else if (time < seen.low) seen.low = time;
    else if (time > seen.high) seen.high = time;
  }
  let before: number | undefined;
  const parts: string[] = [];
  for (const [column, { low, high }] of columns) {
    const at = place(left + column + 0.5);
    const joined = before !== undefined && column === before + 1;
    parts.push(`${joined ? 'L' : 'M'} ${at} ${place(y(low))} L ${at} ${place(y(high))}`);
    before = column;
  }
  return parts.join(' ');
}

function spots(points: readonly RunPoint[], { x, y }: RunPlan): Spot[] {
  return points.flatMap(({ cycle, time }) => (time === undefined ? [] : [{ x: x(cycle), y: y(time) }]));
}

/** A short stroke at the foot for each missed reading; those that lie over one another are drawn once. */
function missedNodes(points: readonly RunPoint[], { x, bottom, size }: RunPlan): SceneNode[] {
  const at = new Set(points.filter(({ time }) => time === undefined).map(({ cycle }) => place(x(cycle))));
  if (at.size === 0) return [];
  const d = [...at].map((each) => `M ${each} ${place(bottom)} L ${each} ${place(bottom - size * 0.5)}`);
  return [{ kind: 'path', d: d.join(' '), stroke: { ink: 'ink', width: 0.9 } }];
}

function proposedNodes(points: readonly RunPoint[], plan: RunPlan, radius: number): SceneNode[] {
  const rings = apart(
    spots(
      points.filter(({ proposed }) => proposed),
      plan,
    ),
  ).map((spot) => circle(spot, radius + 1.8));
  return rings.length === 0 ? [] : [{ kind: 'path', d: rings.join(' '), stroke: { ink: 'ink', width: 0.6 } }];
}

/** Hollow with a cross; an arrow at the edge for what lies beyond it. */
function asideNodes(points: readonly RunPoint[], plan: RunPlan): SceneNode[] {
  const { size, low, high, top, bottom, x } = plan;
  const aside = points.filter(({ time, setAside }) => time !== undefined && setAside !== undefined);
  const inside = aside.filter(({ time = 0 }) => time >= low && time <= high);
  const r = Math.max(2, size * 0.3);
  const rings = apart(spots(inside, plan)).flatMap((spot): SceneNode[] => [
    {
      kind: 'path',
      d: circle(spot, r),
      fill: { ink: 'paper' },
      stroke: { ink: 'ink', width: 0.6 },
    },
    lineNode(spot.x - r * 0.7, spot.y - r * 0.7, spot.x + r * 0.7, spot.y + r * 0.7, 0.5, 'ink'),
    lineNode(spot.x - r * 0.7, spot.y + r * 0.7, spot.x + r * 0.7, spot.y - r * 0.7, 0.5, 'ink'),
  ]);
  const beyond = aside
    .filter(({ time = 0 }) => time < low || time > high)
    .map(({ cycle, time = 0 }) => ({ x: x(cycle), y: time > high ? top : bottom, up: time > high }));
  const arrows = apart(beyond).map(({ x: at, y, up }) => {
    const way = up ? -1 : 1;
    const [tip, base] = [y + way * -0.5, y + way * (-0.5 - size * 0.45)];
    return `M ${place(at)} ${place(tip)} L ${place(at - r)} ${place(base)} L ${place(at + r)} ${place(base)} Z`;
  });
  const arrow: SceneNode[] =
    arrows.length === 0
      ? []
      : [
          {
            kind: 'path',
            d: arrows.join(' '),
            fill: { ink: 'paper' },
            stroke: { ink: 'ink', width: 0.6 },
          },
        ];
  return [...rings, ...arrow];
}

/** Without those that would lie on one another. */
function apart<S extends Spot>(list: readonly S[]): readonly S[] {
  return [...new Map(list.map((spot) => [`${Math.round(spot.x)} ${Math.round(spot.y)}`, spot])).values()];
}

function circle({ x, y }: Spot, radius: number): string {
  const [from, to, r] = [place(x - radius), place(x + radius), place(radius)];
  return `M ${from} ${place(y)} A ${r} ${r} 0 1 1 ${to} ${place(y)} A ${r} ${r} 0 1 1 ${from} ${place(y)} Z`;
}

function place(value: number): string {
  return String(Math.round(value * 100) / 100);
}
