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
import { cyclesFrom } from './csv-cycles.ts';
import { readElementTable } from './csv-elements.ts';
import { inTextOrder } from './csv-findings.ts';
import { type CsvMotions, readMotionTable } from './csv-motion-table.ts';
import type { CsvMotion } from './csv-motions.ts';
import type { CsvOptions } from './csv-options.ts';
import { cutOverlaps, overlapsIn } from './csv-overlaps.ts';

export interface CsvStudy {
  readonly study: Study;
  /** What the reader should know: gaps, columns that were not read, cycles without a motion, every repair. */
  readonly notes: readonly Finding[];
}

/**
 * A study with one recorded method in microseconds from a table of motions, or of elements by cycle
 * (`docs/file-format.md`). Either the whole table holds, or all its faults come back, each with its line and, where it
 * is one cell, the number of its column. Labels without a motion come last, the most frequent first.
 */
export function csvToStudy(text: string, options: CsvOptions): Result<CsvStudy, readonly Finding[]> {
  const read =
    options.shape === 'elements' ? readElementTable(text, options) : readMotionTable(text, options);
  return read.ok ? studyOf(read.value, options) : read;
}

function studyOf(table: CsvMotions, options: CsvOptions): Result<CsvStudy, readonly Finding[]> {
  const sorted = table.motions.toSorted(
    (a, b) => a.start - b.start || (a.cycle ?? 0) - (b.cycle ?? 0) || a.line - b.line,
  );
  const overlaps = hands.flatMap((hand) => overlapsIn(sorted, hand, table.startColumn));
  if (overlaps.length > 0 && options.overlaps === undefined) return fail(inTextOrder(overlaps));
  const span = spanOf(sorted);
  const places = placesOf(sorted);
  const left = rowOf(sorted, 'left', span, places);
  const right = rowOf(sorted, 'right', span, places);
  // Cycles follow the table as it stands: what goes on after a motion of the next cycle does not begin there.
  const cycles = cyclesFrom(sorted, span.end, table.cycleColumn);
  if (cycles.faults.length > 0) return fail(inTextOrder(cycles.faults));
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
  const notes = [...table.notes, ...inTextOrder([...left.notes, ...right.notes, ...cycles.notes])];
  return study.ok ? ok({ study: study.value, notes }) : study;
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
  const cut = cutOverlaps(sorted.filter((motion) => motion.hand === hand));
  const notes = [...cut.notes];
  const add = (motion: Omit<Motion, 'id'>) => {
    items.push({ id: `${hand[0]}${items.length + 1}`, ...motion });
  };
  const fill = (start: number, end: number, line: number | undefined) => {
    if (end <= start) return;
    add({ start, kind: 'unmarked', said: 'marked' });
    const words = { hand, start: exactSeconds(micros(start)), end: exactSeconds(micros(end)) };
    notes.push(finding('csv/gap', line === undefined ? { hand } : { line, hand }, words));
  };
  let at = span.start;
  let line: number | undefined;
  for (const motion of cut.motions) {
    fill(at, motion.start, motion.line);
    add(motionOf(motion, idOf));
    at = motion.end;
    line = motion.line;
  }
  fill(at, span.end, line);
  return { row: { items, end: span.end }, notes };
}

function motionOf(motion: CsvMotion, idOf: ReadonlyMap<string, string>): Omit<Motion, 'id'> {
  const place = (name: string | undefined) => (name === undefined ? undefined : idOf.get(name));
  const { start, kind, object, note, said = 'marked', confidence } = motion;
  const [from, to] = [place(motion.from), place(motion.to)];
  return {
    start,
    kind,
    ...(object === undefined ? {} : { object }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(note === undefined ? {} : { note }),
    said,
    ...(confidence === undefined || said !== 'proposed' ? {} : { confidence }),
  };
}
