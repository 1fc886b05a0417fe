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

interface Growing {
  readonly text: number[];
  readonly time: number[];
  readonly cycle: number[];
  readonly from: number[];
  readonly to: number[];
}

type Stretch = { readonly from: number; readonly to: number; readonly duration: number };

export function tokenRow(reading: MethodReading, row: SequenceRow, by: TokenBy): TokenRow {
  const letters = lettersOf(row, by);
  const made: Growing = { text: [], time: [], cycle: [], from: [], to: [] };
  for (const cycle of reading.cycles) {
    const stretches = row === 'both' ? segmentsOf(cycle) : cycle[row];
    for (const stretch of stretches) append(made, letters.letterOf(stretch), cycle.position, stretch);
    append(made, 0, cycle.position, { from: cycle.to, to: cycle.to, duration: 0 });
  }
  return {
    row,
    text: Int32Array.from(made.text),
    letters: letters.count(),
    before: sumsBefore(made),
    cycle: Int32Array.from(made.cycle),
    from: Float64Array.from(made.from),
    to: Float64Array.from(made.to),
    stepOf: letters.stepOf,
  };
}

function append(made: Growing, letter: number, cycle: number, { from, to, duration }: Stretch): void {
  made.text.push(letter);
  made.time.push(letter === 0 ? 0 : duration);
  made.cycle.push(cycle);
  made.from.push(from);
  made.to.push(to);
}

function sumsBefore({ time }: Growing): Float64Array {
  const before = new Float64Array(time.length + 1);
  for (let at = 0; at < time.length; at += 1) before[at + 1] = (before[at] as number) + (time[at] as number);
  return before;
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
  return {
    letterOf: (stretch) => {
      const both = 'left' in stretch;
      const left = both ? table.idOf(stretch.left) : row === 'left' ? table.idOf(stretch) : -1;
      const right = both ? table.idOf(stretch.right) : row === 'right' ? table.idOf(stretch) : -1;
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
