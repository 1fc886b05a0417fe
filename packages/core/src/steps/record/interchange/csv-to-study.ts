import { fail, micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  emptyStudy,
  type Hand,
  hands,
  type Method,
  type Motion,
  type Place,
  readStudy,
  type Study,
} from '../../../ground/study/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import { motionTable } from './csv-columns.ts';
import { cyclesFrom } from './csv-cycles.ts';
import { type CsvMotion, readMotions } from './csv-motions.ts';

export interface CsvOptions {
  /** Title of the study and name of its operation; empty or longer than 200 characters is mended. */
  readonly title: string;
  /** Gives the study its id. All other ids follow from their place in the table. */
  readonly newId: () => string;
}

export interface CsvStudy {
  readonly study: Study;
  /** What the reader should know: gaps, columns that were not read, cycles without a motion. */
  readonly notes: readonly Finding[];
}

/**
 * A study with one recorded method in microseconds from a table of motions (`docs/file-format.md`). Either the whole
 * table holds, or all its faults come back, each with its line and, where it is one cell, the number of its column.
 */
export function csvToStudy(text: string, options: CsvOptions): Result<CsvStudy, readonly Finding[]> {
  const table = motionTable(text);
  if (!table.ok) return table;
  const { motions, faults } = readMotions(table.value);
  if (faults.length > 0) return fail(inOrder(faults));
  const sorted = motions.toSorted(
    (a, b) => a.start - b.start || (a.cycle ?? 0) - (b.cycle ?? 0) || a.line - b.line,
  );
  const overlaps = hands.flatMap((hand) => overlapsIn(sorted, hand, table.value.cellOf.start_s + 1));
  if (overlaps.length > 0) return fail(inOrder(overlaps));
  const span = spanOf(sorted);
  const places = placesOf(sorted);
  const left = rowOf(sorted, 'left', span, places);
  const right = rowOf(sorted, 'right', span, places);
  const cycles = cyclesFrom(sorted, span.end, table.value.cellOf.cycle + 1);
  if (cycles.faults.length > 0) return fail(inOrder(cycles.faults));
  const method: Method = {
    id: 'method-1',
    name: 'Imported',
    kind: 'recorded',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: left.row,
    right: right.row,
    cycles: cycles.row,
  };
  const title = options.title.trim().slice(0, 200) || 'Imported study';
  const study = readStudy({ ...emptyStudy(options.newId(), title), places, methods: [method] });
  const notes = [...table.value.notes, ...inOrder([...left.notes, ...right.notes, ...cycles.notes])];
  return study.ok ? ok({ study: study.value, notes }) : study;
}

function inOrder(found: readonly Finding[]): Finding[] {
  return found.toSorted(
    (a, b) => (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0),
  );
}

function overlapsIn(sorted: readonly CsvMotion[], hand: Hand, column: number): Finding[] {
  let latest: CsvMotion | undefined;
  return sorted.flatMap((motion) => {
    if (motion.hand !== hand) return [];
    const other = latest;
    if (latest === undefined || motion.end > latest.end) latest = motion;
    if (other === undefined || motion.start >= other.end) return [];
    const words = {
      hand,
      start: exactSeconds(motion.start),
      other: other.line,
      end: exactSeconds(other.end),
    };
    return [finding('csv/overlap', { line: motion.line, column, hand }, words)];
  });
}

interface Span {
  readonly start: number;
  readonly end: number;
}

function spanOf(sorted: readonly CsvMotion[]): Span {
  return { start: sorted[0]?.start ?? 0, end: sorted.reduce((end, motion) => Math.max(end, motion.end), 0) };
}

/** Places in the order in which their names appear. */
function placesOf(sorted: readonly CsvMotion[]): Place[] {
  const names = new Set(sorted.flatMap(({ from, to }) => [from, to]).filter((name) => name !== undefined));
  return [...names].map((name, index) => ({ id: `place-${index + 1}`, name }));
}

function rowOf(sorted: readonly CsvMotion[], hand: Hand, span: Span, places: readonly Place[]) {
  const idOf = new Map(places.map((place) => [place.name, place.id]));
  const items: Motion[] = [];
  const notes: Finding[] = [];
  const add = (motion: Omit<Motion, 'id' | 'said'>) => {
    items.push({ id: `${hand[0]}${items.length + 1}`, ...motion, said: 'marked' });
  };
  const fill = (start: number, end: number, line: number | undefined) => {
    if (end <= start) return;
    add({ start, kind: 'unmarked' });
    const words = { hand, start: exactSeconds(micros(start)), end: exactSeconds(micros(end)) };
    notes.push(finding('csv/gap', line === undefined ? { hand } : { line, hand }, words));
  };
  let at = span.start;
  let line: number | undefined;
  for (const motion of sorted) {
    if (motion.hand !== hand) continue;
    fill(at, motion.start, motion.line);
    add(motionOf(motion, idOf));
    at = motion.end;
    line = motion.line;
  }
  fill(at, span.end, line);
  return { row: { items, end: span.end }, notes };
}

function motionOf(motion: CsvMotion, idOf: ReadonlyMap<string, string>): Omit<Motion, 'id' | 'said'> {
  const place = (name: string | undefined) => (name === undefined ? undefined : idOf.get(name));
  const [from, to] = [place(motion.from), place(motion.to)];
  return {
    start: motion.start,
    kind: motion.kind,
    ...(motion.object === undefined ? {} : { object: motion.object }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  };
}
