import { emptyHandTrack, type HandTrack, type Track } from '@evenhand/core/record';
import type { KeptSighting } from './packed-sightings.ts';
import type { HandReport } from './tracking.ts';
import type { TwoHands } from './two-hands.ts';

export interface FilmSize {
  readonly frames: number;
  readonly width: number;
  readonly height: number;
}

/** The track of a film; a hand that is never seen is left out. */
export function trackOf({ frames, width, height }: FilmSize, hands: ReadonlyMap<number, TwoHands>): Track {
  const sides = { left: emptyHandTrack(frames), right: emptyHandTrack(frames) };
  const seen = { left: false, right: false };
  for (const two of hands.values()) {
    for (const hand of ['left', 'right'] as const) {
      const sighting = two[hand];
      if (sighting === undefined) continue;
      put(sides[hand], sighting);
      seen[hand] = true;
    }
  }
  return {
    source: 'landmarks',
    frames,
    width,
    height,
    unit: 'pixels',
    ...(seen.left && { left: sides.left }),
    ...(seen.right && { right: sides.right }),
  };
}

function put({ x, y, opening, presence }: HandTrack, sighting: KeptSighting): void {
  const { frame } = sighting;
  x[frame] = sighting.x;
  y[frame] = sighting.y;
  presence[frame] = sighting.presence;
  if (opening !== undefined) opening[frame] = sighting.opening;
}

/** A sighting that does not go on for so many frames is taken for an error of the models, not for one more hand. */
const lasting = 15;

/** Frames with more than two hands that last. */
function crowded(sightings: readonly KeptSighting[]): number {
  const onTrail = countBy(sightings, ({ trail }) => trail);
  const last = sightings.filter(({ trail }) => (onTrail.get(trail) ?? 0) >= lasting);
  return [...countBy(last, ({ frame }) => frame).values()].filter((hands) => hands > 2).length;
}

function countBy(
  sightings: readonly KeptSighting[],
  of: (sighting: KeptSighting) => number,
): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const one of sightings) counts.set(of(one), (counts.get(of(one)) ?? 0) + 1);
  return counts;
}

export function reportOf(
  frames: number,
  hands: ReadonlyMap<number, TwoHands>,
  sightings: readonly KeptSighting[],
): HandReport {
  const all = [...hands.values()];
  const count = (left: boolean, right: boolean) =>
    all.filter((two) => (two.left !== undefined) === left && (two.right !== undefined) === right).length;
  const [both, leftOnly, rightOnly] = [count(true, true), count(true, false), count(false, true)];
  const more = crowded(sightings);
  return { frames, both, leftOnly, rightOnly, none: frames - both - leftOnly - rightOnly, more };
}
