import type { ElementVariation, Trace, Variation } from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { countText, numberText, timeNumber, timeText, timeUnits } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { FindingsList } from '../../shell/findings-list.tsx';
import { FigureBlock } from './figure-block.tsx';
import { inPlot, none, sampleInterval } from './figure-text.ts';
import type { SectionProps } from './section.ts';
import { type StripRow, stripPlot } from './strip-plot.ts';
import type { TableData } from './table-text.ts';

/** More rows than this make no picture; the table has them all. */
const mostRows = 60;

/** How the cycles differ: each element over the cycles, and the cycles with motions that the others lack. */
export function VariationSection(props: SectionProps & { readonly variation: Variation }) {
  if (props.reading.cycles.length > 1) return <Compared {...props} />;
  return (
    <p className="figure-block">
      One cycle says nothing about variation: mark more cycles of the method to see it.
    </p>
  );
}

function Compared(props: SectionProps & { readonly variation: Variation }) {
  const { variation, unit, onTrace, open, reading } = props;
  const { elements, basis } = variation;
  const plot = useMemo(
    () =>
      stripPlot(
        elements.slice(0, mostRows).map((element, index) => stripOf(element, index, reading, unit)),
        unit,
      ),
    [elements, reading, unit],
  );
  const what = basis === 'elements' ? 'Element' : 'Motion';
  const title =
    basis === 'elements' ? 'Elements over the cycles' : 'Motions of the typical cycle over the cycles';
  const table = useMemo(() => elementsTable(title, what, elements, unit), [title, what, elements, unit]);
  const tables = useMemo(
    () => [patternsTable(variation, unit), deviationsTable(variation, reading, unit)],
    [variation, reading, unit],
  );
  return (
    <>
      <FigureBlock title={title} plot={plot} tables={[table]} onTrace={onTrace} open={open}>
        <p>
          A dot is a cycle, the bar reaches from the lower to the upper quartile, the line in it is the mean.
          {elements.length > mostRows ? ` The plot shows the first ${mostRows} of ${elements.length}.` : ''}
        </p>
      </FigureBlock>
      <FigureBlock
        title="Cycles that differ from the typical one"
        tables={variation.deviations.length === 0 ? [] : tables}
        onTrace={onTrace}
        open={open}
      >
        <p>
          {variation.deviations.length === 0
            ? 'No cycle has motions that the typical one lacks, or lacks motions of it.'
            : `${countText(variation.deviations.length, 'place')} where a cycle differs. The names describe motions; they say nothing about causes or persons.`}
        </p>
        <details>
          <summary>How cycles are compared</summary>
          <p className="soft">{variation.rule}</p>
          {(['left', 'right'] as const).map((hand) => (
            <p key={hand} className="soft">
              {hand === 'left' ? 'Left' : 'Right'} hand:{' '}
              {variation.typical[hand]?.words ?? 'nothing to compare.'}
            </p>
          ))}
          {variation.findings.length === 0 ? null : <FindingsList findings={variation.findings} />}
        </details>
      </FigureBlock>
    </>
  );
}

function nameOf({ name, hand }: ElementVariation): string {
  return hand === 'both' ? name : `${hand === 'left' ? 'L' : 'R'} ${name}`;
}

function stripOf(
  element: ElementVariation,
  index: number,
  { cycles }: SectionProps['reading'],
  unit: SectionProps['unit'],
): StripRow {
  const { spread, times, traces } = element;
  const place = (micros: number | undefined) => (micros === undefined ? undefined : inPlot(micros, unit));
  const byCycle = new Map(traces.map((trace) => [trace.cycle, trace]));
  return {
    key: `${index}`,
    label: nameOf(element),
    middle: place(spread?.sample.mean),
    low: place(spread?.lowerQuartile),
    high: place(spread?.upperQuartile),
    words:
      spread === undefined
        ? element.name
        : `${element.name}: mean ${timeText(roundMicros(spread.sample.mean), unit)} of ${countText(spread.sample.n, 'cycle')}`,
    traces: () => traces,
    dots: times.flatMap((time, position) => {
      const trace = byCycle.get(position);
      if (time === undefined) return [];
      return [
        {
          value: inPlot(time, unit),
          words: `${element.name}, cycle ${cycles[position]?.number ?? 0}: ${timeText(time, unit)}`,
          traces: trace === undefined ? undefined : (): readonly Trace[] => [trace],
        },
      ];
    }),
  };
}

function elementsTable(
  caption: string,
  what: string,
  elements: readonly ElementVariation[],
  unit: SectionProps['unit'],
): TableData {
  const symbol = timeUnits[unit].symbol;
  const text = (value: number | undefined) =>
    value === undefined ? none : timeNumber(roundMicros(value), unit);
  return {
    caption: `${caption}, ${symbol}`,
    columns: [
      { head: what },
      { head: 'Hand' },
      ...[
        'cycles',
        'mean',
        'deviation',
        'variation, %',
        '95 % interval of the mean',
        'least',
        'lower quartile',
        'median',
        'upper quartile',
        'most',
      ].map((head) => ({ head, number: true })),
    ],
    rows: elements.map(({ name, hand, spread, traces }, index) => {
      const sample = spread?.sample;
      return {
        key: `${index} ${name}`,
        cells: [
          name,
          hand,
          `${sample?.n ?? 0}`,
          text(sample?.mean),
          text(sample?.deviation),
          sample?.variation === undefined ? none : numberText(sample.variation * 100, 1),
          sampleInterval('time', sample, unit),
          text(spread?.least),
          text(spread?.lowerQuartile),
          text(spread?.median),
          text(spread?.upperQuartile),
          text(spread?.most),
        ],
        traces: traces.length === 0 ? undefined : () => traces,
      };
    }),
  };
}

function patternsTable({ patterns, deviations }: Variation, unit: SectionProps['unit']): TableData {
  return {
    caption: 'What the differences look like',
    columns: [
      { head: 'Pattern' },
      { head: 'number', number: true },
      { head: 'cycles' },
      { head: `${timeUnits[unit].symbol} in all`, number: true },
    ],
    rows: patterns.map(({ pattern, name, count, cycles, time }) => ({
      key: pattern,
      cells: [name, `${count}`, cycles.join(', '), timeNumber(time, unit)],
      traces: () => deviations.filter((item) => item.pattern === pattern).map(({ trace }) => trace),
    })),
  };
}

function deviationsTable(
  { deviations }: Variation,
  { cycles }: SectionProps['reading'],
  unit: SectionProps['unit'],
): TableData {
  return {
    caption: 'Each difference',
    columns: [
      { head: 'What is seen' },
      { head: 'Cycle', number: true },
      { head: 'Hand' },
      { head: timeUnits[unit].symbol, number: true },
    ],
    rows: deviations.map(({ words, cycle, hand, time, trace, extra }, index) => ({
      key: `${index}`,
      cells: [words, `${cycles[cycle]?.number ?? 0}`, hand, timeNumber(time, unit)],
      traces: () => [trace],
      kinds: extra.map(({ kind }) => motionFactsOf(kind).kind),
    })),
  };
}
