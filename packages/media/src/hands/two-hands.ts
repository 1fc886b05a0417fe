import type { KeptSighting } from './packed-sightings.ts';

/*
 * Whose hand is it? The model says of every single sighting whether it looks like a left or a right hand, and is often
 * wrong when hands meet, hold something or leave the picture. So the two identities are assigned to all sightings of the
 * film together: a hand goes on where it was and as it moved, on the whole it looks like its own side, and one frame never
 * has two left or two right hands. The path of least cost is found by a search that keeps the best ways for every pair of
 * trails. The weights are our own, tried on real films (docs/decisions/13-hand-landmarks.md).
 */

/** For each frame the sighting that is the left and the one that is the right hand. */
export interface TwoHands {
  readonly left?: KeptSighting;
  readonly right?: KeptSighting;
}

/** Cost of one unit of log-odds on the wrong side: small, for neighbouring frames err together. */
const sideWeight = 0.08;
const mostOdds = 3;
/** How far a hand strays from its predicted place in one frame, in palms. */
const stray = 0.25;
/** A hand that is somewhere else costs no more than this, however far it is. */
const jumpCost = 12;
/** A hand is seen for the first time. */
const firstCost = 6;
/** One and the same thing in the picture was one hand and is now the other. */
const swapCost = 10;
/** A sighting is nobody’s hand, in a frame where more than two are seen. */
const strangerCost = 1.5;
/** A sighting is nobody’s hand though one of the two is missing. */
const refusedCost = 6;
/** Within so many frames, and so near to where it should be, a sighting goes on from an earlier one. */
const soon = 10;
const near = 2;
/** How many ways are followed at once. */
const ways = 24;
/** The last speed is trusted less the longer a hand was not seen: so much of it is left with each frame. */
const speedLasts = 0.85;

interface Last {
  readonly sighting: KeptSighting;
  /** Pixels a frame. */
  readonly vx: number;
  readonly vy: number;
}

interface Way {
  readonly cost: number;
  readonly left: Last | undefined;
  readonly right: Last | undefined;
  readonly chosen: Chosen | undefined;
}

interface Chosen {
  readonly frame: number;
  readonly left: KeptSighting | undefined;
  readonly right: KeptSighting | undefined;
  readonly before: Chosen | undefined;
}

/**
 * @param sightings ordered by frame
 * @param mirrored the picture is a mirror image
 * @returns the hands by frame; frames without any are left out
 */
export function assignHands(
  sightings: readonly KeptSighting[],
  mirrored = false,
): ReadonlyMap<number, TwoHands> {
  let all: readonly Way[] = [{ cost: 0, left: undefined, right: undefined, chosen: undefined }];
  for (let from = 0; from < sightings.length; ) {
    const frame = (sightings[from] as KeptSighting).frame;
    let to = from;
    while (to < sightings.length && sightings[to]?.frame === frame) to += 1;
    all = goOn(all, frame, sightings.slice(from, to), mirrored ? -1 : 1);
    from = to;
  }
  const hands = new Map<number, TwoHands>();
  for (let at = all[0]?.chosen; at !== undefined; at = at.before) {
    const { frame, left, right } = at;
    hands.set(frame, { ...(left && { left }), ...(right && { right }) });
  }
  return hands;
}

/** All ways one frame longer; the best of those that end in the same trails, and no more than the best few. */
function goOn(
  all: readonly Way[],
  frame: number,
  seen: readonly KeptSighting[],
  side: number,
): readonly Way[] {
  const best = new Map<string, Way>();
  const choices = pairs(seen);
  for (const way of all) {
    for (const { left, right } of choices) {
      const cost = way.cost + costOf(way, seen, left, right, side);
      const key = `${left?.trail ?? way.left?.sighting.trail} ${right?.trail ?? way.right?.sighting.trail}`;
      if (cost >= (best.get(key)?.cost ?? Number.POSITIVE_INFINITY)) continue;
      best.set(key, {
        cost,
        left: left === undefined ? way.left : moved(way.left, left),
        right: right === undefined ? way.right : moved(way.right, right),
        chosen: { frame, left, right, before: way.chosen },
      });
    }
  }
  return [...best.values()].sort((a, b) => a.cost - b.cost).slice(0, ways);
}

function pairs(seen: readonly KeptSighting[]): readonly TwoPicked[] {
  const any = [undefined, ...seen];
  return any.flatMap((left) =>
    any.filter((right) => right !== left || right === undefined).map((right) => ({ left, right })),
  );
}

interface TwoPicked {
  readonly left: KeptSighting | undefined;
  readonly right: KeptSighting | undefined;
}

function costOf(
  way: Way,
  seen: readonly KeptSighting[],
  left: KeptSighting | undefined,
  right: KeptSighting | undefined,
  side: number,
): number {
  const strangers = seen.length - (left === undefined ? 0 : 1) - (right === undefined ? 0 : 1);
  const surplus = Math.max(0, seen.length - 2);
  let cost = surplus * strangerCost + (strangers - surplus) * refusedCost;
  if (left !== undefined)
    cost += side * sideCost(left) + placeCost(way.left, left) + swapped(way.right, way.left, left, right);
  if (right !== undefined)
    cost += -side * sideCost(right) + placeCost(way.right, right) + swapped(way.left, way.right, right, left);
  return cost;
}

/** What it costs to call this a left hand of a picture that is not mirrored; negative when it looks like one. */
function sideCost({ right }: KeptSighting): number {
  const odds = Math.log(Math.max(right, 1e-6) / Math.max(1 - right, 1e-6));
  return sideWeight * Math.min(mostOdds, Math.max(-mostOdds, odds));
}

function placeCost(last: Last | undefined, now: KeptSighting): number {
  return last === undefined ? firstCost : Math.min(jumpCost, strayCost(last, now));
}

/** How far a sighting lies from where the hand should be by now. */
function strayCost({ sighting, vx, vy }: Last, now: KeptSighting): number {
  const gap = now.frame - sighting.frame;
  // The sum of a speed that fades.
  const reach = (1 - speedLasts ** gap) / (1 - speedLasts);
  const apart = Math.hypot(now.x - sighting.x - vx * reach, now.y - sighting.y - vy * reach);
  const expected = stray * Math.max(now.palm, sighting.palm) * (1 + (gap - 1) / 2);
  return (apart / expected) ** 2 / 2;
}

/**
 * The other hand was here a moment ago, this goes on from it better than from its own hand, and the other hand is not where
 * it could be instead.
 */
function swapped(
  other: Last | undefined,
  own: Last | undefined,
  now: KeptSighting,
  otherNow: KeptSighting | undefined,
): number {
  if (other === undefined || now.frame - other.sighting.frame > soon) return 0;
  const here = strayCost(other, now);
  if (here > near || (own !== undefined && strayCost(own, now) <= Math.min(1, here))) return 0;
  return otherNow !== undefined && strayCost(other, otherNow) <= here + near ? 0 : swapCost;
}

function moved(last: Last | undefined, sighting: KeptSighting): Last {
  if (last === undefined) return { sighting, vx: 0, vy: 0 };
  const gap = sighting.frame - last.sighting.frame;
  const far = strayCost(last, sighting) > jumpCost;
  if (far || gap > 5) return { sighting, vx: 0, vy: 0 };
  return {
    sighting,
    vx: (sighting.x - last.sighting.x) / gap,
    vy: (sighting.y - last.sighting.y) / gap,
  };
}
