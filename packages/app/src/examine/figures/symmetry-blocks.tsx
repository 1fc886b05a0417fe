import { type Figure, type Meeting, stateOf, type Trace } from '@evenhand/core/examine';
import { percentText, timeText, timeUnits } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { FigureBlock } from './figure-block.tsx';
import { deviationText, figureText, inPlot, intervalText, none, unitHead, valueText } from './figure-text.ts';
import { lagPlot } from './lag-plot.ts';
import { curveTable, lagTable, lagWords } from './lag-tables.ts';
import type { SectionProps } from './section.ts';
import { type StripRow, stripPlot } from './strip-plot.ts';
import type { TableData } from './table-text.ts';
import { handWords, plotted } from './time-tables.ts';

interface NamedFigure {
  readonly name: string;
  readonly figure: Figure;
  readonly traces: () => readonly Trace[];
}

/** How evenly the work lies on the hands. */
export function BalanceBlock({ figures, unit, onTrace, open, reading }: SectionProps) {
  const { balance } = figures;
  const rows: readonly NamedFigure[] = [
    { name: 'work, left less right', figure: balance.difference, traces: balance.traces },
  ];
  const plot = useMemo(() => {
    const difference = { name: 'left less right', figure: balance.difference, traces: balance.traces };
    return stripPlot(figureStrips([difference], reading, unit), unit);
  }, [balance, reading, unit]);
  const ratio = { name: 'less loaded ÷ more loaded hand', figure: balance.ratio, traces: balance.traces };
  const table = figuresTable('Balance of the hands', [...rows, ratio], unit);
  return (
    <FigureBlock title="Balance of the hands" plot={plot} tables={[table]} onTrace={onTrace} open={open}>
      <p>
        Working time of the hand that works less ÷ that of the other:{' '}
        <strong>{figureText(balance.ratio, unit)}</strong> (1 is even, 0 is one hand alone). A dot is a cycle;
        left of 0 the right hand works more.
      </p>
    </FigureBlock>
  );
}

/** Whether the hands begin and end together. */
export function TogetherInTimeBlock({ figures, unit, onTrace, open, reading }: SectionProps) {
  const { begin, end, tolerance } = figures.beginEnd;
  const gaps = useMemo(
    (): readonly NamedFigure[] => [
      { name: 'between the beginnings', figure: begin.gap, traces: begin.traces },
      { name: 'between the ends', figure: end.gap, traces: end.traces },
    ],
    [begin, end],
  );
  const plot = useMemo(() => stripPlot(figureStrips(gaps, reading, unit), unit), [gaps, reading, unit]);
  const tables = [
    figuresTable('Between the first beginnings and the last ends of work of the hands', gaps, unit),
    meetingTable(begin, end, unit),
  ];
  const cycles = ({ cycles: { within, of } }: Meeting) => `${within} of ${of}`;
  return (
    <FigureBlock title="Begun and ended together" plot={plot} tables={tables} onTrace={onTrace} open={open}>
      <p>
        Work begins together in {cycles(begin)} cycles and ends together in {cycles(end)}: within{' '}
        {timeText(tolerance, unit)} of each other.
      </p>
    </FigureBlock>
  );
}

function meetingTable(begin: Meeting, end: Meeting, unit: SectionProps['unit']): TableData {
  const rows = [['begin', begin] as const, ['end', end] as const].flatMap(([word, meeting]) =>
    meeting.motions.flatMap((row) => [
      {
        key: `${word} ${row.hand}`,
        cells: [
          `${word} together`,
          handWords[row.hand],
          `${row.within}`,
          `${row.of}`,
          figureText(row.share, unit),
        ],
        traces: row.traces,
      },
      {
        key: `${word} ${row.hand} apart`,
        cells: [
          `${word} apart`,
          handWords[row.hand],
          `${row.of - row.within}`,
          `${row.of}`,
          row.share.value === undefined ? none : valueText('share', 1 - row.share.value, unit),
        ],
        traces: row.apart,
      },
    ]),
  );
  return {
    caption: 'Working motions that begin or end with one of the other hand',
    columns: [
      { head: 'Motions that' },
      { head: 'Hand' },
      { head: 'number', number: true },
      { head: 'of', number: true },
      { head: '%', number: true },
    ],
    rows,
  };
}

/** Every how many lags the table of the page has a row. */
const everyLag = 10;

/** The same motion in both hands at once, and with one of the rows moved against the other. */
export function SameMotionBlock({ figures, unit, onTrace, open }: SectionProps) {
  const { lag, share, workShare } = figures.sameMotion;
  const plot = useMemo(() => (lag === undefined ? undefined : lagPlot(lag, unit)), [lag, unit]);
  const tables = useMemo(() => sameTables(figures, unit, everyLag), [figures, unit]);
  const copied = useMemo(() => sameTables(figures, unit, 1), [figures, unit]);
  const percent = ({ value }: Figure) => (value === undefined ? none : percentText(value));
  return (
    <FigureBlock
      title="The same motion in both hands"
      plot={plot}
      tables={tables}
      copied={copied}
      onTrace={onTrace}
      open={open}
    >
      <p>
        Both hands do the same motion in {percent(share)} of the time marked in both, and the same work in{' '}
        {percent(workShare)} of the time in which both work.
        {lag === undefined ? '' : ` ${lagWords(lag, unit)}`}
      </p>
    </FigureBlock>
  );
}

function sameTables(
  { sameMotion, overlap }: SectionProps['figures'],
  unit: SectionProps['unit'],
  step: number,
): readonly TableData[] {
  const { share, workShare, lag, traces } = sameMotion;
  const sameWork = overlap.cells.filter(({ left, right }) => left === right && stateOf(left) === 'working');
  const shares = figuresTable(
    'The same motion in both hands',
    [
      { name: 'share of the time marked in both', figure: share, traces },
      {
        name: 'share of the time in which both work',
        figure: workShare,
        traces: () => sameWork.flatMap((cell) => cell.traces()),
      },
    ],
    unit,
  );
  return lag === undefined ? [shares] : [shares, lagTable(lag, unit), curveTable(lag, unit, step)];
}

/** Figures as rows of dots, one for each cycle that has a value, with the interval of their mean. */
function figureStrips(
  figures: readonly NamedFigure[],
  { cycles }: SectionProps['reading'],
  unit: SectionProps['unit'],
): readonly StripRow[] {
  const symbol = timeUnits[unit].symbol;
  return figures.map(({ name, figure, traces }) => {
    const interval = figure.sample?.interval;
    return {
      key: name,
      label: name,
      middle: plotted(figure.value, unit),
      low: plotted(interval?.low, unit),
      high: plotted(interval?.high, unit),
      words: `${name}: mean ${figureText(figure, unit)} ${symbol}, 95 % interval ${intervalText(figure, unit)}`,
      traces,
      dots: figure.perCycle().flatMap((value, position) => {
        const cycle = cycles[position];
        if (value === undefined || cycle === undefined) return [];
        const trace: Trace = { cycle: position, hand: 'both', from: cycle.from, to: cycle.to };
        return [
          {
            value: inPlot(value, unit),
            words: `cycle ${cycle.number}: ${valueText('time', value, unit)} ${symbol}`,
            traces: () => [trace],
          },
        ];
      }),
    };
  });
}

function figuresTable(
  caption: string,
  figures: readonly NamedFigure[],
  unit: SectionProps['unit'],
): TableData {
  return {
    caption,
    columns: [
      { head: 'Figure' },
      { head: 'value', number: true },
      { head: 'deviation', number: true },
      { head: '95 % interval of the mean', number: true },
      { head: 'unit' },
    ],
    rows: figures.map(({ name, figure, traces }) => ({
      key: name,
      cells: [
        name,
        figureText(figure, unit),
        deviationText(figure, unit),
        intervalText(figure, unit),
        unitHead(figure.unit, unit),
      ],
      traces,
    })),
  };
}
