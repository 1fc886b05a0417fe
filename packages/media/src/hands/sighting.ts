import type { HandOutput } from './hand-models.ts';
import { handInput } from './hand-models.ts';
import { inPicture, type Point, type Square } from './picture.ts';

/** A hand seen in one frame; whose hand it is, is decided later over the whole film. */
export interface Sighting {
  readonly frame: number;
  /** Sightings that go on from frame to frame share it. */
  readonly trail: number;
  /** 0 to 1. */
  readonly presence: number;
  /** Above 0.5 it looks like an anatomical right hand; 0 to 1. */
  readonly right: number;
  /** The 21 landmarks, in pixels of the picture. */
  readonly landmarks: readonly Point[];
  /** The steady point of the hand, in pixels. */
  readonly place: Point;
  /** From the wrist to the knuckle of the middle finger, in pixels. */
  readonly palm: number;
  /** From thumb tip to index finger tip as a share of the palm, in space. */
  readonly opening: number;
}

/**
 * The knuckles of the four fingers. Their mean is the place of a hand: the knuckles move with the hand and not with the
 * fingers, lie near the things that are grasped, and are seen from above even when the wrist is under a sleeve or cut off
 * by the edge of the picture.
 */
const knuckles = [5, 9, 13, 17];

export function sightingOf(frame: number, trail: number, square: Square, output: HandOutput): Sighting {
  const landmarks = Array.from({ length: 21 }, (_, index) =>
    inPicture(
      square,
      (output.landmarks[3 * index] as number) / handInput,
      (output.landmarks[3 * index + 1] as number) / handInput,
    ),
  );
  const at = (index: number) => landmarks[index] as Point;
  const mean = (of: (point: Point) => number) =>
    knuckles.reduce((sum, index) => sum + of(at(index)), 0) / knuckles.length;
  return {
    frame,
    trail,
    presence: output.presence,
    right: output.right,
    landmarks,
    place: { x: mean(({ x }) => x), y: mean(({ y }) => y) },
    palm: Math.hypot(at(9).x - at(0).x, at(9).y - at(0).y),
    opening: inSpace(output.world, 4, 8) / inSpace(output.world, 0, 9),
  };
}

function inSpace(world: Float32Array, from: number, to: number): number {
  const along = (axis: number) => (world[3 * to + axis] as number) - (world[3 * from + axis] as number);
  return Math.hypot(along(0), along(1), along(2));
}

/** Two sightings are of one hand when their palms lie nearer to each other than this share of a palm. */
const sameHand = 0.5;

/**
 * Whether two sightings of one frame are one hand seen twice. The middle of the palm decides, for one hand may be seen
 * once as a left and once as a right one, with all fingers exchanged.
 */
export function isSameHand(a: Sighting, b: Sighting): boolean {
  const [one, other] = [middleOf(a), middleOf(b)];
  return Math.hypot(one.x - other.x, one.y - other.y) < sameHand * Math.max(a.palm, b.palm);
}

export function middleOf({ landmarks, place }: Sighting): Point {
  const wrist = landmarks[0] as Point;
  return { x: (wrist.x + 4 * place.x) / 5, y: (wrist.y + 4 * place.y) / 5 };
}
