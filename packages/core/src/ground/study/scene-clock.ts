import { lastAtOrBefore, type Micros, roundMicros } from '../base/index.ts';
import { type FrameClock, frameClock } from './frame-times.ts';
import type { Clock, Film } from './schema.ts';

/** From the frames of a film to real time, through the scene clock. */
export interface SceneClock {
  readonly frames: number;
  /** Real time of a boundary in whole microseconds; grows with the boundary. */
  readonly realOf: (boundary: number) => Micros;
  /** The frame shown at a real time. */
  readonly frameAtReal: (real: number) => number;
  readonly film: FrameClock;
}

export function sceneClock(film: Pick<Film, 'frameTimes' | 'clock'>): SceneClock {
  const filmClock = frameClock(film.frameTimes);
  const real = realTimes(filmClock, film.clock);
  const realOf = (boundary: number): Micros => {
    const time = real(filmClock.timeOf(boundary));
    return roundMicros(time);
  };
  return {
    frames: filmClock.frames,
    realOf,
    frameAtReal: (time) => search(filmClock.frames, realOf, time),
    film: filmClock,
  };
}

function search(frames: number, realOf: (boundary: number) => Micros, time: number): number {
  let low = 0;
  let high = frames - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (realOf(middle) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

function realTimes(film: FrameClock, clock: Clock): (filmTime: Micros) => number {
  if (clock.kind === 'identity') return (time) => time;
  if (clock.kind === 'factor') return (time) => time * clock.realPerFilm;
  const points = clockPoints(film, clock);
  return (time) => {
    const before = lastAtOrBefore(points, time, (point) => point.film);
    const left = Math.min(Math.max(0, before), points.length - 2);
    const a = points[left] as ClockPoint;
    const b = points[left + 1] as ClockPoint;
    return a.real + ((time - a.film) * (b.real - a.real)) / (b.film - a.film);
  };
}

interface ClockPoint {
  readonly film: number;
  readonly real: number;
}

function clockPoints(film: FrameClock, clock: Extract<Clock, { kind: 'points' }>): readonly ClockPoint[] {
  return clock.points.map((point) => ({ film: film.timeOf(point.frame), real: point.realUs }));
}

/**
 * How far read clock points stray from one straight line through them all (least squares), in microseconds of real
 * time; one residual per point. With two points the line goes through both, so there is nothing to tell: undefined.
 * Large residuals mean a misread point, or a camera whose rate wandered.
 */
export function clockResiduals(film: Pick<Film, 'frameTimes' | 'clock'>): readonly Micros[] | undefined {
  if (film.clock.kind !== 'points' || film.clock.points.length < 3) return undefined;
  const points = clockPoints(frameClock(film.frameTimes), film.clock);
  const meanFilm = points.reduce((sum, point) => sum + point.film, 0) / points.length;
  const meanReal = points.reduce((sum, point) => sum + point.real, 0) / points.length;
  let across = 0;
  let square = 0;
  for (const point of points) {
    across += (point.film - meanFilm) * (point.real - meanReal);
    square += (point.film - meanFilm) ** 2;
  }
  const slope = across / square;
  return points.map((point) => roundMicros(point.real - meanReal - slope * (point.film - meanFilm)));
}

/** Why a clock cannot be used with a film, as the end of a sentence; undefined when it can. */
export function clockFault(film: Pick<Film, 'frameTimes' | 'clock'>, frames: number): string | undefined {
  if (film.clock.kind === 'identity') return undefined;
  const pointFault = film.clock.kind === 'points' ? clockPointFault(film.clock.points, frames) : undefined;
  return pointFault ?? realTimeFault(film);
}

function clockPointFault(
  points: readonly { readonly frame: number; readonly realUs: number }[],
  frames: number,
): string | undefined {
  for (const [index, point] of points.entries()) {
    if (point.frame > frames)
      return `point ${index + 1} lies at frame ${point.frame}, after the end of the film`;
    const before = points[index - 1];
    if (before !== undefined && point.frame <= before.frame)
      return `point ${index + 1} must lie at a later frame than point ${index}`;
    if (before !== undefined && point.realUs <= before.realUs)
      return `point ${index + 1} must show a later time than point ${index}`;
  }
  return undefined;
}

/** Every frame must keep a real time of its own: not before zero, after the one before, and writable. */
function realTimeFault(film: Pick<Film, 'frameTimes' | 'clock'>): string | undefined {
  const times = frameClock(film.frameTimes);
  const real = realTimes(times, film.clock);
  let before = -1;
  for (let boundary = 0; boundary <= times.frames; boundary += 1) {
    const raw = real(times.timeOf(boundary));
    if (Math.abs(raw) > Number.MAX_SAFE_INTEGER) return 'the film lasts longer than a time can be written';
    const time = roundMicros(raw);
    if (time < 0)
      return 'the first points say that the film begins before the clock’s zero; add the time of day or an earlier point';
    if (time <= before)
      return `frames ${boundary - 1} and ${boundary} fall on the same microsecond; real time cannot run that slowly`;
    before = time;
  }
  return undefined;
}
