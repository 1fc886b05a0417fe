import type { TimeStudy } from '@evenhand/core/ground/study';

/** Sizes of the table in pixels; the style sheet has the same. */
export const gridSize = { time: 24, rating: 20, head: 24, name: 176, sum: 150 } as const;

/** Width of a column in pixels that holds the longest text of a time. */
export function columnWidth(letters: number): number {
  return 42 + 8 * Math.max(0, Math.min(letters, 14) - 5);
}

/** The format numbers cycles up to here. */
export const mostCycle = 1_000_000;

/** Cycles up to here are all shown, also those without a reading; beyond it only those with one. Ours. */
const mostShown = 20_000;
/** A new sheet shows so many empty cycles. */
const fewestShown = 10;

/** The numbers of the cycles that the table shows: of a record its own, else from 1 to one more than the last. */
export function gridCycles(kind: TimeStudy['source']['kind'], cycles: readonly number[]): readonly number[] {
  if (kind === 'record') return cycles;
  const last = cycles.at(-1) ?? 0;
  if (last > mostShown) return last < mostCycle ? [...cycles, last + 1] : cycles;
  return Array.from({ length: Math.max(last + 1, fewestShown) }, (_, index) => index + 1);
}

export interface Window {
  readonly from: number;
  /** Not counted itself. */
  readonly to: number;
}

/** Which of `count` equal pieces lie in the seen stretch, with a few on either side. */
export function windowOf(start: number, room: number, size: number, count: number, beside = 4): Window {
  const from = Math.max(0, Math.min(count, Math.floor(start / size) - beside));
  const to = Math.max(from, Math.min(count, Math.ceil((start + room) / size) + beside));
  return { from, to };
}

/** Where to scroll so that a piece is seen: no further than needed. */
export function scrollTo(start: number, room: number, from: number, to: number): number {
  if (from < start) return from;
  return to > start + room ? Math.max(0, to - room) : start;
}

export type LineKind = 'time' | 'rating';

/** A line of the table: the times of an element, or beneath them their ratings. */
export interface GridLine {
  readonly element: number;
  readonly kind: LineKind;
  readonly top: number;
  readonly height: number;
}

export function gridLines(
  elements: readonly { readonly work: 'worker' | 'process' | 'inside' }[],
  ratings: boolean,
): readonly GridLine[] {
  const lines: GridLine[] = [];
  let top = 0;
  elements.forEach(({ work }, element) => {
    lines.push({ element, kind: 'time', top, height: gridSize.time });
    top += gridSize.time;
    if (!ratings || work === 'process') return;
    lines.push({ element, kind: 'rating', top, height: gridSize.rating });
    top += gridSize.rating;
  });
  return lines;
}

export interface Cursor {
  /** Position in the lines. */
  readonly line: number;
  /** Position in the cycles. */
  readonly column: number;
}

export type Move =
  | 'left'
  | 'right'
  | 'up'
  | 'down'
  | 'next'
  | 'before'
  | 'row-start'
  | 'row-end'
  | 'first'
  | 'last'
  | 'page-right'
  | 'page-left';

/**
 * Where a key leads. `next` and `before` go down and up the elements of the line's own kind and on to the next cycle at
 * the end, as readings are taken.
 */
export function moved(
  cursor: Cursor,
  move: Move,
  lines: readonly GridLine[],
  columns: number,
  page: number,
): Cursor {
  const { line, column } = cursor;
  const within = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));
  const at = (nextLine: number, nextColumn: number): Cursor => ({
    line: within(nextLine, lines.length),
    column: within(nextColumn, columns),
  });
  switch (move) {
    case 'left':
      return at(line, column - 1);
    case 'right':
      return at(line, column + 1);
    case 'up':
      return at(line - 1, column);
    case 'down':
      return at(line + 1, column);
    case 'row-start':
      return at(line, 0);
    case 'row-end':
      return at(line, columns - 1);
    case 'first':
      return at(0, 0);
    case 'last':
      return at(lines.length - 1, columns - 1);
    case 'page-right':
      return at(line, column + page);
    case 'page-left':
      return at(line, column - page);
    default:
      return alongElements(cursor, move === 'next' ? 1 : -1, lines, columns);
  }
}

function alongElements(
  { line, column }: Cursor,
  step: 1 | -1,
  lines: readonly GridLine[],
  columns: number,
): Cursor {
  const kind = lines[line]?.kind ?? 'time';
  const same = lines.flatMap((each, index) => (each.kind === kind ? [index] : []));
  const place = same.indexOf(line) + step;
  const here = same[place];
  if (here !== undefined) return { line: here, column };
  const over = column + step;
  if (over < 0 || over >= columns) return { line, column };
  return { line: (step > 0 ? same[0] : same.at(-1)) ?? line, column: over };
}
