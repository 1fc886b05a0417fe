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

/** The motion stays as it is; the lead is worth what sharing the work as recorded is worth. */
export function unchanged(piece: Piece): Effect {
  return { piece, least: piece.duration, most: piece.duration };
}

/** The effects in one cycle by the positions of the motions in their hand; a table, because it is asked for every segment. */
export interface EffectTable {
  readonly left: readonly (Effect | undefined)[];
  readonly right: readonly (Effect | undefined)[];
}

type Rows = { readonly left: readonly Piece[]; readonly right: readonly Piece[] };

/** Several effects on the same motion count once: what is left is the least that any of them leaves. */
export function effectTable(cycle: Rows, effects: readonly Effect[]): EffectTable {
  const table = { left: emptyRow(cycle.left.length), right: emptyRow(cycle.right.length) };
  for (const effect of effects) enter(table, effect);
  return table;
}

function emptyRow(length: number): (Effect | undefined)[] {
  return new Array<Effect | undefined>(length).fill(undefined);
}

type OpenTable = { readonly left: (Effect | undefined)[]; readonly right: (Effect | undefined)[] };

function enter(table: OpenTable, effect: Effect): void {
  const row = table[effect.piece.hand];
  // Filled up one by one: a row with a hole at its end would be slow.
  while (row.length <= effect.piece.position) row.push(undefined);
  const known = row[effect.piece.position];
  row[effect.piece.position] = known === undefined ? effect : merged(known, effect);
}

/** One table for all cycles: thousands of short-lived ones would cost more than the sums. */
const lent: OpenTable = { left: [], right: [] };

/** Lends a table with the effects in it for as long as `use` runs; it is empty again afterwards. */
export function withEffects<T>(effects: readonly Effect[], use: (table: EffectTable) => T): T {
  for (const effect of effects) enter(lent, effect);
  try {
    return use(lent);
  } finally {
    for (const { piece } of effects) lent[piece.hand][piece.position] = undefined;
  }
}

function merged(a: Effect, b: Effect): Effect {
  return { piece: a.piece, least: Math.min(a.least, b.least), most: Math.min(a.most, b.most) };
}

export function effectOn(effects: EffectTable, piece: Piece): Effect | undefined {
  return effects[piece.hand][piece.position];
}
