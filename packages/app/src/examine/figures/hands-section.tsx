import type { HandState, Together } from '@evenhand/core/examine';
import { percentText } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { FigureBlock } from './figure-block.tsx';
import { figureText, inPlot } from './figure-text.ts';
import { type HandBar, mirroredBars, plotValue } from './mirrored-bars.ts';
import { OverlapBlock } from './overlap-block.tsx';
import type { PlotMaker } from './plot-view.tsx';
import type { SectionProps } from './section.ts';
import { BalanceBlock, SameMotionBlock, TogetherInTimeBlock } from './symmetry-blocks.tsx';
import { partsTable } from './time-tables.ts';

/** What each hand does while the other one does something. */
export function HandsSection(props: SectionProps) {
  return (
    <>
      <States {...props} />
      <TogetherBlock {...props} />
      <OverlapBlock {...props} />
      <BalanceBlock {...props} />
      <TogetherInTimeBlock {...props} />
      <SameMotionBlock {...props} />
    </>
  );
}

const stateNames: Readonly<Record<HandState, string>> = {
  working: 'working',
  holding: 'holding',
  idle: 'waiting or idle',
  unmarked: 'not marked',
};
const stateInks: Readonly<Record<HandState, string>> = {
  working: 'var(--bar)',
  holding: 'var(--bar-middle)',
  idle: 'var(--bar-light)',
  unmarked: 'none',
};

function States({ figures, unit, onTrace, open, reading }: SectionProps) {
  const { states } = figures;
  const plot = useMemo(() => {
    const bars = states.map((row): HandBar => {
      const value = inPlot(row.time.value ?? 0, unit);
      const interval = row.time.sample?.interval;
      return {
        label: stateNames[row.state],
        hand: row.hand,
        value,
        low: interval === undefined ? undefined : inPlot(interval.low, unit),
        high: interval === undefined ? undefined : inPlot(interval.high, unit),
        colour: stateInks[row.state],
        words: `${row.hand} hand ${stateNames[row.state]}: ${plotValue(value, unit)}, ${figureText(row.share, unit)} % of the cycle`,
        traces: row.traces,
      };
    });
    const labels = Object.values(stateNames).filter((name) =>
      bars.some(({ label, value }) => label === name && value > 0),
    );
    return mirroredBars(bars, labels, unit);
  }, [states, unit]);
  const look = { unit, cycles: reading.cycles.length };
  const named = states.map((row) => ({ ...row, name: `${row.hand} hand ${stateNames[row.state]}` }));
  return (
    <FigureBlock
      title="What each hand does"
      plot={plot}
      tables={[partsTable('What each hand does', 'Hand and state', named, look)]}
      onTrace={onTrace}
      open={open}
    />
  );
}

function TogetherBlock({ figures, unit, onTrace, open, reading }: SectionProps) {
  const { together } = figures;
  const plot = useMemo(() => sharePlot(together, unit), [together, unit]);
  const look = { unit, cycles: reading.cycles.length };
  const title = 'What both hands do together';
  return (
    <FigureBlock
      title={title}
      plot={plot}
      tables={[partsTable(title, 'Together', together, look)]}
      onTrace={onTrace}
      open={open}
    />
  );
}

/** Bars of share of the cycle, longest first as the figures have them; parts that never occur are left out. */
function sharePlot(together: readonly Together[], unit: SectionProps['unit']): PlotMaker {
  const shown = together.filter(({ share }) => (share.value ?? 0) > 0);
  const bars = shown.map((row) => ({
    name: row.name,
    share: (row.share.value ?? 0) * 100,
    text: percentText(row.share.value ?? 0),
    words: `${row.name}: ${plotValue(inPlot(row.time.value ?? 0, unit), unit)}`,
  }));
  return (plot, _width, hit) => ({
    height: 30 + 20 * shown.length,
    marginLeft: 152,
    marginRight: 50,
    marginTop: 4,
    marginBottom: 24,
    x: { domain: [0, 100], label: null },
    y: { domain: bars.map(({ name }) => name), label: null, padding: 0.25 },
    marks: [
      plot.axisY({ tickSize: 0, tickPadding: 8 }),
      plot.axisX({ anchor: 'bottom', tickSize: 3, ticks: 5, tickFormat: (value: number) => `${value} %` }),
      plot.barX(bars, {
        x1: 0,
        x2: 'share',
        y: 'name',
        fill: 'var(--bar)',
        stroke: 'var(--soft)',
        strokeWidth: 0.75,
        title: 'words',
        render: hit(shown.map(({ traces }) => traces)),
      }),
      plot.text(bars, { x: 'share', y: 'name', text: 'text', dx: 4, textAnchor: 'start' }),
      plot.ruleX([0], { stroke: 'var(--ink)' }),
    ],
  });
}
