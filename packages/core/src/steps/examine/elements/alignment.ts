import type { Hand } from '../../../ground/study/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import type { TokenTable } from '../sequences/index.ts';

/** The marked motions of one hand in one cycle, ready to be compared. */
export interface AlignRow {
  readonly pieces: readonly Piece[];
  /** Equal numbers: same kind and same object. */
  readonly tokens: Int32Array;
  /** Start of each motion in ten-thousandths of the cycle. */
  readonly starts: Int32Array;
}

export function alignRow(cycle: CycleReading, hand: Hand, table: TokenTable): AlignRow {
  const pieces = cycle[hand].filter(({ kind }) => kind !== 'unmarked');
  const share = (piece: Piece) => Math.round((piece.start / Math.max(1, cycle.duration)) * 10_000);
  return {
    pieces,
    tokens: Int32Array.from(pieces, table.idOf),
    starts: Int32Array.from(pieces, share),
  };
}

export function sameMotions(a: AlignRow, b: AlignRow): boolean {
  return a.tokens.length === b.tokens.length && a.tokens.every((token, index) => token === b.tokens[index]);
}

/** Which motion of one cycle answers to which of another. */
export interface Alignment {
  /** For each motion of the model the position of its counterpart in the other row, rising; −1 where it has none. */
  readonly counterpart: Int32Array;
  /** 2 for each motion without a counterpart, 1 for each pair of the same kind with another object. */
  readonly cost: number;
  /** No other alignment costs less. */
  readonly proven: boolean;
}

export const gapCost = 2;
export const otherObjectCost = 1;

/** Cells of the table that is filled for two cycles; beyond that only their neighbourhood in order is searched. */
const mostCells = 2_000_000;
/** Two cycles whose numbers of motions differ so much that even the narrowest band has more cells are not compared. */
const tooManyCells = 40_000_000;
const firstWidth = 8;

/**
 * Compares two rows by the alignment that costs least (Needleman and Wunsch 1970, from memory): motions of another kind
 * never answer to one another, and between alignments of equal cost the one whose pairs begin at the most similar part of
 * their cycles is taken. Searched in a band about the diagonal that is widened until nothing outside can cost less
 * (Ukkonen 1985, from memory).
 */
export function align(model: AlignRow, other: AlignRow): Alignment {
  const [n, m] = [model.tokens.length, other.tokens.length];
  if (sameMotions(model, other)) {
    return { counterpart: Int32Array.from(model.tokens.keys()), cost: 0, proven: true };
  }
  const cellsOf = (width: number) => n * Math.min(m + 1, Math.abs(m - n) + 2 * width + 1);
  if (cellsOf(firstWidth) > tooManyCells) {
    return { counterpart: new Int32Array(n).fill(-1), cost: gapCost * (n + m), proven: false };
  }
  for (let width = firstWidth; ; width *= 2) {
    const band = { low: Math.min(0, m - n) - width, high: Math.max(0, m - n) + width };
    const found = alignInBand(model, other, band);
    const outside = gapCost * (Math.abs(m - n) + 2 * (width + 1));
    const proven = found.cost < outside || width >= Math.max(n, m);
    if (proven || cellsOf(2 * width) > mostCells) return { ...found, proven };
  }
}

interface Band {
  readonly low: number;
  readonly high: number;
}

interface Table extends Band {
  /** Where the cells of each model motion begin in `steps`. */
  readonly offsets: Float64Array;
  /** How each cell is best reached: both go on, only the model does, only the other row does. */
  readonly steps: Uint8Array;
}

const pair = 0;
const modelOnly = 1;
const otherOnly = 2;

function alignInBand(model: AlignRow, other: AlignRow, band: Band): Omit<Alignment, 'proven'> {
  const [n, m] = [model.tokens.length, other.tokens.length];
  const table = tableFor(n, m, band);
  const unit = 10_000 * (Math.max(n, m) + 1);
  let above = new Float64Array(m + 1).fill(Number.POSITIVE_INFINITY);
  let here = new Float64Array(m + 1);
  for (let i = 0; i <= n; i += 1) {
    here.fill(Number.POSITIVE_INFINITY);
    fillRow({ model, other, table, unit, i, above, here });
    [above, here] = [here, above];
  }
  const cost = Math.floor((above[m] as number) / unit);
  return { counterpart: walkBack(table, n, m), cost };
}

function tableFor(n: number, m: number, band: Band): Table {
  const offsets = new Float64Array(n + 2);
  for (let i = 0; i <= n; i += 1) {
    const cells = Math.min(m, i + band.high) - Math.max(0, i + band.low) + 1;
    offsets[i + 1] = (offsets[i] as number) + Math.max(0, cells);
  }
  return { ...band, offsets, steps: new Uint8Array(offsets[n + 1] as number) };
}

interface RowWork {
  readonly model: AlignRow;
  readonly other: AlignRow;
  readonly table: Table;
  /** What one unit of cost weighs against the differences of the starts: more than all of these together. */
  readonly unit: number;
  readonly i: number;
  readonly above: Float64Array;
  readonly here: Float64Array;
}

function fillRow({ model, other, table, unit, i, above, here }: RowWork): void {
  const first = Math.max(0, i + table.low);
  const last = Math.min(other.tokens.length, i + table.high);
  const offset = (table.offsets[i] as number) - first;
  for (let j = first; j <= last; j += 1) {
    let best = i === 0 && j === 0 ? 0 : Number.POSITIVE_INFINITY;
    let step = pair;
    if (i > 0 && j > 0) best = (above[j - 1] as number) + pairCost(model, other, i - 1, j - 1, unit);
    const up = i > 0 ? (above[j] as number) + gapCost * unit : Number.POSITIVE_INFINITY;
    if (up < best) [best, step] = [up, modelOnly];
    const left = j > first ? (here[j - 1] as number) + gapCost * unit : Number.POSITIVE_INFINITY;
    if (left < best) [best, step] = [left, otherOnly];
    here[j] = best;
    table.steps[offset + j] = step;
  }
}

function pairCost(model: AlignRow, other: AlignRow, i: number, j: number, unit: number): number {
  const apart = Math.abs((model.starts[i] as number) - (other.starts[j] as number));
  if (model.tokens[i] === other.tokens[j]) return apart;
  return model.pieces[i]?.kind === other.pieces[j]?.kind
    ? otherObjectCost * unit + apart
    : Number.POSITIVE_INFINITY;
}

function walkBack(table: Table, n: number, m: number): Int32Array {
  const counterpart = new Int32Array(n).fill(-1);
  let [i, j] = [n, m];
  while (i > 0 || j > 0) {
    const step = table.steps[(table.offsets[i] as number) + j - Math.max(0, i + table.low)];
    if (step === pair) counterpart[i - 1] = j - 1;
    if (step !== otherOnly) i -= 1;
    if (step !== modelOnly) j -= 1;
  }
  return counterpart;
}
