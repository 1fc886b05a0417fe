import { fail, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import { cycleWord, type Grid, type GridCell, gridOf, isName, wholeNumber } from './pasted-grid.ts';
import { type TypedTime, toUs } from './typed-time.ts';

export interface PasteWish {
  /** Of the numbers that name none. */
  readonly unit: TimeUnit;
  /** Names of the elements that are there, in their order. */
  readonly elements: readonly string[];
  /** Cycle of the first line, from 1, where the block does not number them; 1 when left out. */
  readonly firstCycle?: number | undefined;
}

/** One reading of a pasted block. */
export interface PastedCell {
  readonly cycle: number;
  /** Name of its element, as it stands in the time study where it is there. */
  readonly element: string;
  /** Microseconds; undefined when the reading was missed. */
  readonly us: number | undefined;
  readonly setAside: string | undefined;
  /** Place in the text, from 1. */
  readonly line: number;
  readonly column: number;
}

export interface PastedReadings {
  readonly cells: readonly PastedCell[];
  /** Names that the time study does not have yet, in the order of the block. */
  readonly added: readonly string[];
  /** What could not be taken, as it stands in the text: for each of these there is a finding at its line and column, or at that of its line or column. */
  readonly left: readonly GridCell[];
  readonly faults: readonly Finding[];
}

/** The bounds of the study file. */
const lastCycle = 1_000_000;
const longestName = 200;

/**
 * Readings from a spreadsheet: cycles down and elements across, or turned. Tabs, semicolons or commas between the cells,
 * a decimal point or a decimal comma, one of them in the whole block. A first line with names is that of the elements;
 * without one they are those of the time study in their order. A first column that counts is that of the cycles. An
 * empty cell says nothing; a missed reading is “-”. What cannot be taken is left and told, and takes nothing from the rest.
 */
export function parsePasted(text: string, wish: PasteWish): PastedReadings {
  const { grid, faults: broken } = gridOf(text);
  if (grid.length === 0) return { cells: [], added: [], left: [], faults: [finding('define/paste-empty')] };
  const head = headOf(grid);
  const lines = bodyOf(grid, head);
  const numbered = hasCycles(head, lines, wish.elements);
  const columns = columnsOf(head, lines, numbered, wish.elements);
  const cycles = cyclesOf(lines, numbered, wish.firstCycle ?? 1);
  const faults = [...broken, ...columns.faults, ...cycles.faults];
  const read = readCells(lines, { ...columns, cycles: cycles.numbers, from: numbered ? 1 : 0 }, wish.unit);
  if (read.cells.length + read.left.length === 0) faults.push(finding('define/paste-empty'));
  return {
    cells: read.cells,
    added: columns.added,
    left: [...cycles.left, ...read.left],
    faults: inOrder([...faults, ...read.faults]),
  };
}

/** The first line, when it holds names and no time; a column of cycles may be named before elements with numbers for names. */
function headOf(grid: Grid): Grid[number] | undefined {
  const first = grid[0] ?? [];
  const held = first.flatMap((cell) => cell ?? []);
  const named = held.every(isName) || (first[0] !== undefined && cycleWord.test(first[0].text));
  return named ? first : undefined;
}

/** A name that is written on two lines leaves an empty one behind it. */
function bodyOf(grid: Grid, head: Grid[number] | undefined): Grid {
  if (head === undefined) return grid;
  const first = grid.findIndex((line, at) => at > 0 && line.some((cell) => cell !== undefined));
  return first < 0 ? [] : grid.slice(first);
}

/** Whether the first column is that of the cycles: by its name, or because it counts and is no element that is there. */
function hasCycles(head: Grid[number] | undefined, lines: Grid, elements: readonly string[]): boolean {
  const numbers = lines.flatMap((line) => (line[0] === undefined ? [] : [wholeNumber(line[0].text)]));
  const first = head?.[0]?.text;
  if (head !== undefined && first === undefined) return numbers.length > 0;
  if (first !== undefined && elements.some((name) => keyOf(name) === keyOf(first))) return false;
  if (first !== undefined && cycleWord.test(first)) return true;
  const width = (lines[0] ?? head)?.length ?? 0;
  if (width < 2 || (head === undefined && width === elements.length)) return false;
  const steps = (is: (step: number) => boolean) =>
    numbers.every((value, at) => value !== undefined && (at === 0 || is(value - (numbers[at - 1] ?? 0))));
  if (head === undefined && width === elements.length + 1) return steps((step) => step > 0);
  // Times that happen to be 2 and 3 are not taken for cycles.
  const sure = numbers.length >= 3 || (numbers.length === 2 && numbers[0] === 1);
  return sure && steps((step) => step === 1);
}

const keyOf = (name: string) => name.trim().toLowerCase();

interface Columns {
  /** Name of the element of each column of the block; undefined where it is none. */
  readonly names: readonly (string | undefined)[];
  readonly added: readonly string[];
  readonly faults: readonly Finding[];
}

function columnsOf(
  head: Grid[number] | undefined,
  lines: Grid,
  numbered: boolean,
  elements: readonly string[],
): Columns {
  const width = lines[0]?.length ?? head?.length ?? 0;
  const known = new Map(elements.map((name) => [keyOf(name), name]));
  const [taken, added, faults]: [Set<string>, string[], Finding[]] = [new Set(), [], []];
  const names = Array.from({ length: width }, (_, at): string | undefined => {
    if (numbered && at === 0) return undefined;
    const holding = lines.find((line) => line[at] !== undefined)?.[at];
    const cell = head?.[at];
    const position = numbered ? at - 1 : at;
    const name = head === undefined ? (elements[position] ?? freeName(position, known)) : cell?.text;
    if (name === undefined) {
      if (holding !== undefined) faults.push(finding('define/table-unnamed', placeOf(holding)));
      return undefined;
    }
    const wrong = cell === undefined ? undefined : nameFault(cell, taken);
    if (wrong !== undefined) faults.push(wrong);
    if (wrong !== undefined || (head === undefined && holding === undefined)) return undefined;
    taken.add(keyOf(name));
    if (!known.has(keyOf(name))) {
      known.set(keyOf(name), name);
      added.push(name);
    }
    return known.get(keyOf(name));
  });
  return { names, added, faults };
}

function nameFault(cell: GridCell, taken: ReadonlySet<string>): Finding | undefined {
  if (taken.has(keyOf(cell.text))) {
    return finding('csv/duplicate-column', placeOf(cell), { column: cell.text });
  }
  return cell.text.length > longestName
    ? finding('define/paste-name', placeOf(cell), { found: cell.text.length, most: longestName })
    : undefined;
}

function freeName(position: number, known: ReadonlyMap<string, string>): string {
  for (let number = position + 1; ; number += 1) {
    if (!known.has(`element ${number}`)) return `element ${number}`;
  }
}

function cyclesOf(lines: Grid, numbered: boolean, firstCycle: number) {
  const faults: Finding[] = [];
  const left: GridCell[] = [];
  const seen = new Map<number, number>();
  const numbers = lines.map((line, at): number | undefined => {
    const cell = numbered ? line[0] : undefined;
    const holding = cell ?? line.find((other) => other !== undefined);
    const number = numbered ? wholeNumber(cell?.text ?? '') : firstCycle + at;
    if (holding === undefined) return undefined;
    const place = numbered ? { line: holding.line, column: cell?.column ?? 1 } : placeOf(holding);
    const before = number === undefined ? undefined : seen.get(number);
    if (number === undefined || number > lastCycle) {
      faults.push(
        finding('define/paste-cycle', place, { found: cell?.text ?? number ?? '', most: lastCycle }),
      );
    } else if (before !== undefined) {
      faults.push(finding('define/table-cycle-twice', place, { cycle: number, before }));
    } else {
      seen.set(number, holding.line);
      return number;
    }
    if (cell !== undefined) left.push(cell);
    return undefined;
  });
  return { numbers, faults, left };
}

interface Placed {
  readonly names: readonly (string | undefined)[];
  readonly cycles: readonly (number | undefined)[];
  /** Position of the first column that is no column of cycles. */
  readonly from: number;
}

function readCells(lines: Grid, { names, cycles, from }: Placed, unit: TimeUnit) {
  const [cells, left, faults]: [PastedCell[], GridCell[], Finding[]] = [[], [], []];
  const marks = decimalMarks();
  for (const [at, line] of lines.entries()) {
    const cycle = cycles[at];
    for (let column = from; column < line.length; column += 1) {
      const [cell, element] = [line[column], names[column]];
      if (cell === undefined) continue;
      const read = element === undefined || cycle === undefined ? undefined : readCell(cell, unit, marks);
      if (read?.ok === true) cells.push(pastedCell(read.value, cell, cycle as number, element as string));
      else left.push(cell);
      if (read?.ok === false) faults.push(read.error);
    }
  }
  return { cells, left, faults };
}

function pastedCell(
  typed: TypedTime,
  { line, column }: GridCell,
  cycle: number,
  element: string,
): PastedCell {
  const time = typed.kind === 'time' ? typed : undefined;
  return { cycle, element, us: time?.us, setAside: time?.setAside, line, column };
}

function readCell(
  cell: GridCell,
  unit: TimeUnit,
  marks: (cell: GridCell) => number | undefined,
): Result<TypedTime, Finding> {
  const other = marks(cell);
  return other === undefined
    ? toUs(cell.text, unit, placeOf(cell))
    : fail(finding('define/table-decimals', placeOf(cell), { found: cell.text, other }));
}

/** A block with 1.5 in one cell and 1,5 in another may mean thousands by one of them: the line of the first, for one that differs. */
function decimalMarks(): (cell: GridCell) => number | undefined {
  let first: { readonly mark: string; readonly line: number } | undefined;
  return ({ text, line }) => {
    const mark = /^[+\-−]?\d*([.,])/.exec(text)?.[1];
    if (mark === undefined) return undefined;
    first ??= { mark, line };
    return mark === first.mark ? undefined : first.line;
  };
}

function placeOf({ line, column }: GridCell) {
  return { line, column };
}

function inOrder(faults: readonly Finding[]): Finding[] {
  return [...faults].sort(
    (a, b) => (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0),
  );
}
