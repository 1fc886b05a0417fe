import type { Trace } from '@evenhand/core/examine';
import { type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import { cut, labelRoom } from './mirrored-bars.ts';
import type { PlotMaker, TraceMaker } from './plot-view.tsx';

/** One dot: a value in one cycle. */
export interface StripDot {
  readonly value: number;
  readonly words: string;
  readonly traces: TraceMaker;
}

/** One row: a value over the cycles, its middle and a range around it. */
export interface StripRow {
  readonly key: string;
  readonly label: string;
  readonly dots: readonly StripDot[];
  readonly middle: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly words: string;
  readonly traces?: (() => readonly Trace[]) | undefined;
}

/** More dots than this in a row are a blot; the range and the middle stay. */
const mostDots = 60;

/** Rows of dots, one a cycle, over a range and a middle. Values are in the unit of the plot. */
export function stripPlot(rows: readonly StripRow[], unit: TimeUnit): PlotMaker {
  const labels = new Map(rows.map(({ key, label }) => [key, label]));
  const dots = rows.flatMap((row) =>
    row.dots.length > mostDots ? [] : row.dots.map((dot) => ({ ...dot, key: row.key })),
  );
  const ranges = rows.filter(({ low, high }) => low !== undefined && high !== undefined);
  const middles = rows.filter(({ middle }) => middle !== undefined);
  const left = labelRoom([...labels.values()]);
  const domain = domainOf(rows);
  return (plot, width, hit) => ({
    height: 46 + 19 * rows.length,
    marginLeft: left,
    marginRight: 14,
    marginTop: 8,
    marginBottom: 34,
    x: { domain: [...domain], label: null, nice: true },
    y: { domain: rows.map(({ key }) => key), label: null, padding: 0.3 },
    marks: [
      plot.axisY({
        tickSize: 0,
        tickPadding: 8,
        tickFormat: (key: string) => cut(labels.get(key) ?? key),
      }),
      plot.axisX({
        anchor: 'bottom',
        tickSize: 3,
        label: timeUnits[unit].symbol,
        labelAnchor: 'right',
        labelArrow: 'none',
        ticks: Math.max(3, Math.floor((width - left) / 60)),
      }),
      plot.ruleY(rows, { y: 'key', stroke: 'var(--rule)', strokeWidth: 0.5 }),
      plot.barX(ranges, {
        x1: 'low',
        x2: 'high',
        y: 'key',
        fill: 'var(--band)',
        title: 'words',
        render: hit(ranges.map(({ traces }) => traces)),
      }),
      plot.tickX(middles, { x: 'middle', y: 'key', stroke: 'var(--ink)', strokeWidth: 2 }),
      plot.dot(dots, {
        x: 'value',
        y: 'key',
        r: 2.6,
        fill: 'var(--paper)',
        stroke: 'var(--ink)',
        strokeWidth: 1,
        title: 'words',
        render: hit(dots.map(({ traces }) => traces)),
      }),
      plot.ruleX([0], { stroke: 'var(--soft)' }),
    ],
  });
}

/** From the least to the most of all that is drawn, with 0 in it; one unit long where everything is 0. */
export function domainOf(
  rows: readonly Pick<StripRow, 'dots' | 'middle' | 'low' | 'high'>[],
): readonly [number, number] {
  let [least, most] = [0, 0];
  for (const { dots, middle, low, high } of rows) {
    for (const value of [middle, low, high, ...dots.map((dot) => dot.value)]) {
      least = Math.min(least, value ?? 0);
      most = Math.max(most, value ?? 0);
    }
  }
  return least === most ? [0, 1] : [least, most];
}
