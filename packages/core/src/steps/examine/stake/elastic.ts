import type { MotionKind } from '../../../ground/tables/index.ts';
import type { Piece, Segment } from '../reading/index.ts';
import type { Effect } from './effect.ts';

type Effects = ReadonlyMap<Piece, Effect>;

/** Motions that last only as long as something else does: a hold while the other hand works, a wait for it. */
const elasticKinds: ReadonlySet<MotionKind> = new Set(['H', 'UD']);

/** The motion gives way when what it waits for comes sooner. One that a lead changes has a length of its own. */
export function isElastic(piece: Piece, effects: Effects): boolean {
  return elasticKinds.has(piece.kind) && !effects.has(piece);
}

/**
 * Both hands only hold or wait: a machine or a process sets the time, and it stays, unless the lead takes both away.
 */
export function isProcess({ left, right }: Segment, effects: Effects): boolean {
  const still = elasticKinds.has(left.kind) && elasticKinds.has(right.kind);
  return still && !(effects.has(left) && effects.has(right));
}

/** The share of its time that a motion keeps, 0 to 1. */
export function keptShare(piece: Piece, effects: Effects, bound: 'least' | 'most'): number {
  const effect = effects.get(piece);
  if (effect === undefined || piece.duration === 0) return 1;
  return effect[bound] / piece.duration;
}
