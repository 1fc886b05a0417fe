import type { PlotMaker } from '../../examine/figures/plot-view.tsx';
import type { PlainFront, PlainPoint } from './front-plain.ts';

/** Time for a unit against cost, or against the number of changes; each point with its interval. Lower and to the left is better. */
export function frontPlot({ base, points, axis }: PlainFront, currency: string): PlotMaker {
  const costOf = ({ cost, changes }: PlainPoint) => (axis === 'cost' ? (cost?.likely ?? 0) : changes.length);
  const rows = points.map((point, index) => ({
    cost: costOf(point),
    low: axis === 'cost' ? (point.cost?.low ?? 0) : costOf(point),
    high: axis === 'cost' ? (point.cost?.high ?? 0) : costOf(point),
    time: point.unitTime / 1e6,
    shortest: (base - point.interval.high) / 1e6,
    longest: (base - point.interval.low) / 1e6,
    name: String(index + 1),
  }));
  return (plot, width) => ({
    width,
    height: Math.min(260, Math.max(180, Math.round(width * 0.7))),
    marginLeft: 44,
    marginRight: 22,
    marginBottom: 38,
    x: {
      label: axis === 'cost' ? `Cost${currency === '' ? '' : `, ${currency}`}` : 'Number of changes',
      labelArrow: 'none',
      ...(axis === 'cost' ? {} : { ticks: rows.map(({ cost }) => cost), tickFormat: 'd' }),
      nice: axis === 'cost',
    },
    y: { label: 'Seconds a unit', labelArrow: 'none', nice: true, grid: true },
    marks: [
      plot.line(rows, {
        x: 'cost',
        y: 'time',
        curve: 'step-after',
        stroke: 'currentColor',
        strokeOpacity: 0.45,
      }),
      plot.ruleX(rows, { x: 'cost', y1: 'shortest', y2: 'longest', stroke: 'currentColor' }),
      plot.ruleY(rows, { y: 'time', x1: 'low', x2: 'high', stroke: 'currentColor' }),
      plot.dot(rows, { x: 'cost', y: 'time', r: 4, fill: 'currentColor' }),
      plot.text(rows, { x: 'cost', y: 'time', text: 'name', dx: 9, dy: -8 }),
    ],
  });
}
