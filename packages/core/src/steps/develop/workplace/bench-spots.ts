import type { Hand } from '../../../ground/study/index.ts';
import type { Work, WorkPlace } from '../work/index.ts';
import type { ReachChoice } from './people.ts';
import { areaOf, type BenchPoint } from './working-areas.ts';

/** Where a place may be put. */
export interface BenchSpot {
  readonly at: BenchPoint;
  /** Room there, millimetres; what is larger does not fit. Unlimited when left out. */
  readonly room?: { readonly x: number; readonly y: number } | undefined;
}

export interface LayoutLimits {
  readonly reach: ReachChoice;
  /** Where places may be put, besides where they are now. */
  readonly spots: readonly BenchSpot[];
  /** Ids of the places that may be moved; all bins, tools and exits that do not stay when left out. */
  readonly movable?: readonly string[] | undefined;
  /** Places that must stay on one side of the middle, by id. */
  readonly sides?: Readonly<Record<string, Hand>> | undefined;
  /** Where places must lie with all of their room, millimetres; anywhere when left out. */
  readonly bench?: { readonly width: number; readonly depth: number } | undefined;
  /** Least gap between two places, millimetres; 20 when left out (ours). */
  readonly gap?: number | undefined;
}

/** Between two places, millimetres. Ours. */
export const leastGap = 20;
/** Room of a place whose size nobody gave, millimetres. Ours. */
const usualSize = { x: 80, y: 80 } as const;

export function sizeOf({ size, width }: WorkPlace): { readonly x: number; readonly y: number } {
  return size ?? (width === undefined ? usualSize : { x: width, y: width });
}

/** The least upright rectangle about a place as it is turned, millimetres. */
export function roomOf(place: WorkPlace): { readonly x: number; readonly y: number } {
  const { x, y } = sizeOf(place);
  const turn = ((place.angle ?? 0) * Math.PI) / 180;
  const [across, along] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  return { x: x * across + y * along, y: x * along + y * across };
}

/** The corners of a place as it is turned, against the clock from its near left one; empty without a position. */
export function cornersOf(place: WorkPlace): readonly BenchPoint[] {
  const { at } = place;
  if (at === undefined) return [];
  const { x, y } = sizeOf(place);
  const turn = ((place.angle ?? 0) * Math.PI) / 180;
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([across, away]) => {
    const [dx, dy] = [(across * x) / 2, (away * y) / 2];
    return {
      x: at.x + dx * Math.cos(turn) - dy * Math.sin(turn),
      y: at.y + dx * Math.sin(turn) + dy * Math.cos(turn),
    };
  });
}

export function movablePlaces(work: Work, { movable }: Pick<LayoutLimits, 'movable'>): readonly WorkPlace[] {
  const usual = ({ kind, stays }: WorkPlace) =>
    stays !== true && (kind === 'bin' || kind === 'tool' || kind === 'exit');
  return work.places.filter((place) =>
    movable === undefined ? usual(place) : movable.includes(place.id) && place.stays !== true,
  );
}

/** Spots on a grid over what some hand of the smallest person reaches, by rows from the near edge. */
export function gridSpots(
  reach: ReachChoice,
  { step = 100, deepest = 600 }: { readonly step?: number; readonly deepest?: number } = {},
): readonly BenchSpot[] {
  const found: BenchSpot[] = [];
  const half = Math.ceil(900 / step);
  for (let y = step; y <= deepest; y += step) {
    for (let column = -half; column <= half; column += 1) {
      const at = { x: column * step, y };
      const place = { name: '', at };
      if (areaOf(place, 'left', reach).reached || areaOf(place, 'right', reach).reached) found.push({ at });
    }
  }
  return found;
}

/** The layouts that are allowed: which movable place may stand on which spot, and which pairs exclude each other. */
export interface LayoutSpace {
  readonly items: readonly WorkPlace[];
  /** The spots given, then where the movable places are now. */
  readonly spots: readonly BenchSpot[];
  /** Spot of each item as it is now, −1 for an item without a position. */
  readonly now: Int32Array;
  readonly allowed: (item: number, spot: number) => boolean;
  readonly conflict: (item: number, spot: number, other: number, otherSpot: number) => boolean;
  /** The work with the items on these spots. */
  readonly moved: (spotOf: ArrayLike<number>) => Work;
}

/**
 * @param reached whether a place can be served where it is put; what that asks for depends on who uses it
 */
export function layoutSpace(
  work: Work,
  limits: LayoutLimits,
  reached: (place: WorkPlace, at: BenchPoint) => boolean,
): LayoutSpace {
  const items = movablePlaces(work, limits);
  const ids = new Set(items.map(({ id }) => id));
  const fixed = work.places.filter(({ id, at }) => !ids.has(id) && at !== undefined);
  const spots = [...limits.spots];
  const now = Int32Array.from(items, ({ at }) => {
    if (at === undefined) return -1;
    const known = spots.findIndex((spot) => spot.at.x === at.x && spot.at.y === at.y);
    return known >= 0 ? known : spots.push({ at }) - 1;
  });
  const gap = limits.gap ?? leastGap;
  const close = (one: WorkPlace, a: BenchPoint, other: WorkPlace, b: BenchPoint): boolean => {
    const [size, room] = [roomOf(one), roomOf(other)];
    return (
      Math.abs(a.x - b.x) < (size.x + room.x) / 2 + gap && Math.abs(a.y - b.y) < (size.y + room.y) / 2 + gap
    );
  };
  const spotAt = (spot: number): BenchPoint => spots[spot]?.at ?? { x: 0, y: 0 };
  const judge = (place: WorkPlace, spot: number): boolean => {
    const [at, size, room] = [spotAt(spot), roomOf(place), spots[spot]?.room];
    const side = limits.sides?.[place.id];
    if (!onBench(place, at)) return false;
    if (side !== undefined && (side === 'left' ? at.x > 0 : at.x < 0)) return false;
    if (room !== undefined && (size.x > room.x || size.y > room.y)) return false;
    if (fixed.some((other) => other.at !== undefined && close(place, at, other, other.at))) return false;
    return reached(place, at);
  };
  const onBench = (place: WorkPlace, { x, y }: BenchPoint): boolean => {
    const { bench } = limits;
    if (bench === undefined) return true;
    const size = roomOf(place);
    const [half, deep] = [size.x / 2, size.y / 2];
    return Math.abs(x) + half <= bench.width / 2 && y - deep >= 0 && y + deep <= bench.depth;
  };
  const table = items.map((place) => spots.map((_, spot) => judge(place, spot)));
  return {
    items,
    spots,
    now,
    allowed: (item, spot) => table[item]?.[spot] === true,
    conflict: (item, spot, other, otherSpot) => {
      const [one, two] = [items[item], items[other]];
      return one !== undefined && two !== undefined && close(one, spotAt(spot), two, spotAt(otherSpot));
    },
    moved: (spotOf) => {
      const at = new Map(items.map(({ id }, item) => [id, spotAt(spotOf[item] ?? -1)]));
      return {
        ...work,
        places: work.places.map((place) => {
          const point = at.get(place.id);
          return point === undefined ? place : { ...place, at: point };
        }),
      };
    },
  };
}
