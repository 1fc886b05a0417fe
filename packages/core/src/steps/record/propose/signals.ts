import type { Hand } from '../../../ground/study/index.ts';
import type { HandTrack, Track } from '../tracks/track.ts';

/**
 * What the two hands do, on a grid of equal times: for each hand where it is, how it moves, how fast, and how far it is
 * open. All of it is without unit: positions as a share of the room the hands take, speeds as a share of a brisk one.
 */
export interface Signals {
  /** Grid points. */
  readonly count: number;
  /** Seconds between two grid points. */
  readonly step: number;
  /** Time of the first grid point, in seconds. */
  readonly from: number;
  readonly left: HandSignals;
  readonly right: HandSignals;
}

/** `channels` numbers for each grid point; NaN where the hand is not seen. */
export interface HandSignals {
  readonly data: Float32Array;
  /** Whether the track says anywhere how far this hand is open. */
  readonly opens: boolean;
  /** Share of the grid points at which the hand is seen. */
  readonly seen: number;
}

/** x, y, z, their rates, the logarithm of the speed, opening, rate of opening. */
export const channels = 9;
export const channel = { x: 0, y: 1, z: 2, vx: 3, vy: 4, vz: 5, speed: 6, open: 7, opens: 8 } as const;

/** Gaps up to this long are bridged by a straight line, in seconds. */
const bridged = 0.35;
/** Spread of the smoothing of positions and of speeds, in seconds. */
const smoothing = 0.06;

/**
 * @param seconds time of each frame, growing
 * @param step seconds between two points of the grid
 */
export function signalsOf(track: Track, seconds: ArrayLike<number>, step: number): Signals {
  const frames = Math.min(track.frames, seconds.length);
  const from = seconds[0] ?? 0;
  const count = Math.max(1, Math.floor(((seconds[frames - 1] ?? 0) - from) / step) + 1);
  const grid = { count, step, from };
  const raw = {
    left: track.left === undefined ? undefined : sampled(track.left, seconds, frames, grid),
    right: track.right === undefined ? undefined : sampled(track.right, seconds, frames, grid),
  };
  const both = [raw.left, raw.right].filter((hand) => hand !== undefined);
  const room = Math.max(1e-6, ...both.flatMap(({ x, y, z }) => [extent(x), extent(y), extent(z)]));
  const moved = {
    left: raw.left === undefined ? undefined : movement(raw.left, step, room),
    right: raw.right === undefined ? undefined : movement(raw.right, step, room),
  };
  const speeds = [moved.left, moved.right].flatMap((hand) => (hand === undefined ? [] : [...hand.speed]));
  const brisk = Math.max(1e-6, quantile(speeds.filter(Number.isFinite), 0.9));
  return { ...grid, left: joined(moved.left, grid, brisk), right: joined(moved.right, grid, brisk) };
}

export function handSignals(signals: Signals, hand: Hand): HandSignals {
  return hand === 'left' ? signals.left : signals.right;
}

interface Raw {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly open: Float64Array;
}

interface Grid {
  readonly count: number;
  readonly step: number;
  readonly from: number;
}

function sampled(hand: HandTrack, seconds: ArrayLike<number>, frames: number, grid: Grid): Raw {
  const at = (values: ArrayLike<number> | undefined) =>
    values === undefined
      ? new Float64Array(grid.count).fill(Number.NaN)
      : smooth(onGrid(withoutSpikes(values, frames), seconds, frames, grid), smoothing / grid.step);
  return { x: at(hand.x), y: at(hand.y), z: at(hand.z), open: at(hand.opening) };
}

/** The median of each value and its four neighbours, of those that are there. */
function withoutSpikes(values: ArrayLike<number>, frames: number): Float64Array {
  const kept = new Float64Array(frames).fill(Number.NaN);
  for (let frame = 0; frame < frames; frame += 1) {
    if (!Number.isFinite(values[frame] ?? Number.NaN)) continue;
    const near: number[] = [];
    for (let other = Math.max(0, frame - 2); other <= Math.min(frames - 1, frame + 2); other += 1)
      if (Number.isFinite(values[other] ?? Number.NaN)) near.push(values[other] as number);
    near.sort((a, b) => a - b);
    kept[frame] = near[near.length >> 1] as number;
  }
  return kept;
}

function onGrid(values: Float64Array, seconds: ArrayLike<number>, frames: number, grid: Grid): Float64Array {
  const result = new Float64Array(grid.count).fill(Number.NaN);
  let before = -1;
  let after = -1;
  for (let point = 0; point < grid.count; point += 1) {
    const time = grid.from + point * grid.step;
    while (
      after < frames &&
      (after < 0 || (seconds[after] as number) < time || Number.isNaN(values[after]))
    ) {
      if (after >= 0 && !Number.isNaN(values[after])) before = after;
      after += 1;
    }
    if (after >= frames) {
      const lag = before < 0 ? Number.POSITIVE_INFINITY : time - (seconds[before] as number);
      if (lag < grid.step) result[point] = values[before] as number;
      continue;
    }
    const [late, early] = [seconds[after] as number, before < 0 ? Number.NaN : (seconds[before] as number)];
    if (before < 0) result[point] = late - time < grid.step ? (values[after] as number) : Number.NaN;
    else if (late - early <= bridged || late - time < 1e-9) {
      const share = late === early ? 1 : (time - early) / (late - early);
      result[point] = (values[before] as number) * (1 - share) + (values[after] as number) * share;
    }
  }
  return result;
}

/** Gaussian means of what is there; missing stays missing. */
function smooth(values: Float64Array, spread: number): Float64Array {
  const reach = Math.max(1, Math.ceil(spread * 2.5));
  const weights = Array.from({ length: reach + 1 }, (_, at) =>
    Math.exp((-at * at) / (2 * Math.max(spread, 0.3) ** 2)),
  );
  return values.map((value, point) => {
    if (Number.isNaN(value)) return value;
    let sum = 0;
    let weight = 0;
    for (let at = -reach; at <= reach; at += 1) {
      const near = values[point + at];
      if (near === undefined || Number.isNaN(near)) continue;
      const part = weights[Math.abs(at)] as number;
      sum += near * part;
      weight += part;
    }
    return sum / weight;
  });
}

interface Moved {
  readonly raw: Raw;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly vz: Float64Array;
  readonly speed: Float64Array;
  readonly turns: Float64Array;
  readonly centre: { readonly x: number; readonly y: number; readonly z: number };
  readonly room: number;
}

function movement(raw: Raw, step: number, room: number): Moved {
  const vx = rate(raw.x, step);
  const vy = rate(raw.y, step);
  const vz = rate(raw.z, step);
  const speed = vx.map((value, point) => {
    const depth = vz[point] as number;
    return Math.hypot(value, vy[point] as number, Number.isNaN(depth) ? 0 : depth);
  });
  const centre = { x: middle(raw.x), y: middle(raw.y), z: middle(raw.z) };
  return { raw, vx, vy, vz, speed, turns: rate(raw.open, step), centre, room };
}

function rate(values: Float64Array, step: number): Float64Array {
  return values.map((value, point) => {
    const before = values[point - 1] ?? Number.NaN;
    const after = values[point + 1] ?? Number.NaN;
    if (Number.isFinite(before) && Number.isFinite(after)) return (after - before) / (2 * step);
    if (Number.isFinite(after)) return (after - value) / step;
    return (value - before) / step;
  });
}

function joined(moved: Moved | undefined, { count }: Grid, brisk: number): HandSignals {
  const data = new Float32Array(count * channels).fill(Number.NaN);
  if (moved === undefined) return { data, opens: false, seen: 0 };
  const { raw, centre, room } = moved;
  const opens = extent(raw.open);
  const closed = opens > 1e-6;
  const shut = closed ? quantile([...raw.open].filter(Number.isFinite), 0.05) : 0;
  const turned = closed
    ? Math.max(1e-6, quantile([...moved.turns].filter(Number.isFinite).map(Math.abs), 0.9))
    : 1;
  let seen = 0;
  for (let point = 0; point < count; point += 1) {
    const at = point * channels;
    if (Number.isNaN(raw.x[point] as number) || Number.isNaN(raw.y[point] as number)) continue;
    seen += 1;
    data[at + channel.x] = ((raw.x[point] as number) - centre.x) / room;
    data[at + channel.y] = ((raw.y[point] as number) - centre.y) / room;
    data[at + channel.z] = ((raw.z[point] as number) - centre.z) / room;
    data[at + channel.vx] = (moved.vx[point] as number) / brisk;
    data[at + channel.vy] = (moved.vy[point] as number) / brisk;
    data[at + channel.vz] = (moved.vz[point] as number) / brisk;
    data[at + channel.speed] = Math.log(((moved.speed[point] as number) + 0.06 * brisk) / brisk);
    data[at + channel.open] = closed ? ((raw.open[point] as number) - shut) / opens : Number.NaN;
    data[at + channel.opens] = closed ? (moved.turns[point] as number) / turned : Number.NaN;
  }
  return { data, opens: closed, seen: seen / count };
}

function extent(values: Float64Array): number {
  const seen = [...values].filter(Number.isFinite);
  return seen.length === 0 ? 0 : quantile(seen, 0.97) - quantile(seen, 0.03);
}

function middle(values: Float64Array): number {
  return quantile([...values].filter(Number.isFinite), 0.5);
}

export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return Number.NaN;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number;
}
