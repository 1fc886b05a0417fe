import type { CycleReading, Piece, Segment } from '../reading/index.ts';
import type { Effect } from './effect.ts';
import { isElastic, isProcess, keptShare } from './elastic.ts';
import { individualsOf } from './individuals.ts';

type Effects = ReadonlyMap<Piece, Effect>;

/**
 * A length below which no arrangement of the remaining work brings the cycle: neither half of the work of both hands
 * (with the time that only a process takes), nor the longest chain of motions that one particular thing must go through
 * one after another. Holds that stay count as long as the other hand works beside them.
 * @returns microseconds, not rounded
 */
export function sharedWorkBound(cycle: CycleReading, segments: readonly Segment[], effects: Effects): number {
  return Math.max(chainBound(cycle, effects), halfOfWork(segments, effects));
}

/**
 * The same when each hand keeps its own work: neither what remains in the busier hand, nor the longest chain.
 * @returns microseconds, not rounded
 */
export function keptWorkBound(cycle: CycleReading, segments: readonly Segment[], effects: Effects): number {
  let [left, right] = [0, 0];
  for (const segment of segments) {
    const process = isProcess(segment, effects);
    const share = (piece: Piece) =>
      process ? 1 : isElastic(piece, effects) ? 0 : keptShare(piece, effects, 'least');
    left += segment.duration * share(segment.left);
    right += segment.duration * share(segment.right);
  }
  return Math.max(left, right, chainBound(cycle, effects));
}

function chainBound(cycle: CycleReading, effects: Effects): number {
  const chains = individualsOf(cycle).map((pieces) => longestChain(pieces, effects));
  return chains.reduce((longest, chain) => Math.max(longest, chain), 0);
}

function halfOfWork(segments: readonly Segment[], effects: Effects): number {
  let sum = 0;
  for (const segment of segments) {
    if (isProcess(segment, effects)) sum += 2 * segment.duration;
    else {
      sum += segment.duration * workShare(segment.left, segment.right, effects);
      sum += segment.duration * workShare(segment.right, segment.left, effects);
    }
  }
  return sum / 2;
}

function workShare(piece: Piece, other: Piece, effects: Effects): number {
  if (!isElastic(piece, effects)) return keptShare(piece, effects, 'least');
  return piece.kind === 'H' && !isElastic(other, effects) ? keptShare(other, effects, 'least') : 0;
}

/** The heaviest chain of motions of which each ended before the next began. */
function longestChain(pieces: readonly Piece[], effects: Effects): number {
  const starts = pieces.filter((piece) => !isElastic(piece, effects));
  const ends = starts.map((piece) => ({ piece, weight: 0 })).sort((a, b) => a.piece.to - b.piece.to);
  const entry = new Map(ends.map((item) => [item.piece, item]));
  let [next, before, longest] = [0, 0, 0];
  for (const piece of starts) {
    for (let item = ends[next]; item !== undefined && item.piece.to <= piece.from; item = ends[next]) {
      before = Math.max(before, item.weight);
      next += 1;
    }
    const weight = before + piece.duration * keptShare(piece, effects, 'least');
    const own = entry.get(piece);
    if (own !== undefined) own.weight = weight;
    longest = Math.max(longest, weight);
  }
  return longest;
}
