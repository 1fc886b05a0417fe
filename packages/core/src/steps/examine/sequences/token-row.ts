import { micros } from '../../../ground/base/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { type MethodReading, type Piece, segmentsOf } from '../reading/index.ts';
import type { RunStep, SequenceRow } from './run.ts';
import { type TokenBy, tokenTable } from './token.ts';

/**
 * The motions of a row one after another as letters. Letter 0 separates: it stands after every cycle and wherever a hand
 * is not marked, so that no sequence runs over it.
 */
export interface TokenRow {
  readonly row: SequenceRow;
  readonly text: Int32Array;
  /** Letters run from 0 to `letters` − 1. */
  readonly letters: number;
  /** Time before each position, microseconds; one more entry than the text. Separators take none. */
  readonly before: Float64Array;
  readonly cycle: Int32Array;
  /** Boundaries of each position. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly stepOf: (letter: number) => RunStep;
}

type Stretch = Pick<Piece, 'from' | 'to' | 'duration'>;

/** Lists long enough for every motion and separator of a row; `length` of their entries are used. */
class Filling {
  readonly text: Int32Array;
  readonly cycle: Int32Array;
  readonly before: Float64Array;
  readonly from: Float64Array;
  readonly to: Float64Array;
  length = 0;

  constructor(most: number) {
    this.text = new Int32Array(most);
    this.cycle = new Int32Array(most);
    this.before = new Float64Array(most + 1);
    this.from = new Float64Array(most);
    this.to = new Float64Array(most);
  }

  add(letter: number, cycle: number, { from, to, duration }: Stretch): void {
    const at = this.length;
    this.text[at] = letter;
    this.cycle[at] = cycle;
    this.from[at] = from;
    this.to[at] = to;
    this.before[at + 1] = (this.before[at] as number) + (letter === 0 ? 0 : duration);
    this.length = at + 1;
  }
}

export function tokenRow(reading: MethodReading, row: SequenceRow, by: TokenBy): TokenRow {
  const letters = lettersOf(row, by);
  const rows = row === 'both' ? hands : [row];
  const sizes = reading.cycles.map((cycle) => rows.reduce((sum, hand) => sum + cycle[hand].length, 1));
  const made = new Filling(sizes.reduce((sum, size) => sum + size, 0));
  for (const cycle of reading.cycles) {
    const stretches = row === 'both' ? segmentsOf(cycle) : cycle[row];
    for (const stretch of stretches) made.add(letters.letterOf(stretch), cycle.position, stretch);
    made.add(0, cycle.position, { from: cycle.to, to: cycle.to, duration: micros(0) });
  }
  const { length } = made;
  return {
    row,
    text: made.text.slice(0, length),
    letters: letters.count(),
    before: made.before.slice(0, length + 1),
    cycle: made.cycle,
    from: made.from,
    to: made.to,
    stepOf: letters.stepOf,
  };
}

type Stretched = Piece | { readonly left: Piece; readonly right: Piece };

interface Letters {
  readonly letterOf: (stretch: Stretched) => number;
  readonly count: () => number;
  readonly stepOf: (letter: number) => RunStep;
}

function lettersOf(row: SequenceRow, by: TokenBy): Letters {
  const table = tokenTable(by);
  const pairs: (readonly [number, number])[] = [];
  const known = new Map<number, number>();
  const numberOf = (left: number, right: number) => {
    // One number for each pair as long as there are fewer than 2^25 different motions.
    const key = (left + 1) * 2 ** 26 + right + 1;
    const found = known.get(key);
    if (found !== undefined) return found;
    known.set(key, pairs.push([left, right]));
    return pairs.length;
  };
  const token = (id: number) => (id < 0 ? undefined : table.tokenOf(id));
  const last: { piece?: Piece; id: number }[] = [{ id: -1 }, { id: -1 }];
  /** A motion that goes on through several segments is looked up once. */
  const idOf = (piece: Piece, hand: 0 | 1) => {
    const before = last[hand];
    if (before?.piece === piece) return before.id;
    const id = table.idOf(piece);
    last[hand] = { piece, id };
    return id;
  };
  return {
    letterOf: (stretch) => {
      const both = 'left' in stretch;
      const left = both ? idOf(stretch.left, 0) : row === 'left' ? table.idOf(stretch) : -1;
      const right = both ? idOf(stretch.right, 1) : row === 'right' ? table.idOf(stretch) : -1;
      return (both ? left < 0 || right < 0 : left + right === -2) ? 0 : numberOf(left, right);
    },
    count: () => pairs.length + 1,
    stepOf: (letter) => {
      const pair = pairs[letter - 1];
      if (pair === undefined) throw new RangeError(`no motion has the letter ${letter}`);
      return { left: token(pair[0]), right: token(pair[1]) };
    },
  };
}
