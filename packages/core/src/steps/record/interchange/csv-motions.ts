import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Finding, type FindingCode, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { fundamentalMotions, type MotionKind, parseMotionKind } from '../../../ground/tables/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import { type CsvLine, unguardText } from './csv-cells.ts';
import type { CsvColumn, MotionTable } from './csv-columns.ts';

/** One motion as a line of the table says it. */
export interface CsvMotion {
  readonly line: number;
  readonly hand: Hand;
  readonly kind: MotionKind;
  readonly start: Micros;
  readonly end: Micros;
  readonly object: string | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly cycle: number | undefined;
}

const longestText = 200;
const mostCycles = 1_000_000;

/** Reads every line; the faults of all lines together, in the order of the text. */
export function readMotions(table: MotionTable): { motions: CsvMotion[]; faults: Finding[] } {
  const motions: CsvMotion[] = [];
  const faults: Finding[] = [...decimalMarkFaults(table)];
  for (const line of table.lines) {
    const reader = lineReader(table, line);
    const motion = readMotion(reader, line.line);
    faults.push(...reader.faults);
    if (motion !== undefined) motions.push(motion);
  }
  return { motions, faults };
}

interface LineReader {
  readonly cell: (column: CsvColumn) => string;
  readonly complain: (
    column: CsvColumn,
    code: FindingCode,
    words: Record<string, string | number>,
  ) => undefined;
  readonly faults: Finding[];
}

function lineReader({ cellOf }: MotionTable, { line, cells }: CsvLine): LineReader {
  const faults: Finding[] = [];
  return {
    faults,
    cell: (column) => cells[cellOf[column]] ?? '',
    complain: (column, code, words) => {
      faults.push(finding(code, { line, column: cellOf[column] + 1 }, words));
      return undefined;
    },
  };
}

function readMotion(reader: LineReader, line: number): CsvMotion | undefined {
  const hand = readHand(reader);
  const kind = readKind(reader);
  const times = readTimes(reader);
  const cycle = readCycle(reader);
  const object = readText(reader, 'object');
  const from = readText(reader, 'from');
  const to = readText(reader, 'to');
  if (hand === undefined || kind === undefined || times === undefined || reader.faults.length > 0)
    return undefined;
  return { line, hand, kind, ...times, object, from, to, cycle };
}

const bothWords = [
  'both',
  'both hands',
  'two',
  'left+right',
  'left and right',
  'left/right',
  'l+r',
  'l/r',
  'lr',
];
const unsaidWords = ['', '-', '–', '?', 'unspecified', 'unknown', 'none', 'either', 'any', 'n/a'];

function readHand({ cell, complain }: LineReader): Hand | undefined {
  const found = cell('hand');
  const word = found.trim().toLowerCase();
  if (word === 'left' || word === 'right') return word;
  if (bothWords.includes(word)) return complain('hand', 'csv/hand-both', { found });
  return complain('hand', unsaidWords.includes(word) ? 'csv/hand-unsaid' : 'csv/hand', { found });
}

function readKind({ cell, complain }: LineReader): MotionKind | undefined {
  const found = cell('motion');
  const codes = fundamentalMotions.map((facts) => facts.code).join(' ');
  return parseMotionKind(found) ?? complain('motion', 'csv/motion', { found, codes });
}

function readTimes(reader: LineReader): { start: Micros; end: Micros } | undefined {
  const start = readSeconds(reader, 'start_s');
  const end = readSeconds(reader, 'end_s');
  if (start === undefined || end === undefined) return undefined;
  if (end > start) return { start, end };
  const same = end === start && reader.cell('start_s') !== reader.cell('end_s');
  return same
    ? reader.complain('end_s', 'csv/too-fine', {})
    : reader.complain('end_s', 'csv/order', { start: exactSeconds(start), end: exactSeconds(end) });
}

/** Seconds digit by digit, so that no decimal is lost; what lies beyond the microsecond is rounded. */
function readSeconds({ cell, complain }: LineReader, column: 'start_s' | 'end_s'): Micros | undefined {
  const found = cell(column);
  const match = /^(\d*)(?:[.,](\d*))?$/.exec(found.trim());
  const whole = match?.[1] ?? '';
  const rest = match?.[2] ?? '';
  if (match === null || whole + rest === '') return complain(column, 'csv/number', { found });
  const six = Number(rest.slice(0, 6).padEnd(6, '0')) + (Number(rest[6] ?? 0) >= 5 ? 1 : 0);
  const time = Number(whole) * 1_000_000 + six;
  return Number.isSafeInteger(time) ? micros(time) : complain(column, 'csv/number', { found });
}

function readCycle({ cell, complain }: LineReader): number | undefined {
  const found = cell('cycle').trim();
  if (found === '') return undefined;
  // Spreadsheets like to write 1 as 1.0 or 1,0.
  const number = Number(found.replace(/[.,]0+$/, ''));
  return /^\d+(?:[.,]0+)?$/.test(found) && number >= 1 && number <= mostCycles
    ? number
    : complain('cycle', 'csv/cycle', { found });
}

function readText({ cell, complain }: LineReader, column: 'object' | 'from' | 'to'): string | undefined {
  const text = unguardText(cell(column));
  if (text.length > longestText) {
    return complain(column, 'csv/too-long', { column, found: text.length, most: longestText });
  }
  return text === '' ? undefined : text;
}

/** A file that writes 1.5 and 1,5 may mean a thousand by one of the two: not to be guessed. */
function decimalMarkFaults({ lines, cellOf }: MotionTable): Finding[] {
  let first: { mark: string; text: string; line: number } | undefined;
  for (const { line, cells } of lines) {
    for (const column of ['start_s', 'end_s'] as const) {
      const text = cells[cellOf[column]]?.trim() ?? '';
      const mark = /^\d*([.,])\d*$/.exec(text)?.[1];
      if (mark === undefined) continue;
      first ??= { mark, text, line };
      if (mark === first.mark) continue;
      const words = { found: text, other: first.text, line: first.line };
      return [finding('csv/decimal-mark', { line, column: cellOf[column] + 1 }, words)];
    }
  }
  return [];
}
