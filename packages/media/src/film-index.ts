/** One coded picture as the container lists it, in the order of decoding. Times in ticks, negative before the shown part. */
export interface PacketTimes {
  readonly tick: number;
  /** 0 when the container does not say. */
  readonly duration: number;
  readonly key: boolean;
  /** Decoded for the sake of others, never shown. */
  readonly hidden?: boolean;
}

/**
 * Frames that are decoded from one key frame on. A run owns the frames from its key frame's time up to the next key
 * frame's time; pictures that come after a key frame in the file but are shown before it (an open group of pictures)
 * belong to the run before, which alone can decode them.
 */
export interface Run {
  /** Position of the key frame in the order of decoding, from 0. */
  readonly order: number;
  /** Presentation time of the key frame, in ticks; may be negative. */
  readonly tick: number;
  /** First frame owned, and the one after the last. */
  readonly first: number;
  readonly end: number;
}

/** The frames of a track: which are shown, when, and what must be decoded to see them. */
export interface FrameTable {
  readonly ticks: readonly number[];
  readonly endTick: number;
  /** Position of each frame in the order of decoding. */
  readonly orders: readonly number[];
  readonly keyFrames: readonly number[];
  readonly runs: readonly Run[];
  /** Pictures in the file that are not frames of the film. */
  readonly left: {
    /** Before the shown part (edit list or negative time stamp). */
    readonly before: number;
    /** After the end of the shown part. */
    readonly after: number;
    /** Before the first key frame: nothing to decode them from. */
    readonly keyless: number;
    /** At a time at which there is a picture already. */
    readonly sameTime: number;
    /** Made only to decode others from. */
    readonly hidden: number;
  };
}

/**
 * Numbers the frames: sorted by presentation time, from the first that is shown.
 * @param packets in the order of decoding
 * @param shownEnd a frame that starts here or later is not shown (end of the edit list), in ticks
 */
export function frameTable(packets: readonly PacketTimes[], shownEnd = Number.POSITIVE_INFINITY): FrameTable {
  const keys = growingKeys(packets);
  const firstKeyTick = keys[0]?.tick ?? Number.POSITIVE_INFINITY;
  const left = { before: 0, after: 0, keyless: 0, sameTime: 0, hidden: 0 };
  const frames: Ordered[] = [];
  for (const [order, packet] of packets.entries()) {
    if (packet.hidden === true) left.hidden += 1;
    else if (packet.tick < 0) left.before += 1;
    else if (packet.tick < firstKeyTick) left.keyless += 1;
    else if (packet.tick >= shownEnd) left.after += 1;
    else frames.push({ ...packet, order });
  }
  frames.sort((a, b) => a.tick - b.tick || a.order - b.order);
  const single = frames.filter((frame, at) => frame.tick !== frames[at - 1]?.tick);
  left.sameTime = frames.length - single.length;
  const ticks = single.map((frame) => frame.tick);
  return {
    ticks,
    endTick: endOf(single),
    orders: single.map((frame) => frame.order),
    keyFrames: single.flatMap((frame, at) => (frame.key ? [at] : [])),
    runs: makeRuns(keys, ticks),
    left,
  };
}

interface Ordered extends PacketTimes {
  readonly order: number;
}

/** Key frames whose times grow with the order of decoding; one that goes back cannot be sought by time. */
function growingKeys(packets: readonly PacketTimes[]): readonly Ordered[] {
  const keys: Ordered[] = [];
  for (const [order, packet] of packets.entries()) {
    if (packet.key && packet.tick > (keys.at(-1)?.tick ?? Number.NEGATIVE_INFINITY))
      keys.push({ ...packet, order });
  }
  return keys;
}

function makeRuns(keys: readonly Ordered[], ticks: readonly number[]): Run[] {
  const runs: Run[] = [];
  let first = 0;
  for (const [at, key] of keys.entries()) {
    const nextTick = keys[at + 1]?.tick ?? Number.POSITIVE_INFINITY;
    let end = first;
    while (end < ticks.length && (ticks[end] as number) < nextTick) end += 1;
    if (end > first) runs.push({ order: key.order, tick: key.tick, first, end });
    first = end;
  }
  return runs;
}

/** The last frame lasts as long as the file says, or else as long as the middle one of all frames. */
function endOf(frames: readonly PacketTimes[]): number {
  const last = frames.at(-1);
  if (last === undefined) return 0;
  if (last.duration >= 1) return last.tick + Math.round(last.duration);
  const deltas = frames.slice(1).map((frame, at) => frame.tick - (frames[at]?.tick ?? 0));
  deltas.sort((a, b) => a - b);
  return last.tick + (deltas[deltas.length >> 1] ?? 1);
}

/** The run that owns a frame. @throws RangeError when the frame is not of the film */
export function runOf(runs: readonly Run[], frame: number): number {
  let low = 0;
  let high = runs.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((runs[middle] as Run).first <= frame) low = middle;
    else high = middle - 1;
  }
  const run = runs[low];
  if (run === undefined || frame < run.first || frame >= run.end) throw new RangeError(`no frame ${frame}`);
  return low;
}

/** Shortest and longest time between frames, in ticks; the last frame is left out, its length is often a guess. */
export function deltaRange(ticks: readonly number[]): {
  readonly shortest: number;
  readonly longest: number;
} {
  let shortest = Number.POSITIVE_INFINITY;
  let longest = 0;
  for (let at = 1; at < ticks.length; at += 1) {
    const delta = (ticks[at] as number) - (ticks[at - 1] as number);
    shortest = Math.min(shortest, delta);
    longest = Math.max(longest, delta);
  }
  return ticks.length < 2 ? { shortest: 0, longest: 0 } : { shortest, longest };
}

/**
 * Whether the rate varies. A constant rate that a time scale cannot divide evenly (33, 33, 34 ms) differs by one tick, or
 * by a millisecond when the film was once kept in whole milliseconds; that is not varied, nor is what stays within a
 * hundredth.
 */
export function isVariable(ticks: readonly number[], ticksPerSecond: number): boolean {
  const { shortest, longest } = deltaRange(ticks);
  return longest - shortest > Math.max(1, shortest / 100, ticksPerSecond / 1000);
}

/** Ticks in whole microseconds, rounded; the same rule as the document's frame times. */
export function tickMicros(tick: number, ticksPerSecond: number): number {
  const seconds = Math.floor(tick / ticksPerSecond);
  return seconds * 1_000_000 + Math.round(((tick - seconds * ticksPerSecond) * 1_000_000) / ticksPerSecond);
}
