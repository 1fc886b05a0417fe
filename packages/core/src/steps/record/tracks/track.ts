import type { FilmTrack, Hand } from '../../../ground/study/index.ts';

/**
 * One hand over all frames of a film. Where the hand was not found `x`, `y` and `opening` are NaN and `presence` is 0: a
 * hand that cannot be seen is missing, never invented.
 */
export interface HandTrack {
  /** In the picture as shown, in pixels from its left edge; one for each frame. */
  readonly x: Float32Array;
  /** In the picture as shown, in pixels from its upper edge; one for each frame. */
  readonly y: Float32Array;
  /** Depth or height where the source knows it, in any unit; one for each frame. */
  readonly z?: Float32Array;
  /** From thumb tip to index finger tip as a share of the size of the palm, 0 when closed; NaN where unknown. */
  readonly opening?: Float32Array;
  /** How sure the source is that the hand is there, 0 to 1; one for each frame. */
  readonly presence: Float32Array;
}

/** Where the hands are in every frame of a film. Hands are anatomical: the left one is the operator’s own left hand. */
export interface Track {
  readonly source: FilmTrack['source'];
  /** Number of frames of the film. */
  readonly frames: number;
  /** Size of the picture as shown, in pixels; 0 where unknown (a table from elsewhere). */
  readonly width: number;
  readonly height: number;
  /** Whether x and y are pixels of the picture or millimetres on the bench (x to the right, y away from the operator). */
  readonly unit: 'pixels' | 'millimetres';
  readonly left?: HandTrack;
  readonly right?: HandTrack;
}

export const trackVersion = 1;

/** A hand that is nowhere seen. */
export function emptyHandTrack(frames: number): HandTrack {
  return {
    x: new Float32Array(frames).fill(Number.NaN),
    y: new Float32Array(frames).fill(Number.NaN),
    opening: new Float32Array(frames).fill(Number.NaN),
    presence: new Float32Array(frames),
  };
}

export function handTrackOf(track: Track, hand: Hand): HandTrack | undefined {
  return hand === 'left' ? track.left : track.right;
}
