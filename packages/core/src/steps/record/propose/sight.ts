import { type Hand, hands } from '../../../ground/study/index.ts';
import type { Track } from '../tracks/track.ts';

/** A cycle in which a hand is seen in less than this share of the frames says nothing of it. */
export const leastSight = 0.25;

/** Seconds to either side of a boundary within which a hand must be seen for its track to tell of it. */
const around = 0.3;

/**
 * The share of the frames about a moment in which a hand is seen, 0 to 1; where there is no frame, 0.
 * @param seconds time of each frame, growing
 */
export type Sight = (hand: Hand, at: number, reach?: number) => number;

export function sightOf(track: Track, seconds: ArrayLike<number>): Sight {
  const frames = Math.min(track.frames, seconds.length);
  const seen = Object.fromEntries(hands.map((hand) => [hand, runningSum(track, hand, frames)])) as Readonly<
    Record<Hand, Uint32Array>
  >;
  return (hand, at, reach = around) => {
    const from = firstFrom(seconds, frames, at - reach);
    const to = firstFrom(seconds, frames, at + reach);
    const sums = seen[hand];
    return to > from ? ((sums[to] as number) - (sums[from] as number)) / (to - from) : 0;
  };
}

/** How many of the frames before each one show the hand. */
function runningSum(track: Track, hand: Hand, frames: number): Uint32Array {
  const row = track[hand];
  const sums = new Uint32Array(frames + 1);
  for (let frame = 0; frame < frames; frame += 1) {
    const there = row !== undefined && Number.isFinite(row.x[frame]) && Number.isFinite(row.y[frame]);
    sums[frame + 1] = (sums[frame] as number) + (there ? 1 : 0);
  }
  return sums;
}

/** The first frame that is not before a time; the number of frames when all are. */
function firstFrom(seconds: ArrayLike<number>, frames: number, time: number): number {
  let [low, high] = [0, frames];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] as number) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Above what chance no boundary is called when its hand is hardly seen about it. Measured on generated records with gaps (seeds 41
 * to 43, 500 such boundaries): not seen at all, 21 to 27 % held of those called 43 to 53 %; seen in up to half of the frames, 31 to
 * 73 % of those called 55 to 73 %. In tracks of one hand alone 10 to 27 % held of the other hand’s.
 */
const most = { unseen: 0.3, half: 0.6 } as const;

/** The chance of a boundary, less where its hand is hardly seen. */
export function withinSight(chance: number, share: number): number {
  if (share >= 0.5) return chance;
  return Math.min(chance, share > 0 ? most.half : most.unseen);
}
