import type { Micros } from '../../../ground/base/index.ts';
import { localFit } from './local-fit.ts';
import type { HandTrack } from './track.ts';

/** Reach to either side over which a path is smoothed, in microseconds of real time. */
const reachUs = 130_000;
/** Frames to either side at least, for films of few frames a second. */
const leastReach = 2;

/** A hand’s path with the tracker’s noise smoothed out, and its speed; NaN where the hand is not seen. */
export interface HandMotion {
  /** As the track has them: pixels or millimetres. */
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** The same unit in a second of real time, 0 or more. */
  readonly speed: Float32Array;
}

/**
 * Smooths a path and takes its speed. Single jumps go first (median of three); then in each frame a polynomial of third
 * degree is laid through the places within 0.13 s by least squares, and its value and slope there are taken (A. Savitzky
 * and M. J. E. Golay, Analytical Chemistry 36:1627, 1964, in real time instead of equal steps); second degree where the
 * sight of the hand begins or ends, a line where only three or four places are there. Nothing is carried over a frame in
 * which the hand is not seen; a sight of fewer than three frames has no speed.
 * @param timeOf real time of a frame in microseconds
 */
export function handMotion(hand: HandTrack, timeOf: (frame: number) => Micros | number): HandMotion {
  const frames = hand.x.length;
  const nothing = () => new Float32Array(frames).fill(Number.NaN);
  const made = { x: nothing(), y: nothing(), speed: nothing() };
  const times = Float64Array.from({ length: frames }, (_, frame) => timeOf(frame));
  let start = 0;
  while (start < frames) {
    if (Number.isNaN(hand.x[start])) {
      start += 1;
      continue;
    }
    let end = start;
    while (end < frames && !Number.isNaN(hand.x[end])) end += 1;
    smoothRun(hand, times, start, end, made);
    start = end;
  }
  return made;
}

function smoothRun(hand: HandTrack, times: Float64Array, start: number, end: number, made: HandMotion): void {
  const xs = withoutJumps(hand.x.subarray(start, end));
  const ys = withoutJumps(hand.y.subarray(start, end));
  const run = times.subarray(start, end);
  for (let place = 0; place < run.length; place += 1) {
    const { from, to, whole } = windowAt(run, place);
    const degree = Math.min(whole ? 3 : 2, to - from >= 5 ? 3 : 1);
    const here = run[place] as number;
    const at: number[] = [];
    for (let index = from; index < to; index += 1) at.push(((run[index] as number) - here) / reachUs);
    const x = localFit(at, xs.slice(from, to), degree);
    const y = localFit(at, ys.slice(from, to), degree);
    made.x[start + place] = x?.value ?? (xs[place] as number);
    made.y[start + place] = y?.value ?? (ys[place] as number);
    if (run.length >= 3 && x !== undefined && y !== undefined)
      made.speed[start + place] = (Math.hypot(x.slope, y.slope) * 1e6) / reachUs;
  }
}

/** The places to either side that are smoothed over: those within reach, two at least, as far as the run goes. */
function windowAt(run: Float64Array, place: number) {
  const here = run[place] as number;
  let from = Math.max(0, place - leastReach);
  let to = Math.min(run.length, place + leastReach + 1);
  while (from > 0 && here - (run[from - 1] as number) <= reachUs) from -= 1;
  while (to < run.length && (run[to] as number) - here <= reachUs) to += 1;
  const within = from > 0 && to < run.length;
  const evenly = Math.abs(place - from - (to - 1 - place)) <= 1;
  return { from, to, whole: within || (evenly && to - from > 5) };
}

/** Each place but the first and the last becomes the middle one of itself and its neighbours. */
function withoutJumps(values: Float32Array): number[] {
  return Array.from(values, (value, index) => {
    const before = values[index - 1];
    const after = values[index + 1];
    if (before === undefined || after === undefined) return value;
    return Math.max(Math.min(before, value), Math.min(Math.max(before, value), after));
  });
}
