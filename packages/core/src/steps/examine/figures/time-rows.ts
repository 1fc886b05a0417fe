import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MethodReading, Piece } from '../reading/index.ts';
import { addTo, amount, emptyTally, type Measuring, portion, type Tally, type Whole } from './measure.ts';
import type { TimeRow } from './shape.ts';
import { inOrder } from './traces.ts';

export type RowHand = Hand | 'both';
export const rowHands: readonly RowHand[] = ['left', 'right', 'both'];

/** What a motion is counted under: one key for each piece of a hand in one cycle, in order. */
export type Keys<K> = (pieces: readonly Piece[]) => readonly K[];

interface Sums {
  readonly count: Tally;
  readonly time: Tally;
}

export type KeyedRow<K> = TimeRow & { readonly key: K };

/**
 * Times of the marked motions under each key: rows of the left hand, of the right, of both. Under `known` keys there is a
 * row in every case.
 */
export function timeRows<K>(
  measuring: Measuring,
  reading: MethodReading,
  wholes: Readonly<Record<RowHand, Whole>>,
  keys: Keys<K>,
  known: readonly K[] = [],
): KeyedRow<K>[] {
  const tables = tallied(reading, keys, known);
  return rowHands.flatMap((hand) =>
    [...tables[hand]].map(([key, { count, time }]) => ({
      key,
      hand,
      count: amount(measuring, count, 'count'),
      time: amount(measuring, time, 'time'),
      share: portion(measuring, time, wholes[hand]),
      traces: () => inOrder(piecesUnder(reading, hand, keys, key)),
    })),
  );
}

function tallied<K>(
  reading: MethodReading,
  keys: Keys<K>,
  known: readonly K[],
): Record<RowHand, Map<K, Sums>> {
  const table = () => new Map(known.map((key) => [key, emptySums()]));
  const tables = { left: table(), right: table(), both: table() };
  for (const cycle of reading.cycles) {
    for (const hand of hands) {
      const found = keys(cycle[hand]);
      cycle[hand].forEach((piece, index) => {
        if (piece.kind === 'unmarked') return;
        const key = found[index] as K;
        addPiece(tables[hand], key, piece);
        addPiece(tables.both, key, piece);
      });
    }
  }
  return tables;
}

function emptySums(): Sums {
  return { count: emptyTally(), time: emptyTally() };
}

function addPiece<K>(table: Map<K, Sums>, key: K, { cycle, duration, cut }: Piece): void {
  let sums = table.get(key);
  if (sums === undefined) {
    sums = emptySums();
    table.set(key, sums);
  }
  addTo(sums.time, cycle, duration);
  if (!cut) addTo(sums.count, cycle, 1);
}

function piecesUnder<K>(reading: MethodReading, hand: RowHand, keys: Keys<K>, key: K): Piece[] {
  return reading.cycles.flatMap((cycle) =>
    hands
      .filter((item) => hand === 'both' || hand === item)
      .flatMap((item) => {
        const found = keys(cycle[item]);
        return cycle[item].filter((piece, index) => piece.kind !== 'unmarked' && found[index] === key);
      }),
  );
}

/** Left, right, both; within a hand by falling time, then by the given order of the keys. */
export function byTime<K>(rows: readonly KeyedRow<K>[], order: (a: K, b: K) => number): KeyedRow<K>[] {
  const time = (row: KeyedRow<K>) => row.time.value ?? 0;
  return [...rows].sort(
    (a, b) => rowHands.indexOf(a.hand) - rowHands.indexOf(b.hand) || time(b) - time(a) || order(a.key, b.key),
  );
}
