import { lineNode, type SceneNode, textNode, textWidth } from '../../../ground/scene/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import type { PlanFrame } from './plan-frame.ts';
import type { BenchPoint } from './working-areas.ts';

const size = 6.5;
const thin = 0.4;

/** Width and depth of the bench, and where each place is: across from the middle, deep from the near edge. Millimetres. */
export function dimensions(frame: PlanFrame, places: readonly BenchPoint[]): SceneNode[] {
  return [...wholeSize(frame), ...across(frame, places), ...deep(frame, places)];
}

function wholeSize({ bench, box }: PlanFrame): SceneNode[] {
  const [below, beside] = [box.bottom + 14, box.left - 14];
  const middle = (box.left + box.right) / 2;
  return [
    lineNode(box.left, below, box.right, below, thin, 'soft'),
    ...[box.left, box.right].flatMap((x) => [
      lineNode(x, box.bottom + 2, x, below + 3, thin, 'soft'),
      slash(x, below),
    ]),
    textNode(middle, below + size + 3, numberText(bench.width, 0), { size, align: 'middle' }),
    lineNode(beside, box.top, beside, box.bottom, thin, 'soft'),
    ...[box.top, box.bottom].flatMap((y) => [
      lineNode(beside - 3, y, box.left - 2, y, thin, 'soft'),
      slash(beside, y),
    ]),
    textNode(beside - 5, (box.top + box.bottom) / 2, numberText(bench.depth, 0), { size, align: 'end' }),
  ];
}

/** The stroke that ends a dimension line. */
function slash(x: number, y: number): SceneNode {
  return lineNode(x - 2.2, y + 2.2, x + 2.2, y - 2.2, 0.7, 'ink');
}

/** Ticks over the bench with the distance from its middle, in as many rows as the figures need. */
function across({ box, x }: PlanFrame, places: readonly BenchPoint[]): SceneNode[] {
  const values = distinct([0, ...places.map((place) => place.x)]);
  const ends: number[] = [];
  return values.flatMap((value) => {
    const at = x(value);
    const text = numberText(value, 0);
    const half = textWidth(text, size, 400) / 2 + 1.5;
    let row = ends.findIndex((end) => end <= at - half);
    if (row < 0) row = ends.length;
    ends[row] = at + half;
    const y = box.top - 7 - row * 8.5;
    return [
      // A line through all rows would cross the figures of the lower ones.
      lineNode(at, box.top - 1, at, box.top - 5, thin, value === 0 ? 'ink' : 'soft'),
      textNode(at, y, text, { size, align: 'middle' }),
    ];
  });
}

/** Ticks beside the bench with the distance from its near edge; figures that would meet stand side by side. */
function deep({ box, y }: PlanFrame, places: readonly BenchPoint[]): SceneNode[] {
  const values = distinct(places.map((place) => place.y));
  const ends: number[] = [];
  return values.flatMap((value) => {
    const at = y(value);
    let column = ends.findIndex((end) => end >= at + size * 0.6);
    if (column < 0) column = ends.length;
    ends[column] = at - size * 0.6;
    const left = box.right + 8 + column * 20;
    return [
      lineNode(box.right + 1, at, left - 1.5, at, thin, 'soft'),
      textNode(left, at + size * 0.35, numberText(value, 0), { size }),
    ];
  });
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values.map((value) => Math.round(value)))].sort((a, b) => a - b);
}
