import { type Micros, micros } from '../base/index.ts';
import type { FrameTimes } from './schema.ts';

const longestPattern = 12;

/**
 * Packs presentation times into the document's form. A constant rate becomes one step; rates that a film's time scale
 * cannot divide evenly (33, 33, 34 ms …) become one repeated pattern; anything else is kept delta by delta.
 * @param ticks presentation time of every frame in ticks, growing
 * @param endTick end of the last frame, after the last time
 * @param ticksPerSecond the film's own time scale
 * @throws RangeError when there is no frame, the first time lies before zero, or the times do not grow
 */
export function encodeFrameTimes(
  ticks: readonly number[],
  endTick: number,
  ticksPerSecond: number,
): FrameTimes {
  const start = ticks[0];
  if (start === undefined) throw new RangeError('a film needs at least one frame');
  if (!Number.isSafeInteger(start) || start < 0) {
    throw new RangeError(`the first frame must be shown at a whole tick of 0 or more, got ${start}`);
  }
  const deltas = ticks.map((tick, frame) => (ticks[frame + 1] ?? endTick) - tick);
  const wrong = deltas.findIndex((delta) => !Number.isSafeInteger(delta) || delta < 1);
  if (wrong >= 0) throw new RangeError(`frame ${wrong} does not end after it starts`);
  return { ticksPerSecond, start, steps: packDeltas(deltas) };
}

function packDeltas(deltas: readonly number[]): FrameTimes['steps'] {
  const steps: { repeat: number; deltas: number[] }[] = [];
  let at = 0;
  while (at < deltas.length) {
    const { length, repeat } = bestPattern(deltas, at);
    const last = steps.at(-1);
    if (repeat === 1 && last?.repeat === 1 && last.deltas.length + length <= 64) {
      last.deltas.push(...deltas.slice(at, at + length));
    } else {
      steps.push({ repeat, deltas: deltas.slice(at, at + length) });
    }
    at += length * repeat;
  }
  return steps;
}

function bestPattern(deltas: readonly number[], at: number): { length: number; repeat: number } {
  let best = { length: 1, repeat: 1 };
  for (let length = 1; length <= longestPattern && at + length <= deltas.length; length += 1) {
    let same = at + length;
    while (same < deltas.length && deltas[same] === deltas[same - length]) same += 1;
    const repeat = Math.floor((same - at) / length);
    const saved = repeat > 1 ? (repeat - 1) * length : 0;
    if (saved > (best.repeat - 1) * best.length) best = { length, repeat };
  }
  return best;
}

/** Frame times unpacked once for fast look-up. Boundaries run from 0 to the number of frames (the end of the film). */
export interface FrameClock {
  readonly frames: number;
  /** Film time of a boundary, in whole microseconds from the film's zero. @throws RangeError outside 0 … frames */
  readonly timeOf: (boundary: number) => Micros;
  /** The frame shown at a film time: the last whose presentation time is not after it; the first before all. */
  readonly frameAt: (time: number) => number;
}

export function frameCount(times: FrameTimes): number {
  return times.steps.reduce((sum, step) => sum + step.repeat * step.deltas.length, 0);
}

const mostFrames = 50_000_000;
/** Above this, a tick within a second times 1e6 is no longer an exact number. */
const finestTicks = 9_000_000_000;

/** Why frame times cannot be used, as the end of a sentence; undefined when every frame has a time of its own. */
export function frameTimesFault(times: FrameTimes): string | undefined {
  const frames = frameCount(times);
  if (frames > mostFrames) return `${frames} frames are more than a film can have`;
  if (times.ticksPerSecond > finestTicks)
    return `${times.ticksPerSecond} ticks a second are more than ${finestTicks}`;
  const lengthOf = (deltas: readonly number[]) => deltas.reduce((sum, delta) => sum + delta, 0);
  const end = times.steps.reduce((sum, step) => sum + step.repeat * lengthOf(step.deltas), times.start);
  if (!Number.isSafeInteger(end) || (end / times.ticksPerSecond) * 1e6 > Number.MAX_SAFE_INTEGER / 2) {
    return 'the last frame ends later than a time can be written';
  }
  const shortest = times.steps.reduce(
    (least, step) => Math.min(least, ...step.deltas),
    Number.POSITIVE_INFINITY,
  );
  return shortest * 1e6 < times.ticksPerSecond
    ? `a frame of ${shortest} ${shortest === 1 ? 'tick' : 'ticks'} is shorter than a microsecond`
    : undefined;
}

/** Unpacks frame times: O(frames) once, then O(1) and O(log frames). */
export function frameClock(times: FrameTimes): FrameClock {
  const frames = frameCount(times);
  const micro = new Float64Array(frames + 1);
  let tick = times.start;
  let frame = 0;
  const toMicros = (value: number) => exactMicros(value, times.ticksPerSecond);
  for (const step of times.steps) {
    for (let round = 0; round < step.repeat; round += 1) {
      for (const delta of step.deltas) {
        micro[frame] = toMicros(tick);
        tick += delta;
        frame += 1;
      }
    }
  }
  micro[frames] = toMicros(tick);
  return {
    frames,
    timeOf: (boundary) => {
      const time = micro[boundary];
      if (time === undefined)
        throw new RangeError(`boundary ${boundary} lies outside the film of ${frames} frames`);
      return micros(time);
    },
    frameAt: (time) => frameAt(micro, frames, time),
  };
}

/** ticks × 1e6 / ticksPerSecond, rounded to whole microseconds without losing digits in long films. */
function exactMicros(tick: number, ticksPerSecond: number): number {
  const seconds = Math.floor(tick / ticksPerSecond);
  return seconds * 1_000_000 + Math.round(((tick - seconds * ticksPerSecond) * 1_000_000) / ticksPerSecond);
}

function frameAt(micro: Float64Array, frames: number, time: number): number {
  let low = 0;
  let high = frames - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((micro[middle] as number) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}
