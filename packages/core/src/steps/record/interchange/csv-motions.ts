import type { Micros } from '../../../ground/base/index.ts';
import { type Finding, type FindingCode, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands, type Motion } from '../../../ground/study/index.ts';
import { fundamentalMotions, type MotionKind, parseMotionKind } from '../../../ground/tables/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import { type CsvLine, unguardText } from './csv-cells.ts';
import type { CsvColumn } from './csv-columns.ts';
import type { Labelled, LabelReader } from './csv-labels.ts';
import { longestText } from './csv-mapping.ts';
import { cycleOf, secondsOf } from './csv-numbers.ts';
import type { CsvOptions } from './csv-options.ts';

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
  readonly note: string | undefined;
  readonly cycle: number | undefined;
  /** Left out: the word of whoever wrote the table. */
  readonly said?: Motion['said'] | undefined;
  readonly confidence?: number | undefined;
}

/** How the cells of a table are read. */
export interface LineWays {
  readonly cellOf: Readonly<Record<CsvColumn, number>>;
  readonly options: CsvOptions;
  /** Where the motions are labels; left out, they are fundamental motions. */
  readonly labels: LabelReader | undefined;
  /** Lines whose hand was not read from the line itself. */
  readonly both: number[];
  readonly unsaid: number[];
}

interface LineReader extends LineWays {
  readonly line: number;
  readonly cell: (column: CsvColumn) => string;
  readonly complain: (
    column: CsvColumn,
    code: FindingCode,
    words: Record<string, string | number>,
  ) => undefined;
  readonly faults: Finding[];
}

/** The motions of one line: one, or two where a line is for both hands. None where there are faults. */
export function motionsOfLine(
  ways: LineWays,
  { line, cells }: CsvLine,
): { motions: CsvMotion[]; faults: readonly Finding[] } {
  const { cellOf } = ways;
  const faults: Finding[] = [];
  const reader: LineReader = {
    ...ways,
    line,
    faults,
    cell: (column) => cells[cellOf[column]] ?? '',
    complain: (column, code, words) => {
      faults.push(finding(code, { line, column: cellOf[column] + 1 }, words));
      return undefined;
    },
  };
  return { motions: readMotions(reader), faults };
}

function readMotions(reader: LineReader): CsvMotion[] {
  const lineHands = readHands(reader);
  const said = readKind(reader);
  const times = readTimes(reader);
  const cycle = readCycle(reader);
  const object = readText(reader, 'object') ?? said?.object;
  const from = readText(reader, 'from') ?? said?.from;
  const to = readText(reader, 'to') ?? said?.to;
  if (lineHands === undefined || said === undefined || times === undefined || reader.faults.length > 0) {
    return [];
  }
  const { kind, note } = said;
  return lineHands.map((hand) => ({
    line: reader.line,
    hand,
    kind,
    ...times,
    object,
    from,
    to,
    note,
    cycle,
    ...readSaid(reader),
  }));
}

/** Whatever is not told to be proposed or confirmed is the word of whoever wrote the table. */
function readSaid({ cell }: LineReader): Pick<CsvMotion, 'said' | 'confidence'> {
  const word = cell('said').trim().toLowerCase();
  const said = word === 'proposed' || word === 'confirmed' ? word : 'marked';
  const found = cell('confidence').trim();
  const confidence = found === '' ? Number.NaN : Number(found.replace(',', '.'));
  return { said, confidence: confidence >= 0 && confidence <= 1 ? confidence : undefined };
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

function readHands({ cell, complain, options, line, both, unsaid }: LineReader): readonly Hand[] | undefined {
  const found = cell('hand');
  const word = found.trim().toLowerCase();
  if (word === 'left' || word === 'right') return [word];
  if (bothWords.includes(word)) {
    if (options.both === undefined) return complain('hand', 'csv/hand-both', { found });
    both.push(line);
    return hands;
  }
  if (!unsaidWords.includes(word)) return complain('hand', 'csv/hand', { found });
  if (options.hand === undefined) return complain('hand', 'csv/hand-unsaid', { found });
  unsaid.push(line);
  return [options.hand];
}

function readKind({ cell, complain, labels, line, cellOf }: LineReader): Labelled | undefined {
  const found = cell('motion');
  if (labels !== undefined) {
    const label = unguardText(found);
    return label.length > longestText
      ? complain('motion', 'csv/too-long', { column: 'label', found: label.length, most: longestText })
      : labels.read(label, { line, column: cellOf.motion + 1 });
  }
  const codes = fundamentalMotions.map((facts) => facts.code).join(' ');
  const kind = parseMotionKind(found);
  return kind === undefined ? complain('motion', 'csv/motion', { found, codes }) : { kind };
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

function readSeconds({ cell, complain }: LineReader, column: 'start_s' | 'end_s'): Micros | undefined {
  const found = cell(column);
  return secondsOf(found) ?? complain(column, 'csv/number', { found });
}

function readCycle({ cell, complain }: LineReader): number | undefined {
  const found = cell('cycle').trim();
  return found === '' ? undefined : (cycleOf(found) ?? complain('cycle', 'csv/cycle', { found }));
}

function readText({ cell, complain }: LineReader, column: 'object' | 'from' | 'to'): string | undefined {
  const text = unguardText(cell(column));
  if (text.length > longestText) {
    return complain(column, 'csv/too-long', { column, found: text.length, most: longestText });
  }
  return text === '' ? undefined : text;
}
