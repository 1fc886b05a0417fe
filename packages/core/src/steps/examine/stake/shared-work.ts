import type { Piece, Segment } from '../reading/index.ts';
import { longestOfChains } from './chain.ts';
import type { CycleModel } from './cycle-model.ts';
import type { EffectTable } from './effect.ts';
import { isElastic, isProcess, keptShare } from './elastic.ts';

/**
 * A length below which no arrangement of the remaining work brings the cycle: neither half of the work of both hands
 * (with the time that only a process takes), nor the longest chain of motions that one particular thing must go through
 * one after another. Holds that stay count as long as the other hand works beside them.
 * @returns microseconds, not rounded
 */
export function sharedWorkBound(model: CycleModel, effects: EffectTable): number {
  return Math.max(longestOfChains(model.chains, effects), halfOfWork(model.segments, effects));
}

/**
 * The same when each hand keeps its own work: neither what remains in the busier hand, nor the longest chain.
 * @returns microseconds, not rounded
 */
export function keptWorkBound(model: CycleModel, effects: EffectTable): number {
  let [left, right] = [0, 0];
  for (const segment of model.segments) {
    const process = isProcess(segment, effects);
    left += segment.duration * (process ? 1 : ownShare(segment.left, effects));
    right += segment.duration * (process ? 1 : ownShare(segment.right, effects));
  }
  return Math.max(left, right, longestOfChains(model.chains, effects));
}

function ownShare(piece: Piece, effects: EffectTable): number {
  return isElastic(piece, effects) ? 0 : keptShare(piece, effects, 'least');
}

function halfOfWork(segments: readonly Segment[], effects: EffectTable): number {
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

function workShare(piece: Piece, other: Piece, effects: EffectTable): number {
  if (!isElastic(piece, effects)) return keptShare(piece, effects, 'least');
  return piece.kind === 'H' && !isElastic(other, effects) ? keptShare(other, effects, 'least') : 0;
}
