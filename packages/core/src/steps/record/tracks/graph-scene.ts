import { micros } from '../../../ground/base/index.ts';
import { groupNode, lineNode, type Scene, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { countText, exactSeconds, numberText } from '../../../ground/units/index.ts';
import type { GraphDot, GraphPath } from './chronocyclegraph.ts';
import type { Track } from './track.ts';

export interface GraphLook {
  readonly title: string;
  readonly unit: Track['unit'];
  /** The picture that pixels are of; its edges are drawn. */
  readonly picture?: { readonly width: number; readonly height: number };
  /** Time from dot to dot in microseconds. */
  readonly every: number;
  readonly cycles: number;
  /** Colour of a dot, #rrggbb. */
  readonly colourOf: (path: GraphPath, dot: GraphDot) => string;
}

const room = { left: 36, top: 64, width: 720, bottom: 56 };
const dotSize = 2.4;

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Paper units in a pixel or a millimetre. */
  readonly scale: number;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

/** The chronocyclegraph as a drawing of its own, without the picture: nobody can be seen on it. */
export function chronocyclegraphScene(paths: readonly GraphPath[], look: GraphLook): Scene {
  const frame = frameOf(paths, look);
  const height = frame.top + frame.height + room.bottom;
  const words = wordsOf(paths, look);
  const seen = groupNode('layer', [
    {
      kind: 'rect',
      x: frame.left,
      y: frame.top,
      width: frame.width,
      height: frame.height,
      stroke: { ink: 'rule', width: 0.6 },
    },
    ...paths.flatMap((path) => path.dots.map((dot) => dotNode(path, dot, frame, look))),
    ...scaleBar(frame, look),
  ]);
  return {
    width: room.left * 2 + room.width,
    height,
    title: look.title,
    description: words,
    nodes: [
      groupNode('heading', [textNode(room.left, 32, look.title, { size: 14, weight: 600 })]),
      groupNode('note', [textNode(room.left, 50, words, { size: 9.5, ink: 'soft' })]),
      groupNode('figure', [seen], words),
    ],
  };
}

function wordsOf(paths: readonly GraphPath[], { every, cycles }: GraphLook): string {
  const hands = (['left', 'right'] as const).filter((hand) => paths.some((path) => path.hand === hand));
  const signs = hands.map((hand) => (hand === 'left' ? 'round dots: left hand' : 'diamonds: right hand'));
  const none = hands.length === 0 ? ['neither hand was seen'] : signs;
  return `${countText(cycles, 'cycle')}; a dot each ${exactSeconds(micros(every))} s; ${none.join('; ')}; colours are those of the motions.`;
}

/** The picture’s edges, or for the bench what the paths need; equal scale both ways. */
function frameOf(paths: readonly GraphPath[], { unit, picture }: GraphLook): Frame {
  const dots = paths.flatMap((path) => path.dots);
  const own = unit === 'pixels' && picture !== undefined;
  const least = (values: readonly number[], edge: number) =>
    values.reduce((low, value) => Math.min(low, value), own ? edge : (values[0] ?? 0));
  const most = (values: readonly number[], edge: number) =>
    values.reduce((high, value) => Math.max(high, value), own ? edge : (values[0] ?? 1));
  const [xs, ys] = [dots.map(({ x }) => x), dots.map(({ y }) => y)];
  const margin = own ? 0 : 0.05 * Math.max(1, most(xs, 0) - least(xs, 0), most(ys, 0) - least(ys, 0));
  const [x0, x1] = [least(xs, 0) - margin, most(xs, picture?.width ?? 0) + margin];
  const [y0, y1] = [least(ys, 0) - margin, most(ys, picture?.height ?? 0) + margin];
  const scale = Math.min(room.width / Math.max(1, x1 - x0), 900 / Math.max(1, y1 - y0));
  const { left, top } = room;
  return {
    left,
    top,
    width: (x1 - x0) * scale,
    height: (y1 - y0) * scale,
    scale,
    x: (value) => left + (value - x0) * scale,
    // On the bench y grows away from the operator, who sits below.
    y: (value) => top + (unit === 'pixels' ? value - y0 : y1 - value) * scale,
  };
}

function dotNode(path: GraphPath, dot: GraphDot, frame: Frame, look: GraphLook): SceneNode {
  const [x, y, r] = [frame.x(dot.x), frame.y(dot.y), dotSize];
  const at = (dx: number, dy: number) => `${(x + dx).toFixed(2)} ${(y + dy).toFixed(2)}`;
  const d =
    path.hand === 'left'
      ? `M${at(-r, 0)}A${r} ${r} 0 0 1 ${at(r, 0)}A${r} ${r} 0 0 1 ${at(-r, 0)}Z`
      : `M${at(-r * 1.2, 0)}L${at(0, -r * 1.2)}L${at(r * 1.2, 0)}L${at(0, r * 1.2)}Z`;
  return {
    kind: 'path',
    d,
    fill: { ink: { colour: look.colourOf(path, dot) } },
    stroke: { ink: 'ink', width: 0.25 },
  };
}

/** A length of 1, 2 or 5 times a power of ten that takes about a sixth of the width. */
function scaleBar(frame: Frame, { unit }: GraphLook): SceneNode[] {
  const wanted = frame.width / frame.scale / 6;
  const ten = 10 ** Math.floor(Math.log10(Math.max(1e-9, wanted)));
  const length = [5, 2, 1].map((times) => times * ten).find((value) => value <= wanted) ?? ten;
  const y = frame.top + frame.height + 18;
  const right = frame.left + length * frame.scale;
  const text = `${numberText(length, length < 1 ? 2 : 0)} ${unit === 'millimetres' ? 'mm on the bench' : 'pixels'}`;
  return [
    lineNode(frame.left, y, right, y, 1, 'ink'),
    lineNode(frame.left, y - 4, frame.left, y + 4, 1, 'ink'),
    lineNode(right, y - 4, right, y + 4, 1, 'ink'),
    textNode(frame.left, y + 16, text, { size: 9.5 }),
  ];
}
