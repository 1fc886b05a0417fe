import type { LagAgreement } from '@evenhand/core/examine';
import { percentText, type TimeUnit, timeText, timeUnits } from '@evenhand/core/ground/units';
import { inPlot } from './figure-text.ts';
import type { PlotMaker } from './plot-view.tsx';

/** How well the rows agree when one is moved against the other, with the lag at which they agree best. */
export function lagPlot({ best, curve, reach }: LagAgreement, unit: TimeUnit): PlotMaker {
  const points = curve.map(({ lag, agreement }) => ({
    lag: inPlot(lag, unit),
    share: agreement === undefined ? Number.NaN : agreement * 100,
  }));
  const place = inPlot(best.lag, unit);
  const places = best.leads === 'right' ? [-place] : best.leads === 'either' ? [-place, place] : [place];
  const marks = places.map((lag) => ({
    lag,
    share: best.agreement * 100,
    words: `best: ${percentText(best.agreement)} at ${timeText(best.lag, unit)}`,
  }));
  const end = inPlot(reach, unit);
  return (plot, width, hit) => ({
    height: 160,
    marginLeft: 46,
    marginRight: 16,
    marginTop: 26,
    marginBottom: 36,
    x: {
      domain: [-end, end],
      label: `← right hand first      lag, ${timeUnits[unit].symbol}      left hand first →`,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: Math.max(3, Math.floor(width / 80)),
    },
    y: { domain: [0, 100], label: '% of the time alike', labelArrow: 'none', ticks: 3 },
    marks: [
      plot.ruleX([0], { stroke: 'var(--rule)' }),
      plot.ruleY([0], { stroke: 'var(--ink)' }),
      plot.line(points, { x: 'lag', y: 'share', stroke: 'var(--ink)', strokeWidth: 1.25 }),
      plot.dot(best.agreement > 0 ? marks : [], {
        x: 'lag',
        y: 'share',
        r: 4,
        fill: 'var(--ink)',
        title: 'words',
        render: hit(marks.map(() => best.traces)),
      }),
      plot.text(best.agreement > 0 ? marks.slice(-1) : [], {
        x: 'lag',
        y: 'share',
        text: 'words',
        dy: -12,
        textAnchor: place > end / 2 && best.leads !== 'right' ? 'end' : 'middle',
      }),
    ],
  });
}
