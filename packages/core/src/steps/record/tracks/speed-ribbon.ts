import type { Micros } from '../../../ground/base/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { type HandMotion, handMotion } from './hand-speed.ts';
import { handTrackOf, type Track } from './track.ts';

export type HandMotions = Readonly<Partial<Record<Hand, HandMotion>>>;

/** The speed of both hands along the film, ready to be laid under the score. */
export interface SpeedRibbon {
  /** Real time of each frame, in microseconds. */
  readonly times: Float64Array;
  /** For each frame, in the unit of the track a second; NaN where the hand is not seen. */
  readonly speeds: Readonly<Partial<Record<Hand, Float32Array>>>;
  /** The speed that fills the height: 97 in 100 are below it. Above 0. */
  readonly full: number;
}

/** Both hands smoothed, with their speeds. @param timeOf real time of a frame in microseconds */
export function handMotions(track: Track, timeOf: (frame: number) => Micros | number): HandMotions {
  return Object.fromEntries(
    hands.flatMap((hand) => {
      const found = handTrackOf(track, hand);
      return found === undefined ? [] : [[hand, handMotion(found, timeOf)] as const];
    }),
  );
}

/** @returns nothing when no hand has a speed */
export function speedRibbon(
  motions: HandMotions,
  frames: number,
  timeOf: (frame: number) => Micros | number,
): SpeedRibbon | undefined {
  const known = hands
    .flatMap((hand) => Array.from(motions[hand]?.speed ?? []))
    .filter((speed) => !Number.isNaN(speed))
    .sort((a, b) => a - b);
  const full = known[Math.floor(0.97 * (known.length - 1))];
  if (full === undefined) return undefined;
  return {
    times: Float64Array.from({ length: frames }, (_, frame) => timeOf(frame)),
    speeds: Object.fromEntries(
      hands.flatMap((hand) => {
        const motion = motions[hand];
        return motion === undefined ? [] : [[hand, motion.speed] as const];
      }),
    ),
    full: Math.max(full, 1e-6),
  };
}
