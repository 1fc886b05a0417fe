import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type MotionKind, parseMotionKind } from '../../../ground/tables/index.ts';
import { isMove, type MotionWanted, nameOf } from './from-cells.ts';
import { type PredictedTime, predictedTime } from './predicted-time.ts';

/** One line of a time table. */
export interface TableLine {
  readonly kind: MotionKind;
  /** Undefined for any object. */
  readonly object: string | undefined;
  /** Of a move, in millimetres. */
  readonly distance: number | undefined;
  /** Microseconds, above 0. */
  readonly us: number;
  /** Standard deviation as a share of the time. */
  readonly spread: number;
}

/** A time table that its owner has a licence for; none is part of the program. */
export interface TimeTable {
  readonly name: string;
  readonly lines: readonly TableLine[];
}

export const tableColumns = ['kind', 'object', 'distance_mm', 'us', 'spread'] as const;
type Column = (typeof tableColumns)[number];
/** Where a line gives no spread. Ours. */
const usualTableSpread = 0.1;

/**
 * Reads a table from text: first line `kind,object,distance_mm,us,spread`, columns in any order, one motion a line. Every
 * line that cannot be read is told with its number.
 */
export function parseTimeTable(text: string, name: string): Result<TimeTable, readonly Finding[]> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const head = (lines[0] ?? '').split(',').map((word) => word.trim().toLowerCase());
  const missing = (['kind', 'us'] as const).filter((column) => !head.includes(column));
  const stray = head.filter((word) => !tableColumns.some((column) => column === word));
  if (missing.length > 0 || stray.length > 0) {
    const reason =
      missing.length > 0
        ? missing.length === 1
          ? `the column ${missing[0]} is missing`
          : `the columns ${missing.join(' and ')} are missing`
        : `“${stray[0]}” is no column of it`;
    return fail([finding('develop/table-head', {}, { reason, columns: tableColumns.join(',') })]);
  }
  const faults: Finding[] = [];
  const read = lines.slice(1).flatMap((line, index): TableLine[] => {
    if (line.trim() === '') return [];
    const words = line.split(',').map((word) => word.trim());
    const made =
      words.length > head.length
        ? `it has ${words.length} fields where ${head.length} are named`
        : lineOf((column) => words[head.indexOf(column)] ?? '');
    if (typeof made !== 'string') return [made];
    faults.push(finding('develop/table-line', {}, { line: index + 2, reason: made }));
    return [];
  });
  if (faults.length === 0 && read.length === 0)
    faults.push(finding('develop/table-line', {}, { line: 2, reason: 'it is empty' }));
  return faults.length > 0 ? fail(faults) : ok({ name, lines: read });
}

/** A line, or in words why it is none. */
function lineOf(word: (column: Column) => string): TableLine | string {
  const kind = parseMotionKind(word('kind'));
  if (kind === undefined || kind === 'unmarked') return `“${word('kind')}” is no kind of motion`;
  const us = number(word('us'));
  if (us === undefined || us <= 0 || us >= 3_600_000_000)
    return `“${word('us')}” is no time in microseconds above 0 and below an hour`;
  const distance = word('distance_mm') === '' ? undefined : number(word('distance_mm'));
  if (word('distance_mm') !== '' && (distance === undefined || distance < 0 || distance > 5000))
    return `“${word('distance_mm')}” is no distance in millimetres from 0 to 5000`;
  if (isMove(kind) && distance === undefined) return 'a move needs its distance in millimetres';
  const spread = word('spread') === '' ? usualTableSpread : number(word('spread'));
  if (spread === undefined || spread < 0 || spread > 5)
    return `“${word('spread')}” is no spread from 0 to 5 times the time`;
  return { kind, object: word('object') || undefined, distance, us, spread };
}

function number(word: string): number | undefined {
  return /^\d+(\.\d+)?$/.test(word) ? Number(word) : undefined;
}

/**
 * The time that a table gives. Between two distances of a move it is found on the straight line; a move that is shorter or
 * longer than all of the table is not taken from it.
 */
export function fromTable(
  table: TimeTable | undefined,
  wanted: MotionWanted,
  distance: number | undefined,
): PredictedTime | undefined {
  if (table === undefined) return undefined;
  const ofKind = table.lines.filter(({ kind }) => kind === wanted.kind);
  const ofObject = ofKind.filter(({ object }) => object !== undefined && object === wanted.object);
  const lines = ofObject.length > 0 ? ofObject : ofKind.filter(({ object }) => object === undefined);
  const found = isMove(wanted.kind) ? between(lines, distance) : lines[0];
  if (found === undefined) return undefined;
  return predictedTime(
    found.us,
    { errors: [{ name: `table ${nameOf(wanted)}`, spread: found.spread }], shared: 0 },
    { kind: 'table', name: table.name },
    `from the time table “${table.name}”`,
  );
}

function between(
  lines: readonly TableLine[],
  distance: number | undefined,
): Pick<TableLine, 'us' | 'spread'> | undefined {
  if (distance === undefined) return undefined;
  const sorted = [...lines].sort((a, b) => (a.distance ?? 0) - (b.distance ?? 0));
  const upper = sorted.findIndex((line) => (line.distance ?? 0) >= distance);
  const [one, other] = [sorted[upper - 1], sorted[upper]];
  if (other === undefined) return undefined;
  if (other.distance === distance) return other;
  if (one === undefined) return undefined;
  const share = (distance - (one.distance ?? 0)) / ((other.distance ?? 0) - (one.distance ?? 0));
  const mixed = (a: number, b: number) => a + share * (b - a);
  return { us: mixed(one.us, other.us), spread: mixed(one.spread, other.spread) };
}
