import type { ShareChart } from '@evenhand/core/define';
import type { PlotMaker } from '../../examine/figures/plot-view.tsx';

/** A p-chart in percent: days in their order, the share of all, and limits that follow the number of observations. */
export function shareplot({ share, days }: ShareChart): PlotMaker {
  const points = days.map((day, index) => ({
    at: index + 1,
    share: day.share * 100,
    low: day.low * 100,
    high: day.high * 100,
    outside: day.outside,
    words: `${day.name}: ${day.seen} of ${day.count}`,
  }));
  return (plot) => ({
    height: 200,
    marginLeft: 40,
    marginRight: 14,
    marginTop: 14,
    marginBottom: 30,
    x: { domain: [0.5, points.length + 0.5], label: null },
    y: { label: null, nice: true, zero: true },
    marks: [
      plot.axisX({
        anchor: 'bottom',
        tickSize: 3,
        ticks: Math.min(points.length + 1, 12),
        tickFormat: (value: number) => (Number.isInteger(value) ? String(value) : ''),
        label: 'day',
        labelAnchor: 'right',
        labelArrow: 'none',
      }),
      plot.axisY({ tickSize: 3, ticks: 5, label: '%', labelAnchor: 'top', labelArrow: 'none' }),
      plot.ruleY([share * 100], { stroke: 'var(--accent)', strokeWidth: 1.2 }),
      plot.line(points, { x: 'at', y: 'low', curve: 'step', stroke: 'var(--soft)', strokeDasharray: '3 3' }),
      plot.line(points, { x: 'at', y: 'high', curve: 'step', stroke: 'var(--soft)', strokeDasharray: '3 3' }),
      plot.line(points, { x: 'at', y: 'share', stroke: 'var(--soft)', strokeWidth: 0.8 }),
      plot.dot(points, {
        x: 'at',
        y: 'share',
        r: 3,
        fill: (point: { outside: boolean }) => (point.outside ? 'var(--warn)' : 'var(--ink)'),
        title: 'words',
      }),
    ],
  });
}
