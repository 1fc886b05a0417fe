import { fail, type Micros, micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import { type CsvLine, unguardText } from './csv-cells.ts';
import { headOf, type NamedTable, namedTable, type TableDesign } from './csv-columns.ts';
import { inTextOrder } from './csv-findings.ts';
import { type Labelled, labelReader, unusedLabels } from './csv-labels.ts';
import type { CsvMotions } from './csv-motion-table.ts';
import type { CsvMotion } from './csv-motions.ts';
import { cycleOf, decimalMarkFaults, secondsOf } from './csv-numbers.ts';
import type { CsvOptions } from './csv-options.ts';
import { linesOfSubject } from './csv-subjects.ts';

type Column = 'cycle' | 'start_s' | 'subject';
const design: TableDesign<Column> = {
  columns: ['cycle', 'start_s'],
  needed: ['cycle', 'start_s'],
  silent: ['subject'],
  others: { subject: 'clip' },
  open: true,
};

interface Element {
  /** Column from 1. */
  readonly column: number;
  readonly label: string;
  readonly time: Micros;
  readonly said: Labelled;
}

/** One line of the table: a cycle with its elements in the order of the columns. */
interface Cycle {
  readonly line: number;
  readonly number: number;
  readonly start: Micros;
  readonly elements: readonly Element[];
}

/**
 * Reads a table with a line for each cycle: `cycle,start_s`, perhaps `clip` or `subject`, and a column for each element
 * with its seconds. The elements of a line are laid end to end from its start in the order of the columns; an empty cell
 * and 0 are no element. Where they last beyond the start of the next line, they are cut there or a fault is told.
 */
export function readElementTable(text: string, options: CsvOptions): Result<CsvMotions, readonly Finding[]> {
  const { hand } = options;
  if (tellsMotions(text)) return fail([finding('csv/not-wide', { line: 1 })]);
  if (hand === undefined) return fail([finding('csv/elements-hand', { line: 1 })]);
  const table = namedTable(text, design);
  if (!table.ok) return table;
  const { cellOf } = table.value;
  const chosen = linesOfSubject(table.value, cellOf.subject, options.subject);
  if (!chosen.ok) return chosen;
  const read = readCycles(table.value, chosen.value, options);
  if (!read.ok) return read;
  const { cycles, notes, columns } = read.value;
  const laid = layOut(cycles, hand);
  const beyond = options.overlaps === 'cut' ? [] : laid.beyond.map(({ fault }) => fault);
  const faults = [...orderFaults(cycles, cellOf.cycle + 1), ...beyond];
  if (faults.length > 0) return fail(inTextOrder(faults));
  if (laid.motions.length === 0) return fail([finding('csv/no-elements', { line: table.value.head.line })]);
  const labels = columns.map((column) => labelOf(table.value.head, column));
  return ok({
    motions: laid.motions,
    notes: [
      ...notes,
      ...unusedLabels(options.mapping, labels),
      ...renumbered(cycles, laid.motions),
      ...laid.beyond.map(({ repair }) => repair),
    ],
    startColumn: cellOf.start_s + 1,
    cycleColumn: cellOf.cycle + 1,
  });
}

/** Told apart beforehand, because every other column of a table of motions would be taken for an element. */
function tellsMotions(text: string): boolean {
  const columns = ['start_s', 'end_s', 'motion', 'label'] as const;
  const { names } = headOf(text, { columns, needed: [] });
  return names.includes('end_s') && (names.includes('motion') || names.includes('label'));
}

function labelOf(head: CsvLine, cell: number): string {
  return unguardText(head.cells[cell] ?? '').trim();
}

function readCycles({ head, cellOf }: NamedTable<Column>, lines: readonly CsvLine[], options: CsvOptions) {
  const own = new Set(Object.values(cellOf));
  const columns = head.cells.flatMap((name, cell) =>
    !own.has(cell) && (name !== '' || lines.some(({ cells }) => cells[cell] !== '')) ? [cell] : [],
  );
  const labels = labelReader(options);
  const faults = decimalMarkFaults(lines, [cellOf.start_s, ...columns]);
  const zeros: Finding[] = [];
  const cycles = lines.map(({ line, cells }): Cycle => {
    const complain = (cell: number, code: 'csv/number' | 'csv/cycle') => {
      faults.push(finding(code, { line, column: cell + 1 }, { found: cells[cell] ?? '' }));
    };
    const number = cycleOf((cells[cellOf.cycle] ?? '').trim());
    if (number === undefined) complain(cellOf.cycle, 'csv/cycle');
    const start = secondsOf(cells[cellOf.start_s] ?? '');
    if (start === undefined) complain(cellOf.start_s, 'csv/number');
    const elements = columns.flatMap((cell): Element[] => {
      const found = (cells[cell] ?? '').trim();
      if (found === '') return [];
      const label = labelOf(head, cell);
      const said = labels.read(label, { line, column: cell + 1 });
      const time = secondsOf(found);
      if (time === undefined) complain(cell, 'csv/number');
      if (time === 0) zeros.push(finding('csv/element-zero', { line, column: cell + 1 }, { label }));
      return time === undefined || time === 0 ? [] : [{ column: cell + 1, label, time, said }];
    });
    return { line, number: number ?? 1, start: start ?? micros(0), elements };
  });
  const unmapped = labels.unmapped();
  const refused = options.unmapped === undefined ? unmapped : [];
  if (faults.length + refused.length > 0) return fail([...inTextOrder(faults), ...refused]);
  const sorted = cycles.toSorted((a, b) => a.start - b.start || a.number - b.number || a.line - b.line);
  return ok({ cycles: sorted, columns, notes: [...unmapped, ...zeros] });
}

/** A later line must not have a lower number: cycles follow one another. */
function orderFaults(cycles: readonly Cycle[], column: number): Finding[] {
  return cycles.flatMap(({ line, number, start }, index) => {
    const before = cycles[index - 1];
    if (before === undefined || number > before.number) return [];
    const words = { cycle: number, start: exactSeconds(start), before: before.number, line: before.line };
    return [finding('csv/element-order', { line, column }, words)];
  });
}

interface Beyond {
  readonly fault: Finding;
  readonly repair: Finding;
}

function layOut(cycles: readonly Cycle[], hand: Hand) {
  const motions: CsvMotion[] = [];
  const beyond: Beyond[] = [];
  let number = 0;
  for (const [index, cycle] of cycles.entries()) {
    const next = cycles[index + 1];
    const limit = next?.start ?? Number.POSITIVE_INFINITY;
    if (cycle.elements.length > 0 && cycle.start < limit) number += 1;
    let at: number = cycle.start;
    for (const { column, label, time, said } of cycle.elements) {
      const [start, end] = [at, at + time];
      at = end;
      const kept = Math.min(end, limit);
      if (kept > start) motions.push(motionOf(cycle.line, hand, said, start, kept, number));
      if (next === undefined || end <= limit) continue;
      beyond.push(beyondOf({ line: cycle.line, column, hand }, label, start, end, next));
    }
  }
  return { motions, beyond };
}

function motionOf(
  line: number,
  hand: Hand,
  { kind, object, from, to, note }: Labelled,
  start: number,
  end: number,
  cycle: number,
): CsvMotion {
  return { line, hand, kind, start: micros(start), end: micros(end), object, from, to, note, cycle };
}

function beyondOf(
  where: { line: number; column: number; hand: Hand },
  label: string,
  start: number,
  end: number,
  next: Cycle,
): Beyond {
  const words = {
    label,
    time: exactSeconds(micros(end - Math.max(start, next.start))),
    end: exactSeconds(micros(end)),
    other: next.line,
    start: exactSeconds(next.start),
  };
  const code = start >= next.start ? 'csv/element-dropped' : 'csv/element-cut';
  return { fault: finding('csv/element-beyond', where, words), repair: finding(code, where, words) };
}

/** Cycles of a study are numbered from 1 without a gap; where the table has other numbers, that is told. */
function renumbered(cycles: readonly Cycle[], motions: readonly CsvMotion[]): Finding[] {
  const numberOf = new Map(motions.map(({ line, cycle }) => [line, cycle]));
  const empty = cycles
    .filter(({ line }) => !numberOf.has(line))
    .map(({ line, number }) => finding('csv/cycle-left-out', { line }, { cycle: number }));
  const moved = cycles.find(({ line, number }) => numberOf.has(line) && numberOf.get(line) !== number);
  if (moved === undefined) return empty;
  const words = { found: moved.number, became: numberOf.get(moved.line) ?? 0 };
  return [...empty, finding('csv/cycle-renumbered', { line: moved.line }, words)];
}
