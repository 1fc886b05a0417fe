import { type PastedReadings, parsePasted, toUs } from '@evenhand/core/define';
import type { Edit } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import type { TimeStudyElement, TimeStudyReading } from '@evenhand/core/ground/study';
import { countText } from '@evenhand/core/ground/units';
import {
  changedReading,
  freeName,
  type NewReading,
  newElement,
  readingAt,
  setReadings,
} from '../define-edits.ts';
import { readRating } from './cell-text.ts';
import { type Cursor, mostCycle } from './grid-columns.ts';
import type { GridModel } from './grid-model.ts';
import { cellKey, type WrongCell } from './grid-state.ts';

/** What became of a pasted block: one step, the cells that could not be taken, and a sentence about it all. */
export interface Pasted {
  readonly edit: Edit | undefined;
  readonly wrong: ReadonlyMap<string, WrongCell>;
  readonly words: string;
}

/** More cells than this at once would keep the page busy for long. Ours. */
const mostCells = 400_000;

type Block = readonly (readonly string[])[];

/** The cells of a text that a spreadsheet put on the clipboard: tabs between them, or semicolons where there is no tab. */
export function blockOf(text: string): Block {
  const separator = text.includes('\t') ? '\t' : text.includes(';') ? ';' : '\t';
  const lines: string[][] = [[]];
  let [cell, quoted] = ['', false];
  const end = () => {
    lines.at(-1)?.push(cell.trim());
    cell = '';
  };
  const plain = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '');
  for (let at = 0; at < plain.length; at += 1) {
    const letter = plain[at] as string;
    if (letter === '"' && quoted && plain[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (letter === '"' && (quoted || cell === '')) quoted = !quoted;
    else if (letter === separator && !quoted) end();
    else if (letter === '\n' && !quoted) {
      end();
      lines.push([]);
    } else cell += letter;
  }
  end();
  return lines;
}

const isNumber = (text: string) => /^[+\-−]?\d*[.,]?\d+\b/.test(text);
const isName = (text: string) => text !== '' && !isNumber(text) && !/^(?:[-–—−]|m|missed)$/i.test(text);

/** A table has names in its first line or down its first column; a bare block has none and lies as the table on the page does. */
export function isTable(text: string): boolean {
  const [head = [], ...rest] = blockOf(text);
  if (rest.length === 0) return head.length > 1 && isName(head[0] ?? '');
  if (/^[^\d\t;]*,[^\t;]*$/.test(text.trimStart().split(/[\r\n]/)[0] ?? '')) return true;
  const across = head.filter((cell) => cell !== '');
  const down = rest.map((line) => line[0] ?? '');
  return (
    (across.length > 0 && across.every(isName)) ||
    (head.length > 1 && isName(head[0] ?? '')) ||
    (head.length > 1 && down.every(isName)) ||
    (head[0] === '' && head.slice(1).some(isName))
  );
}

/** Takes a block into the table: by the names in it, else where the cursor stands. Empty cells leave what is there. */
export function paste(
  model: GridModel,
  cursor: Cursor,
  text: string,
  turned: boolean,
  newId: () => string,
): Pasted {
  const block = blockOf(text);
  const count = block.reduce((sum, line) => sum + line.length, 0);
  if (count > mostCells)
    return refused(
      `The block has ${count} cells; at most ${mostCells} are taken at once. Paste it in parts.`,
    );
  const kind = model.lines[cursor.line]?.kind ?? 'time';
  if (model.timeStudy.source.kind === 'record' && kind === 'time')
    return refused('The times of this study come from the marked film. Only ratings can be pasted here.');
  return kind === 'time' && isTable(text)
    ? pasteTable(model, cursor, text, newId)
    : pasteBlock(model, cursor, kind, turned ? transposed(block) : block, newId);
}

function refused(words: string): Pasted {
  return { edit: undefined, wrong: new Map(), words };
}

// ---- a table with names

function pasteTable(
  { timeStudy, unit, cycles }: GridModel,
  cursor: Cursor,
  text: string,
  newId: () => string,
): Pasted {
  const names = timeStudy.elements.map(({ name }) => name);
  const read = parsePasted(text, { unit, elements: names, firstCycle: cycles[cursor.column] ?? 1 });
  const made = read.added.map((name) => newElement(name, newId()));
  const elements = new Map([...timeStudy.elements, ...made].map((element) => [element.name, element]));
  const readings = read.cells.flatMap(({ cycle, element, us, setAside }): NewReading[] => {
    const target = elements.get(element);
    return target === undefined ? [] : [{ element: target.id, reading: timed(target, cycle, us, setAside) }];
  });
  const { wrong, untold } = placedFaults(read, elements);
  const count = new Set(read.cells.map(({ element }) => element)).size;
  return {
    edit: setReadings(timeStudy, readings, made, `paste ${countText(readings.length, 'reading')}`),
    wrong,
    words: pastedWords(
      { taken: countText(readings.length, 'reading'), count, made, wrong: wrong.size },
      untold,
    ),
  };
}

function timed(
  element: TimeStudyElement,
  cycle: number,
  us: number | undefined,
  setAside: string | undefined,
): TimeStudyReading {
  const change = { us: us ?? null, setAside: setAside ?? null };
  const changed = changedReading('readings', cycle, readingAt(element, cycle), change);
  return us === undefined || changed === null ? { cycle } : changed;
}

/**
 * The cells that were left, each in the cell of the page where it belongs: in the element and the cycle of its
 * neighbours. What has none is told with its line and column instead.
 */
function placedFaults(
  { cells, left, faults }: PastedReadings,
  elements: ReadonlyMap<string, TimeStudyElement>,
): { readonly wrong: ReadonlyMap<string, WrongCell>; readonly untold: readonly string[] } {
  const upright = uprightOf(cells);
  const elementAt = firstOf(cells, upright ? ({ column }) => column : ({ line }) => line);
  const cycleAt = firstOf(cells, upright ? ({ line }) => line : ({ column }) => column);
  const wrong = new Map<string, WrongCell>();
  const placed = new Set<Finding>();
  for (const cell of left) {
    const name = elementAt.get(upright ? cell.column : cell.line)?.element;
    const cycle = cycleAt.get(upright ? cell.line : cell.column)?.cycle;
    const element = name === undefined ? undefined : elements.get(name);
    const fault = faults.find(({ where }) => where.line === cell.line && where.column === cell.column);
    if (element === undefined || cycle === undefined || fault === undefined) continue;
    placed.add(fault);
    wrong.set(cellKey(element.id, 'time', cycle), { text: cell.text.slice(0, 60), message: fault.message });
  }
  const untold = faults.filter((fault) => !placed.has(fault)).map(placedWords);
  return { wrong, untold };
}

type ReadCell = PastedReadings['cells'][number];

/** The first cell of each line or column. */
function firstOf(
  cells: readonly ReadCell[],
  placeOf: (cell: ReadCell) => number,
): ReadonlyMap<number, ReadCell> {
  return new Map([...cells].reverse().map((cell) => [placeOf(cell), cell]));
}

/** Whether the elements stand across: then all cells of a column are of one element. */
function uprightOf(cells: readonly ReadCell[]): boolean {
  const first = firstOf(cells, ({ column }) => column);
  return cells.every(({ column, element }) => first.get(column)?.element === element);
}

function placedWords({ where: { line, column }, message }: Finding): string {
  if (line === undefined) return message;
  return `Line ${line}${column === undefined ? '' : `, column ${column}`}: ${message}`;
}

// ---- a bare block

function transposed(block: Block): Block {
  const width = block.reduce((most, line) => Math.max(most, line.length), 0);
  return Array.from({ length: width }, (_, at) => block.map((line) => line[at] ?? ''));
}

function pasteBlock(
  model: GridModel,
  cursor: Cursor,
  kind: 'time' | 'rating',
  block: Block,
  newId: () => string,
): Pasted {
  const { timeStudy } = model;
  const start = model.lines[cursor.line]?.element ?? 0;
  const made: TimeStudyElement[] = [];
  const elements = block.flatMap((_, index) => {
    const there = timeStudy.elements[start + index];
    if (there !== undefined || kind === 'rating') return there ?? [];
    const taken = [...timeStudy.elements, ...made].map(({ name }) => name);
    const element = newElement(freeName(`element ${start + index + 1}`, taken), newId());
    made.push(element);
    return element;
  });
  const cycles = cyclesOnward(model.cycles, cursor, Math.max(...block.map((line) => line.length)));
  const { readings, wrong } = takeCells(model, kind, block, elements, cycles);
  const taken = countText(readings.length, kind === 'rating' ? 'rating' : 'reading');
  const untold = [
    elements.length < block.length ? `The last ${block.length - elements.length} lines meet no element.` : '',
    cycles.some((cycle) => cycle > mostCycle) ? 'What lies beyond cycle 1,000,000 was left out.' : '',
  ].filter((part) => part !== '');
  return {
    edit: setReadings(timeStudy, readings, made, `paste ${taken}`),
    wrong,
    words: pastedWords({ taken, count: elements.length, made, wrong: wrong.size }, untold),
  };
}

/** The cycles go on from the cursor, also beyond the end of the table. */
function cyclesOnward(cycles: readonly number[], cursor: Cursor, count: number): readonly number[] {
  const there = cycles.slice(cursor.column, cursor.column + count);
  const last = there.at(-1) ?? 0;
  return Array.from({ length: count }, (_, index) => there[index] ?? last + index - there.length + 1);
}

function takeCells(
  model: GridModel,
  kind: 'time' | 'rating',
  block: Block,
  elements: readonly TimeStudyElement[],
  cycles: readonly number[],
) {
  const readings: NewReading[] = [];
  const wrong = new Map<string, WrongCell>();
  const marks = decimalMarks();
  elements.forEach((element, row) => {
    cycles.forEach((cycle, column) => {
      const cell = block[row]?.[column] ?? '';
      if (cell === '' || cycle > mostCycle) return;
      const read =
        marks(cell) ??
        (kind === 'time'
          ? readTime(cell, cycle, element, model)
          : readRated(cell, cycle, row, element, model));
      if (typeof read === 'string')
        wrong.set(cellKey(element.id, kind, cycle), { text: cell.slice(0, 60), message: read });
      else readings.push({ element: element.id, reading: read });
    });
  });
  return { readings, wrong };
}

/** A block with 1.5 in one cell and 1,5 in another may mean thousands by one of them: the second is left. */
function decimalMarks(): (cell: string) => string | undefined {
  let first: string | undefined;
  return (cell) => {
    const mark = /^[+\-−]?\d*([.,])/.exec(cell)?.[1];
    if (mark === undefined) return undefined;
    first ??= mark;
    if (mark === first) return undefined;
    return `“${cell.slice(0, 40)}” has another decimal mark than cells before it. Write a point or a comma in the whole block.`;
  };
}

function readTime(
  cell: string,
  cycle: number,
  element: TimeStudyElement,
  { unit }: GridModel,
): TimeStudyReading | string {
  const entry = toUs(cell, unit);
  if (!entry.ok) return entry.error.message;
  const { value } = entry;
  return value.kind === 'time' ? timed(element, cycle, value.us, value.setAside) : { cycle };
}

function readRated(
  cell: string,
  cycle: number,
  row: number,
  element: TimeStudyElement,
  { timeStudy, elements }: GridModel,
): TimeStudyReading | string {
  const rating = readRating(cell, `“${element.name}” in cycle ${cycle}`, timeStudy.scale);
  if (!rating.ok) return rating.error;
  const filled = elements.find(({ id }) => id === element.id) ?? elements[row];
  if (filled === undefined || readingAt(filled, cycle)?.us === undefined) {
    return 'There is no reading here to rate. Write its time first.';
  }
  const was = readingAt(element, cycle);
  return changedReading(timeStudy.source.kind, cycle, was, { rating: rating.value }) ?? { cycle };
}

// ---- in words

interface Taken {
  readonly taken: string;
  /** Of how many elements. */
  readonly count: number;
  readonly made: readonly TimeStudyElement[];
  readonly wrong: number;
}

function pastedWords({ taken, count, made, wrong }: Taken, untold: readonly string[]): string {
  const parts = [
    `Pasted ${taken} of ${countText(count, 'element')}.`,
    newWords(made),
    wrong === 0
      ? ''
      : `${countText(wrong, 'cell')} could not be taken and ${wrong === 1 ? 'stands' : 'stand'} marked in the table.`,
    ...untold.slice(0, 3),
    untold.length > 3 ? `And ${untold.length - 3} more.` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

function newWords(made: readonly TimeStudyElement[]): string {
  const names = made.slice(0, 5).map(({ name }) => name);
  const more = made.length - names.length;
  return made.length === 0 ? '' : `New: ${names.join(', ')}${more === 0 ? '' : ` and ${more} more`}.`;
}
