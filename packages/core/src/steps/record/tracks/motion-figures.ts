import type { Micros } from '../../../ground/base/index.ts';
import type { HandMotion } from './hand-speed.ts';
import { spectralArcLength } from './smoothness.ts';

/** What a hand’s path says of one motion. Lengths are in the unit of the track, times are real. */
export interface MotionFigures {
  /** Length of the path while the hand is seen. A tracker’s noise adds to it, most where the hand rests. */
  readonly path: number;
  /** Straight from the first to the last place that is seen. */
  readonly straight: number;
  /** Largest speed, in a second; nothing when the hand is never seen for three frames on end. */
  readonly peak: { readonly speed: number; readonly frame: number } | undefined;
  /** Spectral arc length, below 0, nearer to 0 is smoother; only where the hand is seen throughout and moves. */
  readonly smoothness: number | undefined;
  /** Share of the frames in which the hand is seen, 0 to 1. */
  readonly seen: number;
}

/**
 * Figures of the motion that begins at a frame and ends before another; nothing when the hand is not seen in it at all.
 * @param timeOf real time of a frame in microseconds
 */
export function motionFigures(
  motion: HandMotion,
  from: number,
  to: number,
  timeOf: (frame: number) => Micros | number,
): MotionFigures | undefined {
  const frames: number[] = [];
  // The motion lasts until the frame that begins the next one, so the way to that frame is its own.
  const last = Math.min(to, motion.x.length - 1);
  for (let frame = Math.max(0, from); frame <= last; frame += 1)
    if (!Number.isNaN(motion.x[frame])) frames.push(frame);
  const [first] = frames;
  const end = frames.at(-1);
  const whole = last - Math.max(0, from) + 1;
  if (first === undefined || end === undefined || whole <= 0) return undefined;
  let path = 0;
  let peak: MotionFigures['peak'];
  for (const [index, frame] of frames.entries()) {
    const before = frames[index - 1];
    if (before === frame - 1) path += distance(motion, before, frame);
    const speed = motion.speed[frame] as number;
    if (!Number.isNaN(speed) && speed > (peak?.speed ?? -1)) peak = { speed, frame };
  }
  const seen = frames.length / whole;
  const smoothness = seen === 1 ? evenSmoothness(motion, first, end, timeOf) : undefined;
  return { path, straight: distance(motion, first, end), peak, smoothness, seen };
}

function distance({ x, y }: HandMotion, from: number, to: number): number {
  return Math.hypot((x[to] as number) - (x[from] as number), (y[to] as number) - (y[from] as number));
}

/** Frames of a film may lie unevenly in time; the measure wants equal steps, so the speed is read between frames. */
function evenSmoothness(
  { speed }: HandMotion,
  first: number,
  last: number,
  timeOf: (frame: number) => number,
): number | undefined {
  const count = last - first + 1;
  const start = timeOf(first);
  const step = (timeOf(last) - start) / (count - 1);
  if (!(step > 0)) return undefined;
  const even: number[] = [];
  let frame = first;
  for (let index = 0; index < count; index += 1) {
    const time = start + index * step;
    while (frame < last - 1 && timeOf(frame + 1) <= time) frame += 1;
    const [a, b] = [timeOf(frame), timeOf(frame + 1)];
    const share = Math.min(1, Math.max(0, (time - a) / (b - a)));
    even.push((speed[frame] as number) * (1 - share) + (speed[frame + 1] as number) * share);
  }
  return even.some(Number.isNaN) ? undefined : spectralArcLength(even, 1e6 / step);
}
