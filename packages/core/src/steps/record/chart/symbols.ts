import type { Fill, PathNode, Stroke } from '../../../ground/scene/index.ts';
import { type ProcessSymbol, processSymbols } from '../../../ground/tables/index.ts';

type Shape = (typeof processSymbols)[number]['shape'];

/** The outlines of the ASME symbols around 0, 0, in a square of 2 × 2. */
const outlines: Readonly<Record<Shape, (at: (x: number, y: number) => string, radius: number) => string>> = {
  circle: (at, radius) =>
    `M ${at(-1, 0)} A ${radius} ${radius} 0 1 1 ${at(1, 0)} A ${radius} ${radius} 0 1 1 ${at(-1, 0)} Z`,
  arrow: (at) =>
    `M ${at(-1, -0.45)} L ${at(0.1, -0.45)} L ${at(0.1, -0.95)} L ${at(1.05, 0)} L ${at(0.1, 0.95)} L ${at(0.1, 0.45)} L ${at(-1, 0.45)} Z`,
  'capital-d': (at, radius) =>
    `M ${at(-0.85, -1)} L ${at(-0.1, -1)} A ${radius} ${radius} 0 0 1 ${at(-0.1, 1)} L ${at(-0.85, 1)} Z`,
  'triangle-down': (at) => `M ${at(-1.05, -0.85)} L ${at(1.05, -0.85)} L ${at(0, 0.95)} Z`,
  square: (at) => `M ${at(-0.9, -0.9)} L ${at(0.9, -0.9)} L ${at(0.9, 0.9)} L ${at(-0.9, 0.9)} Z`,
};

/** A symbol of the process chart with its middle at x, y. */
export function symbolShape(
  symbol: ProcessSymbol,
  x: number,
  y: number,
  radius: number,
  look: { readonly fill?: Fill; readonly stroke: Stroke },
): PathNode {
  const shape = processSymbols.find((facts) => facts.symbol === symbol)?.shape ?? 'circle';
  const at = (dx: number, dy: number) => `${(x + dx * radius).toFixed(3)} ${(y + dy * radius).toFixed(3)}`;
  return { kind: 'path', d: outlines[shape](at, radius), ...look };
}
