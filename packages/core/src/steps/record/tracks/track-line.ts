import { type Finding, type FindingCode, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { CsvLine } from '../interchange/csv-cells.ts';
import type { TrackColumn } from './track-columns.ts';

/** Above this a number in the column of frames is a time or a slip: five hours at 1000 frames a second. */
export const mostFrames = 18_000_000;

/** What one line of the table says; NaN stands for what it leaves empty. */
export interface TrackLine {
  readonly line: number;
  readonly frame: number;
  readonly hand: Hand;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly opening: number;
  readonly presence: number;
}

export type CellOf = Readonly<Record<TrackColumn, number>>;

/** Reads one line, or says what is wrong with it. */
export function readTrackLine(line: CsvLine, cellOf: CellOf): TrackLine | Finding[] {
  const faults: Finding[] = [];
  const fault = (code: FindingCode, column: TrackColumn, words = {}) => {
    faults.push(finding(code, { line: line.line, column: cellOf[column] + 1 }, words));
  };
  const text = (column: TrackColumn) => line.cells[cellOf[column]]?.trim() ?? '';
  const number = (column: TrackColumn) => {
    const value = numberOf(text(column));
    if (value === undefined) fault('track/number', column, { found: text(column), column });
    else if (Math.abs(value) === Number.POSITIVE_INFINITY)
      fault('track/too-large', column, { found: text(column), column });
    return value ?? Number.NaN;
  };
  const frame = frameOf(text('frame'));
  if (frame === undefined) fault('track/frame', 'frame', { found: text('frame') });
  else if (frame >= mostFrames) fault('track/too-many-frames', 'frame', { frame, most: mostFrames - 1 });
  const hand = handOf(text('hand'));
  if (hand === undefined) fault('csv/hand', 'hand', { found: text('hand') });
  const [x, y, z, opening, presence] = [
    number('x'),
    number('y'),
    number('z'),
    number('opening'),
    number('presence'),
  ] as const;
  if (faults.length === 0 && Number.isNaN(x) !== Number.isNaN(y))
    fault('track/half-point', Number.isNaN(x) ? 'x' : 'y');
  if (opening < 0) fault('track/opening', 'opening', { found: text('opening') });
  if (presence < 0 || presence > 1) fault('track/presence', 'presence', { found: text('presence') });
  if (faults.length > 0 || frame === undefined || hand === undefined) return faults;
  return { line: line.line, frame, hand, x, y, z, opening, presence };
}

/** A whole number of 0 or more; spreadsheets like to write 12 as 12.0 or 12,0. */
function frameOf(text: string): number | undefined {
  return /^\d+(?:[.,]0*)?$/.test(text) ? Number.parseInt(text, 10) : undefined;
}

function handOf(text: string): Hand | undefined {
  const word = text.toLowerCase();
  return word === 'left' || word === 'right' ? word : undefined;
}

/**
 * NaN for an empty cell and for the words with which programs say that there is none; infinite for what is too large to keep;
 * nothing for what is no number.
 */
function numberOf(text: string): number | undefined {
  if (text === '' || /^(?:nan|na|null)$/i.test(text)) return Number.NaN;
  if (!/^[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/.test(text)) return undefined;
  return Math.fround(Number(text.replace(',', '.').replace('−', '-')));
}
