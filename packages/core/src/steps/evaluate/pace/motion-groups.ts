import { endOf, type Hand, hands, type Place } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { type MethodReading, type Piece, stateOf } from '../../examine/index.ts';
import { objectKey } from '../motion-key.ts';

/** Motions of one kind with one object, and for transports over one route, whole within their cycles. */
export interface MotionGroup {
  /** Undefined for both hands together. */
  readonly hand: Hand | undefined;
  readonly kind: MotionKind;
  readonly object: string | undefined;
  /** Places of a transport, mirrored places as one; empty for other motions. */
  readonly route: string;
  /** Millimetres; undefined for other motions, and where a place or its position is not known. */
  readonly distance: number | undefined;
  readonly pieces: readonly Piece[];
}

/** The groups of a reading by hand: motions that work, neither cut by a cycle nor without length. */
export function motionGroups(reading: MethodReading): MotionGroup[] {
  const places = placesOf(reading);
  const groups = new Map<string, { group: Omit<MotionGroup, 'pieces'>; pieces: Piece[] }>();
  for (const hand of hands) {
    const whole = wholeMotions(reading, hand);
    for (const cycle of reading.cycles) {
      for (const piece of cycle[hand]) {
        if (stateOf(piece.kind) !== 'working' || piece.duration <= 0 || !whole(piece)) continue;
        const { route, distance } = routeOf(piece, places);
        const key = `${hand} ${piece.kind} ${objectKey(piece.object)} ${route}`;
        const known = groups.get(key);
        const { kind, object } = piece;
        if (known === undefined)
          groups.set(key, { group: { hand, kind, object, route, distance }, pieces: [piece] });
        else known.pieces.push(piece);
      }
    }
  }
  return [...groups.values()].map(({ group, pieces }) => ({ ...group, pieces }));
}

/** The same with both hands together. */
export function bothHands(groups: readonly MotionGroup[]): MotionGroup[] {
  const found = new Map<string, MotionGroup>();
  for (const group of groups) {
    const key = `${group.kind} ${objectKey(group.object)} ${group.route}`;
    const known = found.get(key);
    found.set(
      key,
      known === undefined
        ? { ...group, hand: undefined }
        : { ...known, pieces: [...known.pieces, ...group.pieces] },
    );
  }
  return [...found.values()];
}

/** A motion of which a part lies in another cycle does not show how long it takes. */
function wholeMotions({ method }: MethodReading, hand: Hand): (piece: Piece) => boolean {
  const row = method[hand];
  const ends = new Map(row.items.map((item, index) => [item.id, endOf(row, index)]));
  return ({ motion, from, to }) =>
    motion !== undefined && motion.start === from && ends.get(motion.id) === to;
}

function placesOf({ study }: MethodReading): ReadonlyMap<string, Place> {
  return new Map(study.places.map((place) => [place.id, place]));
}

function routeOf(
  { kind, motion }: Piece,
  places: ReadonlyMap<string, Place>,
): Pick<MotionGroup, 'route' | 'distance'> {
  if (kind !== 'TE' && kind !== 'TL') return { route: '', distance: undefined };
  const [from, to] = [motion?.from, motion?.to].map((id) => (id === undefined ? undefined : places.get(id)));
  const route = `${placeKey(from)} > ${placeKey(to)}`;
  if (from?.at === undefined || to?.at === undefined) return { route, distance: undefined };
  return { route, distance: Math.hypot(to.at.x - from.at.x, to.at.y - from.at.y) };
}

/** One name for a place and the one that serves the other hand in the same way. */
function placeKey(place: Place | undefined): string {
  if (place === undefined) return '?';
  return place.mirror === undefined || place.id < place.mirror ? place.id : place.mirror;
}
