import type { Piece } from '../reading/index.ts';
import { type EffectTable, effectOn } from './effect.ts';
import { isElastic, keptShare } from './elastic.ts';

/** The motions made with one particular thing, in order of time, and their chain as recorded. */
export interface Chain {
  readonly pieces: readonly Piece[];
  /** Microseconds. */
  readonly recorded: number;
}

const nothing: EffectTable = { left: [], right: [] };

export function chainsOf(individuals: readonly (readonly Piece[])[]): readonly Chain[] {
  return individuals.map((pieces) => ({ pieces, recorded: longestChain(pieces, nothing) }));
}

/** The longest of all chains when the effects come true; only those that they touch are worked out anew. @returns microseconds */
export function longestOfChains(chains: readonly Chain[], effects: EffectTable): number {
  let longest = 0;
  for (const { pieces, recorded } of chains) {
    const touched = pieces.some((piece) => effectOn(effects, piece) !== undefined);
    longest = Math.max(longest, touched ? longestChain(pieces, effects) : recorded);
  }
  return longest;
}

/** The heaviest chain of motions of which each ended before the next began. The pieces stand in order of their starts. */
function longestChain(pieces: readonly Piece[], effects: EffectTable): number {
  // Ends that a later start has passed, in order: with two hands at most one motion is still open behind them.
  const open: { readonly to: number; readonly weight: number }[] = [];
  let [before, longest] = [0, 0];
  for (const piece of pieces) {
    if (isElastic(piece, effects)) continue;
    for (let index = open.length - 1; index >= 0; index -= 1) {
      const item = open[index];
      if (item === undefined || item.to > piece.from) continue;
      before = Math.max(before, item.weight);
      open.splice(index, 1);
    }
    const weight = before + piece.duration * keptShare(piece, effects, 'least');
    open.push({ to: piece.to, weight });
    longest = Math.max(longest, weight);
  }
  return longest;
}
