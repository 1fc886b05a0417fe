import type { Piece, Segment } from '../reading/index.ts';
import { type EffectTable, effectOn } from './effect.ts';

/** Motions that last only as long as something else does: a hold while the other hand works, a wait for it. */
function follows({ kind }: Piece): boolean {
  return kind === 'H' || kind === 'UD';
}

/** The motion gives way when what it waits for comes sooner. One that a lead changes has a length of its own. */
export function isElastic(piece: Piece, effects: EffectTable): boolean {
  return follows(piece) && effectOn(effects, piece) === undefined;
}

/**
 * Both hands only hold or wait: a machine or a process sets the time, and it stays, unless the lead takes both away.
 */
export function isProcess({ left, right }: Segment, effects: EffectTable): boolean {
  if (!follows(left) || !follows(right)) return false;
  return effectOn(effects, left) === undefined || effectOn(effects, right) === undefined;
}

/** The share of its time that a motion keeps, 0 to 1. */
export function keptShare(piece: Piece, effects: EffectTable, bound: 'least' | 'most'): number {
  const effect = effectOn(effects, piece);
  if (effect === undefined || piece.duration === 0) return 1;
  return effect[bound] / piece.duration;
}
