import { cornersOf, roomOf } from '@evenhand/core/develop';
import type { WorkPlace } from '@evenhand/core/ground/study';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A place that is drawn. */
export type Placed = WorkPlace & { readonly at: Point };

export function placedOf(places: readonly WorkPlace[]): readonly Placed[] {
  return places.filter((place): place is Placed => place.at !== undefined);
}

/** Millimetres from one line of the grid to the next. */
export const gridSteps = [1, 5, 10, 25, 50] as const;
export type GridStep = (typeof gridSteps)[number];

/** Within this many millimetres a place falls into line with another one. Ours. */
const inLine = 8;

export interface Snapped {
  readonly at: Point;
  /** What it fell into line with. */
  readonly across?: number | undefined;
  readonly away?: number | undefined;
}

/**
 * To the grid, and into line with another place, with its mirror image on the other side, or with the middle where one is
 * near; never in front of the near edge.
 */
export function snapped({ x, y }: Point, grid: GridStep, others: readonly Placed[]): Snapped {
  const lines = [0, ...others.flatMap(({ at }) => [at.x, -at.x])];
  const across = nearest(x, lines);
  const away = nearest(
    y,
    others.map(({ at }) => at.y),
  );
  const to = (value: number) => Math.round(value / grid) * grid;
  return { at: { x: across ?? to(x), y: Math.max(0, away ?? to(y)) }, across, away };
}

function nearest(value: number, lines: readonly number[]): number | undefined {
  let best: number | undefined;
  for (const line of lines) {
    const off = Math.abs(line - value);
    if (off <= inLine && (best === undefined || off < Math.abs(best - value))) best = line;
  }
  return best;
}

/** One step of an arrow key: to the next line of the grid, with the shift key one millimetre. */
export function stepped({ x, y }: Point, key: string, grid: GridStep, fine: boolean): Point | undefined {
  const way = arrows[key];
  if (way === undefined) return undefined;
  const next = (value: number, sign: number) => {
    if (sign === 0) return value;
    if (fine) return value + sign;
    return (sign > 0 ? Math.floor(value / grid + 1e-9) + 1 : Math.ceil(value / grid - 1e-9) - 1) * grid;
  };
  return { x: next(x, way.x), y: Math.max(0, next(y, way.y)) };
}

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

export interface Dimension {
  readonly from: Point;
  readonly to: Point;
  /** Millimetres. */
  readonly length: number;
}

/** From a place to the middle and to the near edge, and the clear gap to the nearest place beside it on each side. */
export function dimensionsOf(place: Placed, others: readonly Placed[]): readonly Dimension[] {
  const { at } = place;
  const half = roomOf(place).x / 2;
  const found: Dimension[] = [
    ...(at.x === 0 ? [] : [line({ x: 0, y: at.y }, at)]),
    ...(at.y === 0 ? [] : [line({ x: at.x, y: 0 }, at)]),
  ];
  for (const side of [-1, 1] as const) {
    const beside = others
      .filter((other) => overlaps(place, other) && (other.at.x - at.x) * side > 0)
      .map((other) => ({ from: at.x + side * half, to: other.at.x - (side * roomOf(other).x) / 2 }))
      .filter(({ from, to }) => (to - from) * side > 0)
      .sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from))[0];
    if (beside !== undefined) {
      const y = at.y + roomOf(place).y / 4;
      found.push(line({ x: beside.from, y }, { x: beside.to, y }));
    }
  }
  return found;
}

function overlaps(one: Placed, other: Placed): boolean {
  return Math.abs(one.at.y - other.at.y) < (roomOf(one).y + roomOf(other).y) / 2;
}

function line(from: Point, to: Point): Dimension {
  return { from, to, length: Math.hypot(to.x - from.x, to.y - from.y) };
}

/** Corners as the points of an SVG polygon; y grows downwards there. */
export function polygonOf(place: WorkPlace): string {
  return cornersOf(place)
    .map(({ x, y }) => `${x.toFixed(1)},${(-y).toFixed(1)}`)
    .join(' ');
}

export interface View {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** What must be seen: the bench with the places that stand beside it, and room for the operator and figures. */
export function viewOf(
  bench: { readonly width: number; readonly depth: number },
  places: readonly Placed[],
): View {
  let [half, deep] = [bench.width / 2, bench.depth];
  for (const place of places) {
    half = Math.max(half, Math.abs(place.at.x) + roomOf(place).x / 2);
    deep = Math.max(deep, place.at.y + roomOf(place).y / 2);
  }
  const margin = 32;
  return {
    left: -half - margin,
    top: -deep - margin,
    width: 2 * (half + margin),
    height: deep + margin + belowEdge,
  };
}

/** Room below the near edge, millimetres: the shoulders stand there. */
const belowEdge = 52;

export interface NameAt {
  readonly id: string;
  readonly name: string;
  /** Middle of its foot, as in an SVG: y grows downwards. */
  readonly x: number;
  readonly y: number;
}

/** Size of a name and about the width of a letter of it, millimetres of the plan. */
const nameSize = 21;
const letter = 11.5;

/** Names below their places, or above where one would meet a name that stands already or another place. */
export function namesAt(places: readonly Placed[]): readonly NameAt[] {
  const taken: { readonly x: number; readonly y: number; readonly half: number }[] = [];
  return places.map((place) => {
    const { id, name, at } = place;
    const [half, deep] = [(name.length * letter) / 2, roomOf(place).y / 2];
    const choices = [deep + nameSize + 3, -deep - 5, deep + 2 * nameSize + 5, nameSize / 3].map(
      (down) => -at.y + down,
    );
    const meets = (y: number) =>
      taken.some(
        (other) => Math.abs(other.x - at.x) < other.half + half && Math.abs(other.y - y) < nameSize,
      ) ||
      places.some((other) => {
        const room = roomOf(other);
        return (
          other !== place &&
          Math.abs(other.at.x - at.x) < room.x / 2 + half &&
          y > -other.at.y - room.y / 2 &&
          y - nameSize * 0.8 < -other.at.y + room.y / 2
        );
      });
    const y = choices.find((choice) => !meets(choice)) ?? choices[0] ?? -at.y;
    taken.push({ x: at.x, y, half });
    return { id, name, x: at.x, y };
  });
}
