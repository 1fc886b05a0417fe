import type { Piece } from '../reading/index.ts';

/** What would be left of a motion if a lead were followed: real time in microseconds, 0 ≤ least ≤ most ≤ its duration. */
export interface Effect {
  readonly piece: Piece;
  /** When all goes well. */
  readonly least: number;
  /** At the worst. */
  readonly most: number;
}

/** The motion is gone. */
export function gone(piece: Piece): Effect {
  return { piece, least: 0, most: 0 };
}

/** The motion takes between these times; what lies outside 0 … its present duration is brought back to it. */
export function shortened(piece: Piece, least: number, most: number): Effect {
  const within = (value: number) => Math.min(Math.max(value, 0), piece.duration);
  return { piece, least: within(Math.min(least, most)), most: within(Math.max(least, most)) };
}

/** Several effects on the same motion count once: what is left is the least that any of them leaves. */
export function effectMap(effects: readonly Effect[]): ReadonlyMap<Piece, Effect> {
  const map = new Map<Piece, Effect>();
  for (const effect of effects) {
    const known = map.get(effect.piece);
    map.set(
      effect.piece,
      known === undefined
        ? effect
        : {
            piece: effect.piece,
            least: Math.min(known.least, effect.least),
            most: Math.min(known.most, effect.most),
          },
    );
  }
  return map;
}
