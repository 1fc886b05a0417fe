import type { BoundOrReason, Trace, Variation } from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import {
  numberText,
  percentText,
  type TimeUnit,
  timeNumber,
  timeText,
  timeUnits,
} from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { FigureBlock } from './figure-block.tsx';
import { inPlot, none, sampleInterval, unitHead } from './figure-text.ts';
import type { PlotMaker } from './plot-view.tsx';
import type { SectionProps } from './section.ts';
import type { TableData } from './table-text.ts';

/** How long the cycles last, one after another, with their mean and two bounds of practice. */
export function CyclesSection(props: SectionProps & { readonly variation: Variation }) {
  const { variation, unit, onTrace, open } = props;
  const plot = useMemo(() => runPlot(props.reading, variation, unit), [props.reading, variation, unit]);
  const tables = useMemo(
    () => [summaryTable(variation, unit), cyclesTable(props.reading, unit)],
    [props.reading, variation, unit],
  );
  const { sample } = variation.cycles;
  const several = sample.n > 1;
  return (
    <>
      <FigureBlock
        title="Cycle times"
        plot={several ? plot : undefined}
        tables={tables}
        onTrace={onTrace}
        open={open}
      >
        <p>
          {several
            ? `Mean of ${sample.n} cycles ${time(sample.mean, unit)}, deviation ${time(sample.deviation ?? 0, unit)} (${percentText(sample.variation ?? 0)} of the mean), 95 % interval of the mean ${sampleInterval('time', sample, unit)} ${timeUnits[unit].symbol} (the band).`
            : `One cycle of ${time(sample.mean, unit)}; a mean, its spread and bounds of practice need more than one.`}
        </p>
      </FigureBlock>
      {several ? (
        <section className="figure-block" aria-label="Two bounds of practice">
          <header>
            <h3>Two bounds of practice</h3>
          </header>
          <Bound name="Best complete cycle" bound={variation.best} unit={unit} onTrace={onTrace} />
          <Bound name="Cycle of lower quartiles" bound={variation.quartiles} unit={unit} onTrace={onTrace} />
        </section>
      ) : null}
    </>
  );
}

function time(value: number, unit: TimeUnit): string {
  return timeText(roundMicros(value), unit);
}

function Bound(props: {
  readonly name: string;
  readonly bound: BoundOrReason;
  readonly unit: TimeUnit;
  readonly onTrace: (traces: readonly Trace[]) => void;
}) {
  const { bound, reason } = props.bound;
  if (bound === undefined) {
    return (
      <p>
        <strong>{props.name}:</strong> none. {reason}
      </p>
    );
  }
  return (
    <p>
      <strong>
        {props.name}: {timeText(bound.time, props.unit)}.
      </strong>{' '}
      {bound.words}{' '}
      <button type="button" className="quiet" onClick={() => props.onTrace(bound.traces)}>
        Show it
      </button>
    </p>
  );
}

const plotHeight = 190;
const margins = { marginTop: 14, marginBottom: 34, marginLeft: 46, marginRight: 150 } as const;

function runPlot({ cycles }: SectionProps['reading'], variation: Variation, unit: TimeUnit): PlotMaker {
  const place = (micros: number) => inPlot(micros, unit);
  const points = cycles.map((cycle) => ({
    x: cycle.number,
    y: place(cycle.duration),
    words: `cycle ${cycle.number}: ${timeText(cycle.duration, unit)}`,
    traces: () => [{ cycle: cycle.position, hand: 'both' as const, from: cycle.from, to: cycle.to }],
  }));
  const lines = linesOf(variation, unit);
  const { interval } = variation.cycles.sample;
  const band = interval === undefined ? [] : [{ low: place(interval.low), high: place(interval.high) }];
  const domain = roomy([
    ...points.map(({ y }) => y),
    ...lines.map(({ value }) => value),
    ...band.flatMap(({ low, high }) => [low, high]),
  ]);
  const gap = ((domain[1] - domain[0]) * 14) / (plotHeight - margins.marginTop - margins.marginBottom);
  const labels = spreadValues(
    lines.map(({ value }) => value),
    gap,
  );
  const first = points[0]?.x ?? 0;
  return (plot, width, hit) => ({
    height: plotHeight,
    ...margins,
    x: {
      label: 'cycle',
      labelAnchor: 'center',
      labelArrow: 'none',
      tickFormat: (value: number) => (Number.isInteger(value) ? `${value}` : ''),
      ticks: Math.min(points.length, Math.max(2, Math.floor((width - 200) / 40))),
      ...(points.length > 1 ? { inset: 8 } : { domain: [first - 1, first + 1] }),
    },
    y: { domain, label: timeUnits[unit].symbol, labelArrow: 'none', ticks: 5 },
    marks: [
      plot.rect(band, { y1: 'low', y2: 'high', fill: 'var(--band)' }),
      ...lines.map(({ value, dash }) =>
        plot.ruleY([value], { stroke: 'var(--ink)', strokeWidth: 1, strokeDasharray: dash }),
      ),
      plot.text(lines, {
        y: (_line: unknown, index: number) => labels[index] ?? 0,
        frameAnchor: 'right',
        dx: 6,
        textAnchor: 'start',
        text: 'words',
      }),
      plot.line(points, { x: 'x', y: 'y', stroke: 'var(--soft)', strokeWidth: 1 }),
      points.length > 200
        ? null
        : plot.dot(points, {
            x: 'x',
            y: 'y',
            r: 3.2,
            fill: 'var(--paper)',
            stroke: 'var(--ink)',
            title: 'words',
            render: hit(points.map(({ traces }) => traces)),
          }),
    ],
  });
}

/** The mean and the bounds, those that there are, as lines across the plot. */
function linesOf({ cycles, best, quartiles }: Variation, unit: TimeUnit) {
  const line = (name: string, micros: number, dash: string) => ({
    value: inPlot(micros, unit),
    words: `${name} ${timeText(roundMicros(micros), unit)}`,
    dash,
  });
  return [
    ...(cycles.sample.n > 1 ? [line('mean', cycles.sample.mean, 'none')] : []),
    ...(best.bound === undefined ? [] : [line('best complete', best.bound.time, '6 3')]),
    ...(quartiles.bound === undefined ? [] : [line('lower quartiles', quartiles.bound.time, '2 3')]),
  ];
}

/** From the least to the most with a tenth of room at both ends; never empty. */
function roomy(values: readonly number[]): readonly [number, number] {
  const least = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const room = most > least ? (most - least) * 0.1 : Math.max(Math.abs(most) * 0.1, 1e-6);
  return [Math.max(0, least - room), most + room];
}

/** Values moved upwards, in their order, until each stands the gap above the one below it. */
export function spreadValues(values: readonly number[], gap: number): readonly number[] {
  const found = [...values];
  const order = values.map((_, index) => index).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  let floor = Number.NEGATIVE_INFINITY;
  for (const index of order) {
    const placed = Math.max(values[index] ?? 0, floor);
    found[index] = placed;
    floor = placed + gap;
  }
  return found;
}

function summaryTable({ cycles, best, quartiles }: Variation, unit: TimeUnit): TableData {
  const { sample, least, lowerQuartile, median, upperQuartile, most } = cycles;
  const text = (value: number | undefined) =>
    value === undefined ? none : timeNumber(roundMicros(value), unit);
  const symbol = timeUnits[unit].symbol;
  const row = (name: string, value: string, traces?: () => readonly Trace[]) => ({
    key: name,
    cells: [name, value],
    traces,
  });
  const share = sample.variation === undefined ? none : numberText(sample.variation * 100, 1);
  return {
    caption: 'Length of a cycle, summed up',
    columns: [{ head: 'Figure' }, { head: 'value', number: true }],
    rows: [
      row('cycles', `${sample.n}`),
      row(`mean, ${symbol}`, text(sample.mean)),
      row(`standard deviation, ${symbol}`, text(sample.deviation)),
      row('coefficient of variation, %', share),
      row(`95 % interval of the mean, ${symbol}`, sampleInterval('time', sample, unit)),
      row(`shortest, ${symbol}`, text(least)),
      row(`lower quartile, ${symbol}`, text(lowerQuartile)),
      row(`median, ${symbol}`, text(median)),
      row(`upper quartile, ${symbol}`, text(upperQuartile)),
      row(`longest, ${symbol}`, text(most)),
      boundRow(`best complete cycle, ${symbol}`, best),
      boundRow(`cycle of lower quartiles, ${symbol}`, quartiles),
    ],
  };

  function boundRow(name: string, { bound }: BoundOrReason) {
    return row(name, text(bound?.time), bound === undefined ? undefined : () => bound.traces);
  }
}

function cyclesTable({ cycles }: SectionProps['reading'], unit: TimeUnit): TableData {
  return {
    caption: 'Length of each cycle',
    columns: [
      { head: 'Cycle' },
      { head: unitHead('time', unit), number: true },
      { head: 'motions, left', number: true },
      { head: 'motions, right', number: true },
    ],
    rows: cycles.map((cycle) => ({
      key: `${cycle.position}`,
      cells: [
        cycle.number === 0 ? 'whole record' : `${cycle.number}`,
        timeNumber(cycle.duration, unit),
        ...([cycle.left, cycle.right] as const).map(
          (pieces) => `${pieces.filter(({ kind, cut }) => kind !== 'unmarked' && !cut).length}`,
        ),
      ],
      traces: () => [{ cycle: cycle.position, hand: 'both' as const, from: cycle.from, to: cycle.to }],
    })),
  };
}
