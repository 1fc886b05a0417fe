import type { Piece, Segment } from '../reading/index.ts';
import { type EffectTable, effectOn } from './effect.ts';
import { isElastic, isProcess, keptShare } from './elastic.ts';

/** Where the hands stand in the shorter cycle, and when the last motion that ended in each of them did so. */
interface Progress {
  left: number;
  right: number;
  leftEnded: number;
  rightEnded: number;
}

/**
 * The length of a cycle when the effects come true at the worst and nothing is rearranged: every motion stays in its
 * hand and still begins only after all the motions, of either hand, that had ended before it began. Holds and waits last
 * as long as what they wait for. Without effects this is the recorded cycle.
 * @returns microseconds, not rounded
 */
export function keptOrderCycle(segments: readonly Segment[], effects: EffectTable): number {
  const at: Progress = { left: 0, right: 0, leftEnded: 0, rightEnded: 0 };
  for (const segment of segments) {
    begin(at, segment, effects);
    pass(at, segment, effects);
    if (segment.left.to === segment.to) at.leftEnded = at.left;
    if (segment.right.to === segment.to) at.rightEnded = at.right;
  }
  return Math.max(at.left, at.right);
}

function begin(at: Progress, { left, right, from }: Segment, effects: EffectTable): void {
  const { leftEnded, rightEnded } = at;
  if (left.from === from && !isGone(left, effects)) at.left = Math.max(at.left, rightEnded);
  if (right.from === from && !isGone(right, effects)) at.right = Math.max(at.right, leftEnded);
}

function isGone(piece: Piece, effects: EffectTable): boolean {
  return effectOn(effects, piece)?.most === 0;
}

function pass(at: Progress, segment: Segment, effects: EffectTable): void {
  const { left, right, duration } = segment;
  if (isProcess(segment, effects)) {
    at.left = Math.max(at.left, at.right) + duration;
    at.right = at.left;
    return;
  }
  const leftWaits = isElastic(left, effects);
  const rightWaits = isElastic(right, effects);
  if (!leftWaits) at.left += duration * keptShare(left, effects, 'most');
  if (!rightWaits) at.right += duration * keptShare(right, effects, 'most');
  if (leftWaits) at.left = Math.max(at.left, at.right);
  if (rightWaits) at.right = Math.max(at.right, at.left);
}

/**
 * The most that the effects can take out of the cycle as long as each hand keeps its own work: at every moment no more
 * than the hand that loses most.
 * @returns microseconds, not rounded
 */
export function mostTakenOut(segments: readonly Segment[], effects: EffectTable): number {
  let sum = 0;
  for (const segment of segments) {
    const left = keptShare(segment.left, effects, 'least');
    const right = keptShare(segment.right, effects, 'least');
    sum += segment.duration * (1 - Math.min(left, right));
  }
  return sum;
}
