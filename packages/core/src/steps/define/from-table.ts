import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { cycleWords } from '../examine/index.ts';
import { type CsvLine, csvTable } from '../record/index.ts';
import { smallest } from './inputs.ts';
import type { Reading } from './reading.ts';
import type { StudyElement } from './study-standard.ts';

export interface TableChoice {
  /** Columns that are no element, by the names in the first line. */
  readonly skip?: readonly string[] | undefined;
  /** What a reading of 0 is: left out, a fault; `aside`, set aside as too short for the watch. */
  readonly zeros?: 'aside' | undefined;
}

export interface TableReadings {
  /** In the order of the columns; all are work of the worker. */
  readonly elements: readonly StudyElement[];
  /** Numbers of the cycles in the order of the lines. */
  readonly cycles: readonly number[];
  readonly skipped: readonly string[];
  readonly notes: readonly Finding[];
}

/**
 * Readings from a table: the first column is the cycle (whole numbers from 1, each once), every other column an element
 * with the name in the first line. Commas, semicolons or tabs between the cells, a decimal point or a decimal comma, one
 * of them in the whole table. An empty cell is a missed reading; `12.5 (reason)` is one set aside with its reason. A column
 * `rating of NAME` rates each reading of the element NAME; an empty cell there gives none.
 * Everything wrong is told with line and column, not the first alone.
 */
export function readingsFromTable(
  text: string,
  { skip = [], zeros }: TableChoice = {},
): Result<TableReadings, readonly Finding[]> {
  const table = widestTable(text);
  const [head, ...lines] = table.lines;
  if (head === undefined || lines.length === 0) {
    return fail([
      finding('csv/empty', { line: head?.line ?? 1 }, { columns: 'cycle, then one for each element' }),
    ]);
  }
  const faults = [
    ...table.faults,
    ...headFaults(head, lines, skip),
    ...lines.flatMap((line) => widthFault(line, head)),
  ];
  if (faults.length > 0) return fail(faults);
  const columns = elementColumns(head, skip);
  if (columns.length === 0) return fail([finding('define/table-no-element', { line: head.line })]);
  const cycles = cycleNumbers(lines);
  const rated = columns.flatMap(({ ratings }) => (ratings === undefined ? [] : [{ at: ratings }]));
  const marks = decimalFaults(lines, [...columns, ...rated]);
  const read = columns.map((column) => readColumn(column, lines, zeros));
  const wrong = [...cycles.faults, ...marks, ...read.flatMap((item) => item.faults)];
  if (wrong.length > 0) return fail(inOrder(wrong));
  return ok({
    elements: read.map(({ element }) => element),
    cycles: cycles.numbers,
    skipped: skip,
    notes: [...cycleColumnNotes(head, cycles.numbers), ...read.flatMap(({ notes }) => notes)],
  });
}

/** Whole times under the name of an element would otherwise pass as cycles. */
function cycleColumnNotes({ line, cells }: CsvLine, numbers: readonly number[]): Finding[] {
  const column = cells[0]?.trim() ?? '';
  const counted = numbers.every((number, at) => at === 0 || number === (numbers[at - 1] ?? 0) + 1);
  return /^(cycle|cycles|cycle .*|no\.?|number|nr\.?|n|#|)$/i.test(column) || (counted && numbers.length > 1)
    ? []
    : [finding('define/table-cycle-column', { line, column: 1 }, { column })];
}

interface Column {
  readonly name: string;
  /** Position in the line, from 0. */
  readonly at: number;
  /** Position of the column that rates its readings. */
  readonly ratings: number | undefined;
}

/** The delimiter that finds the most columns in the first line; of several the comma. */
function widestTable(text: string) {
  return [',', ';', '\t']
    .map((delimiter) => csvTable(text, delimiter))
    .reduce((best, table) => (widthOf(table.lines[0]) > widthOf(best.lines[0]) ? table : best));
}

function widthOf(head: CsvLine | undefined): number {
  return head?.cells.length ?? 0;
}

const nameKey = (name: string) => name.trim().toLowerCase();

function elementColumns(head: CsvLine, skip: readonly string[]): Column[] {
  const skipped = new Set(skip.map(nameKey));
  const kept = head.cells
    .map((name, at) => ({ name: name.trim(), at }))
    .filter(({ name, at }) => at > 0 && name !== '' && !skipped.has(nameKey(name)));
  const ratings = new Map(
    kept.flatMap(({ name, at }) => {
      const rated = ratedIn(name);
      return rated === undefined ? [] : [[nameKey(rated), at]];
    }),
  );
  return kept
    .filter(({ name }) => ratedIn(name) === undefined)
    .map((column) => ({ ...column, ratings: ratings.get(nameKey(column.name)) }));
}

/** The element that a column rates; undefined where it is a column of times. */
function ratedIn(name: string): string | undefined {
  return /^rating of\s+(.+)$/i.exec(name.trim())?.[1];
}

function headFaults(head: CsvLine, lines: readonly CsvLine[], skip: readonly string[]): Finding[] {
  const names = head.cells.map(nameKey);
  const known = head.cells.slice(1).join(', ');
  const unknown = skip
    .filter((name) => !names.slice(1).includes(nameKey(name)))
    .map((column) => finding('define/table-skip', { line: head.line }, { column, known }));
  const wrong = names.flatMap((name, at) => {
    const where = { line: head.line, column: at + 1 };
    if (name === '') {
      const holds = at > 0 && lines.some(({ cells }) => (cells[at] ?? '') !== '');
      return holds ? [finding('define/table-unnamed', where)] : [];
    }
    if (names.indexOf(name) < at)
      return [finding('csv/duplicate-column', where, { column: head.cells[at] ?? '' })];
    return [];
  });
  return [...unknown, ...wrong, ...strayRatings(head, skip)];
}

/** Columns that rate an element which is not there. */
function strayRatings(head: CsvLine, skip: readonly string[]): Finding[] {
  const names = elementColumns(head, skip).map(({ name }) => nameKey(name));
  const skipped = skip.map(nameKey);
  return head.cells.flatMap((name, at) => {
    const element = at === 0 || skipped.includes(nameKey(name)) ? undefined : ratedIn(name);
    if (element === undefined || names.includes(nameKey(element))) return [];
    const where = { line: head.line, column: at + 1 };
    return [finding('define/table-rating-of', where, { column: name.trim(), element })];
  });
}

/** Spreadsheets pad lines with empty cells; anything more means that a comma was not quoted. Fewer cells are empty ones. */
function widthFault({ line, cells }: CsvLine, head: CsvLine): Finding[] {
  const expected = head.cells.length;
  return cells.slice(expected).some((cell) => cell !== '')
    ? [finding('csv/cells', { line }, { found: cells.length, expected })]
    : [];
}

function cycleNumbers(lines: readonly CsvLine[]): { numbers: number[]; faults: Finding[] } {
  const numbers: number[] = [];
  const faults: Finding[] = [];
  const seen = new Map<number, number>();
  for (const { line, cells } of lines) {
    const found = cells[0]?.trim() ?? '';
    const number = cycleNumber(found);
    const before = seen.get(number);
    if (number < 1) faults.push(finding('define/table-cycle', { line, column: 1 }, { found }));
    else if (before !== undefined)
      faults.push(finding('define/table-cycle-twice', { line, column: 1 }, { cycle: number, before }));
    seen.set(number, line);
    numbers.push(number);
  }
  return { numbers, faults };
}

/** 0 for what is no number of a cycle; spreadsheets like to write 1 as 1.0 or 1,0. */
function cycleNumber(text: string): number {
  const match = /^(\d{1,9})(?:[.,]0+)?$/.exec(text.trim());
  return match === null ? 0 : Number(match[1]);
}

/** A time, then perhaps the reason for which it is set aside. */
const cellForm = /^([+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(?:\((.*)\))?$/;

interface Cell {
  readonly time: number;
  readonly setAside: string | undefined;
}

function cellOf(text: string): Cell | undefined {
  const match = cellForm.exec(text.trim());
  if (match === null) return undefined;
  const time = Number((match[1] ?? '').replace('−', '-').replace(',', '.'));
  return { time, setAside: match[2]?.trim() };
}

/** A table that writes 1.5 in one cell and 1,5 in another may mean thousands by one of them, so it is not guessed. */
function decimalFaults(lines: readonly CsvLine[], columns: readonly Pick<Column, 'at'>[]): Finding[] {
  let first: { readonly mark: string; readonly line: number } | undefined;
  for (const { line, cells } of lines) {
    for (const { at } of columns) {
      const mark = /^[+\-−]?\d*([.,])/.exec(cells[at]?.trim() ?? '')?.[1];
      if (mark === undefined) continue;
      first ??= { mark, line };
      if (mark !== first.mark) {
        const words = { found: cells[at] ?? '', other: first.line };
        return [finding('define/table-decimals', { line, column: at + 1 }, words)];
      }
    }
  }
  return [];
}

interface ReadColumn {
  readonly element: StudyElement;
  readonly faults: readonly Finding[];
  readonly notes: readonly Finding[];
}

function readColumn(
  { name, at, ratings }: Column,
  lines: readonly CsvLine[],
  zeros: TableChoice['zeros'],
): ReadColumn {
  const filled = lines.filter(({ cells }) => (cells[at]?.trim() ?? '') !== '');
  const faults: Finding[] = [];
  const notes: Finding[] = [];
  const readings: Reading[] = [];
  if (filled.length > 0 && filled.every(({ cells }) => cellOf(cells[at] ?? '') === undefined)) {
    const where = { line: filled[0]?.line ?? 1, column: at + 1 };
    faults.push(finding('define/table-no-times', where, { column: name, found: filled[0]?.cells[at] ?? '' }));
  } else {
    for (const line of lines) {
      const read = readCell(name, at, line, zeros);
      if (read.fault !== undefined) faults.push(read.fault);
      if (read.note !== undefined) notes.push(read.note);
      const rating = ratings === undefined ? ok(undefined) : readRating(name, ratings, line);
      if (!rating.ok) faults.push(rating.error);
      readings.push(
        rating.ok && rating.value !== undefined ? { ...read.reading, rating: rating.value } : read.reading,
      );
    }
  }
  notes.push(...missedNote(name, readings));
  return { element: { name, work: 'worker', readings }, faults, notes };
}

/** A rating is judged by its scale later; here it must be a number above 0. */
function readRating(
  element: string,
  at: number,
  { line, cells }: CsvLine,
): Result<number | undefined, Finding> {
  const found = cells[at]?.trim() ?? '';
  if (found === '') return ok(undefined);
  const cell = cellOf(found);
  if (cell !== undefined && cell.setAside === undefined && cell.time > 0) return ok(cell.time);
  return fail(finding('define/table-rating', { line, column: at + 1 }, { element, found }));
}

interface ReadCell {
  readonly reading: Reading;
  readonly fault?: Finding;
  readonly note?: Finding;
}

function readCell(
  element: string,
  at: number,
  { line, cells }: CsvLine,
  zeros: TableChoice['zeros'],
): ReadCell {
  const cycle = cycleNumber(cells[0] ?? '');
  const found = cells[at]?.trim() ?? '';
  const missed: Reading = { cycle, time: undefined };
  if (found === '') return { reading: missed };
  const where = { line, column: at + 1 };
  const words = { element, cycle, found };
  const cell = cellOf(found);
  if (cell === undefined) return { reading: missed, fault: finding('define/table-not-number', where, words) };
  const { time, setAside } = cell;
  if (time < 0) return { reading: missed, fault: finding('define/reading-negative', where, words) };
  if (setAside === '') return { reading: missed, fault: finding('define/no-reason', where, words) };
  if (setAside !== undefined) return { reading: { cycle, time, setAside } };
  if (time >= smallest) return { reading: { cycle, time } };
  if (zeros === undefined) return { reading: missed, fault: finding('define/table-zero', where, words) };
  return {
    reading: { cycle, time: 0, setAside: 'too short for the watch: 0 was written' },
    note: finding('define/table-zero-aside', where, words),
  };
}

function missedNote(element: string, readings: readonly Reading[]): Finding[] {
  const missed = readings.filter(({ time }) => time === undefined).map(({ cycle }) => cycle);
  if (missed.length === 0) return [];
  const words = { element, missed: missed.length, count: readings.length, cycles: cycleWords(missed) };
  return [finding('define/table-missed', {}, words)];
}

function inOrder(faults: readonly Finding[]): Finding[] {
  return [...faults].sort(
    (a, b) => (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0),
  );
}
