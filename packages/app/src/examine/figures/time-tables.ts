import type { CyclePart, Figure, Figures, TimeRow } from '@evenhand/core/examine';
import type { MotionKind } from '@evenhand/core/ground/tables';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { deviationText, figureText, inPlot, intervalText, unitHead } from './figure-text.ts';
import { type HandBar, mirroredBars, plotValue } from './mirrored-bars.ts';
import type { PlotMaker } from './plot-view.tsx';
import type { Column, TableData, TableRow } from './table-text.ts';

export interface TableLook {
  readonly unit: TimeUnit;
  /** Number of cycles: with one there is no spread. */
  readonly cycles: number;
}

/** Columns of a time with its spread, and their texts. */
export function timeColumns({ unit, cycles }: TableLook): readonly Column[] {
  const spread: Column[] = [
    { head: 'deviation', number: true },
    { head: '95 % interval of the mean', number: true },
  ];
  return [{ head: unitHead('time', unit), number: true }, ...(cycles >= 2 ? spread : [])];
}

/** Something that never happened cannot be seen. */
function tracesWithTime({ time, traces }: Pick<CyclePart, 'time' | 'traces'>): TableRow['traces'] {
  return (time.value ?? 0) > 0 ? traces : undefined;
}

export function timeCells(figure: Figure, { unit, cycles }: TableLook): readonly string[] {
  const spread = [deviationText(figure, unit), intervalText(figure, unit)];
  return [figureText(figure, unit), ...(cycles >= 2 ? spread : [])];
}

/** "Time by motion, means of 6 cycles". */
export function withCount(caption: string, { cycles }: TableLook): string {
  return cycles >= 2 ? `${caption}, means of ${cycles} cycles` : `${caption}, one cycle`;
}

export interface NamedRow extends TimeRow {
  readonly name: string;
  readonly colour?: string | undefined;
  readonly kind?: MotionKind | undefined;
}

export const handWords = { left: 'left', right: 'right', both: 'both' } as const;

/** Number, time, spread and share, a row for each thing and hand. */
export function timeTable(
  caption: string,
  what: string,
  rows: readonly NamedRow[],
  look: TableLook,
): TableData {
  return {
    caption: withCount(caption, look),
    columns: [
      { head: what },
      { head: 'Hand' },
      { head: 'times a cycle', number: true },
      ...timeColumns(look),
      { head: '% of marked time', number: true },
    ],
    rows: rows.map(
      (row): TableRow => ({
        key: `${row.hand} ${row.name}`,
        cells: [
          row.name,
          handWords[row.hand],
          figureText(row.count, look.unit),
          ...timeCells(row.time, look),
          figureText(row.share, look.unit),
        ],
        traces: tracesWithTime(row),
        kinds: row.kind === undefined ? undefined : [row.kind],
      }),
    ),
  };
}

/** The same as mirrored bars, the longest first. */
export function timePlot(rows: readonly NamedRow[], unit: TimeUnit): PlotMaker {
  const sums = new Map<string, number>();
  const bars = rows.flatMap((row): HandBar[] => {
    if (row.hand === 'both' || row.time.value === undefined) return [];
    sums.set(row.name, (sums.get(row.name) ?? 0) + row.time.value);
    return [barOf(row, row.hand, row.time.value, unit)];
  });
  const labels = [...sums]
    .filter(([, sum]) => sum > 0)
    .sort((a, b) => b[1] - a[1])
    .map(([name]) => name);
  return mirroredBars(bars, labels.slice(0, mostBars), unit);
}

/** More things than this make no picture; the table has them all. */
export const mostBars = 30;

function barOf(row: NamedRow, hand: 'left' | 'right', value: number, unit: TimeUnit): HandBar {
  const interval = row.time.sample?.interval;
  return {
    label: row.name,
    hand,
    value: inPlot(value, unit),
    low: interval === undefined ? undefined : inPlot(interval.low, unit),
    high: interval === undefined ? undefined : inPlot(interval.high, unit),
    colour: row.colour,
    words: `${row.name}, ${hand} hand: ${plotValue(inPlot(value, unit), unit)}, ${figureText(row.share, unit)} % of its marked time`,
    traces: row.traces,
  };
}

/** Time and share of the cycle, a row for each part. */
export function partsTable(
  caption: string,
  what: string,
  parts: readonly (CyclePart & { readonly name: string })[],
  look: TableLook,
): TableData {
  return {
    caption: withCount(caption, look),
    columns: [{ head: what }, ...timeColumns(look), { head: '% of the cycle', number: true }],
    rows: parts.map(
      (part): TableRow => ({
        key: part.name,
        cells: [part.name, ...timeCells(part.time, look), figureText(part.share, look.unit)],
        traces: tracesWithTime(part),
      }),
    ),
  };
}

export function paceTable({ pace }: Figures, { unit, cycles }: TableLook): TableData {
  return {
    caption: withCount('Motions that begin in a cycle, and motions a minute of marked time', {
      unit,
      cycles,
    }),
    columns: [
      { head: 'Hand' },
      { head: 'a cycle', number: true },
      ...(cycles >= 2
        ? [
            { head: 'deviation', number: true },
            { head: '95 % interval of the mean', number: true },
          ]
        : []),
      { head: 'a minute', number: true },
    ],
    rows: pace.map((row) => ({
      key: row.hand,
      cells: [
        row.hand,
        figureText(row.aCycle, unit),
        ...(cycles >= 2 ? [deviationText(row.aCycle, unit), intervalText(row.aCycle, unit)] : []),
        figureText(row.aMinute, unit),
      ],
      traces: row.traces,
    })),
  };
}

export function plotted(micros: number | undefined, unit: TimeUnit): number | undefined {
  return micros === undefined ? undefined : inPlot(micros, unit);
}
