import type { Trace } from '@evenhand/core/examine';
import type { Hand } from '@evenhand/core/ground/study';
import { numberText, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import type { PlotMaker } from './plot-view.tsx';

/** A bar to the left or to the right of the middle. */
export interface HandBar {
  readonly label: string;
  readonly hand: Hand;
  /** In the unit of the plot, 0 or more. */
  readonly value: number;
  /** Confidence interval of the mean; undefined with one cycle. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** A motion's colour; left out: ink. */
  readonly colour?: string | undefined;
  readonly words: string;
  readonly traces: () => readonly Trace[];
}

/** Bars of the left hand to the left, of the right hand to the right, one row for each label, so that balance is seen. */
export function mirroredBars(
  bars: readonly HandBar[],
  labels: readonly string[],
  unit: TimeUnit,
  most = longest(bars),
): PlotMaker {
  const shown = bars.filter((bar) => bar.value > 0);
  const side = (bar: HandBar) => (bar.hand === 'left' ? -1 : 1);
  const traces = shown.map((bar) => bar.traces);
  const ranged = shown.filter((bar) => bar.low !== undefined && bar.high !== undefined);
  const left = labelRoom(labels);
  return (plot, width, hit) => ({
    height: 56 + 20 * labels.length,
    marginLeft: left,
    marginRight: 12,
    marginTop: 22,
    marginBottom: 34,
    x: { domain: [-most, most], label: null },
    y: { domain: [...labels], label: null, padding: 0.25 },
    marks: [
      plot.axisY({ tickSize: 0, tickPadding: 8, tickFormat: (label: string) => cut(label) }),
      plot.axisX({
        anchor: 'bottom',
        tickSize: 3,
        label: `${timeUnits[unit].symbol} a cycle`,
        labelAnchor: 'right',
        labelArrow: 'none',
        ticks: Math.max(3, Math.floor((width - left) / 60)),
        tickFormat: (value: number) => `${Math.abs(value)}`,
      }),
      plot.text([-most / 2, most / 2], {
        x: (value) => value,
        frameAnchor: 'top',
        dy: -18,
        text: (value) => (value < 0 ? 'left hand' : 'right hand'),
        className: 'head',
      }),
      plot.barX(shown, {
        x1: 0,
        x2: (bar) => side(bar) * bar.value,
        y: 'label',
        fill: (bar) => bar.colour ?? 'var(--bar)',
        stroke: 'var(--soft)',
        strokeWidth: 0.75,
        title: 'words',
        render: hit(traces),
      }),
      plot.ruleY(ranged, {
        x1: (bar) => side(bar) * Math.max(0, bar.low),
        x2: (bar) => side(bar) * bar.high,
        y: 'label',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
      plot.ruleY(ranged, {
        x1: (bar) => side(bar) * Math.max(0, bar.low),
        x2: (bar) => side(bar) * bar.high,
        y: 'label',
        stroke: 'var(--ink)',
        strokeWidth: 1.5,
      }),
      plot.ruleX([0], { stroke: 'var(--ink)' }),
    ],
  });
}

function longest(bars: readonly HandBar[]): number {
  const most = bars.reduce((found, bar) => Math.max(found, bar.value, bar.high ?? 0), 0);
  return most > 0 ? most : 1;
}

const mostLetters = 22;

/** A label that leaves the plot its room. */
export function cut(label: string): string {
  return label.length > mostLetters ? `${label.slice(0, mostLetters - 1)}…` : label;
}

export function labelRoom(labels: readonly string[]): number {
  const letters = labels.reduce((most, label) => Math.max(most, Math.min(mostLetters, label.length)), 4);
  return Math.ceil(letters * 6.1) + 14;
}

/** "1.25 s a cycle" for what a pointer rests on. */
export function plotValue(value: number, unit: TimeUnit): string {
  return `${numberText(value, timeUnits[unit].decimals)} ${timeUnits[unit].symbol} a cycle`;
}
