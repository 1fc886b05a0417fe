import {
  pointsPerMillimetre,
  type SceneNode,
  type SheetName,
  sheets,
  type TextNode,
  textBox,
} from '../../../ground/scene/index.ts';
import type { Work } from '../work/index.ts';
import { roomOf } from './bench-spots.ts';
import type { ReachChoice } from './people.ts';
import type { Trips } from './trips.ts';
import type { BenchPoint } from './working-areas.ts';

/** The sheets of the other prints, and A3 for large benches. */
export type PlanPaper = SheetName;

export interface PlanLook {
  readonly paper: PlanPaper;
  /** Millimetres of the bench in one millimetre of paper. */
  readonly scale: 5 | 10;
  readonly reach: ReachChoice;
  /** Width and depth of the bench, millimetres; as large as its places ask for when left out. */
  readonly bench?: { readonly width: number; readonly depth: number } | undefined;
  readonly trips?: Trips | undefined;
  /** Positions of places that the trips name and the work does not have. */
  readonly elsewhere?: ((place: string) => BenchPoint | undefined) | undefined;
  /** What the workshop must know of the drawing itself. */
  readonly titleBlock?: TitleBlock | undefined;
  /** For the travel of a day: period of the cycle and time worked, microseconds. */
  readonly day?: { readonly period: number; readonly worked: number } | undefined;
}

export interface TitleBlock {
  readonly operation: string;
  readonly drawnBy?: string | undefined;
  readonly date?: string | undefined;
}

/** Where the bench lies on the sheet, and how its millimetres become points. */
export interface PlanFrame {
  readonly page: { readonly width: number; readonly height: number };
  readonly left: number;
  readonly right: number;
  /** Of the bench on paper. */
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  readonly bench: { readonly width: number; readonly depth: number };
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
  readonly length: (mm: number) => number;
}

const side = 12 * pointsPerMillimetre;
/** Room for the heading and for the dimensions above the bench. */
export const headRoom = 92;
/** Room for what stands under the bench. */
export const footRoom = 132;
/** Room for the dimensions at its sides. */
const dimensionRoom = 40;

/** What the work says, else as large as its places ask for. Millimetres. */
export function benchSize(work: Work): { readonly width: number; readonly depth: number } {
  if (work.bench !== undefined) return { width: work.bench.width, depth: work.bench.depth };
  let [half, depth] = [500, 500];
  for (const place of work.places) {
    if (place.at === undefined) continue;
    const { x, y } = roomOf(place);
    half = Math.max(half, Math.abs(place.at.x) + x / 2 + 20);
    depth = Math.max(depth, place.at.y + y / 2 + 20);
  }
  return { width: 2 * Math.ceil(half / 50) * 50, depth: Math.ceil(depth / 50) * 50 };
}

/** Upright where it fits so, else across; undefined where it does not fit at this scale. */
export function planFrame(work: Work, { paper, scale, bench: wanted }: PlanLook): PlanFrame | undefined {
  const bench = wanted ?? benchSize(work);
  const length = (mm: number) => (mm / scale) * pointsPerMillimetre;
  const [wide, deep] = [length(bench.width), length(bench.depth)];
  const { width, height } = sheets[paper];
  const fits = (across: number, down: number) =>
    wide + 2 * (side + dimensionRoom) <= across && deep + headRoom + footRoom + side * 2 <= down;
  const page = fits(width, height)
    ? { width, height }
    : fits(height, width)
      ? { width: height, height: width }
      : undefined;
  if (page === undefined) return undefined;
  const middle = page.width / 2;
  const top = side + headRoom;
  const box = { left: middle - wide / 2, top, right: middle + wide / 2, bottom: top + deep };
  return {
    page,
    left: side,
    right: page.width - side,
    box,
    bench,
    length,
    x: (mm) => middle + length(mm),
    y: (mm) => box.bottom - length(mm),
  };
}

/** The part of a line of points that lies on the bench, as a path. */
export function clippedPath({ bench, x, y }: PlanFrame, points: readonly BenchPoint[]): string {
  const parts: string[] = [];
  let end: BenchPoint | undefined;
  points.forEach((to, index) => {
    const from = points[index - 1];
    const cut = from === undefined ? undefined : clippedSegment(from, to, bench.width / 2, bench.depth);
    if (cut === undefined) return;
    const [a, b] = cut;
    if (end?.x !== a.x || end.y !== a.y) parts.push(`M ${coordinate(x(a.x))} ${coordinate(y(a.y))}`);
    parts.push(`L ${coordinate(x(b.x))} ${coordinate(y(b.y))}`);
    end = b;
  });
  return parts.join(' ');
}

export function coordinate(value: number): number {
  return Math.round(value * 100) / 100;
}

/** What of a segment lies within −half to half across and 0 to depth (Liang and Barsky 1984, from memory). */
function clippedSegment(
  from: BenchPoint,
  to: BenchPoint,
  half: number,
  depth: number,
): readonly [BenchPoint, BenchPoint] | undefined {
  let [begin, end] = [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  for (const [step, room] of [
    [-dx, from.x + half],
    [dx, half - from.x],
    [-dy, from.y],
    [dy, depth - from.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return undefined;
      continue;
    }
    const at = room / step;
    if (step < 0) begin = Math.max(begin, at);
    else end = Math.min(end, at);
  }
  if (begin >= end) return undefined;
  const point = (share: number): BenchPoint =>
    share === 0 ? from : share === 1 ? to : { x: from.x + share * dx, y: from.y + share * dy };
  return [point(begin), point(end)];
}

/** Puts texts where nothing else stands; a text that finds no room is left out. */
export class TextRoom {
  private readonly taken: { left: number; top: number; right: number; bottom: number }[] = [];

  /** The first of the choices that is free. */
  place(choices: readonly TextNode[]): SceneNode[] {
    for (const node of choices) {
      const box = textBox(node);
      if (this.taken.some((other) => meets(box, other))) continue;
      this.taken.push(box);
      return [node];
    }
    return [];
  }

  block(box: { left: number; top: number; right: number; bottom: number }): void {
    this.taken.push(box);
  }
}

type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
