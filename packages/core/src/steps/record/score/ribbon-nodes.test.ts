import { describe, expect, it } from 'vitest';
import type { PathNode, RectNode } from '../../../ground/scene/index.ts';
import type { SpeedRibbon } from '../tracks/index.ts';
import { ribbonNodes } from './ribbon-nodes.ts';
import { scorePlan } from './score-layout.ts';
import { composed, row, scoreOf } from './testing/made-up.ts';

const method = composed({
  left: row('l', 1_000_000, [[0, 'H']]),
  right: row('r', 1_000_000, [[0, 'A']]),
  cycles: { items: [], end: 0 },
});
const nan = Number.NaN;

function drawn(ribbon: SpeedRibbon, toUs: number) {
  const ground = { ...scoreOf(method, { view: { fromUs: 0, toUs } }), ribbon, ribbonHeight: 41 };
  const { areas, scale } = scorePlan(ground);
  const nodes = ribbonNodes(ground, areas, scale);
  const paths = nodes.filter((node): node is PathNode => node.kind === 'path');
  const gaps = nodes.filter((node): node is RectNode => node.kind === 'rect' && node.height > 1);
  return { areas, scale, paths, gaps };
}
const pointsOf = (d: string | undefined) =>
  [...(d ?? '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

describe('the ribbon of speed', () => {
  const times = Float64Array.from({ length: 10 }, (_, frame) => frame * 100_000);
  const left = Float32Array.of(0, 50, 100, 300, 100, nan, nan, 0, 0, 0);

  it('puts each frame at its time and each speed at its share of the height, left up, right down (arithmetic)', () => {
    const { areas, scale, paths } = drawn({ times, speeds: { left, right: left }, full: 100 }, 1_000_000);
    const [up, down] = paths.map(({ d }) => pointsOf(d));
    const middle = areas.ribbon.y + 20;
    for (const [frame, share] of [0, 0.5, 1, 1, 1].entries()) {
      const x = Number(scale.exactX(frame * 100_000).toFixed(1));
      expect(up).toContainEqual([x, middle - 20 * share]);
      expect(down).toContainEqual([x, middle + 1 + 20 * share]);
    }
  });

  it('a gap is shaded and has no line, on the hand that is not seen alone', () => {
    const right = new Float32Array(10).fill(10);
    const { scale, paths, gaps } = drawn({ times, speeds: { left, right }, full: 100 }, 1_000_000);
    expect(paths[0]?.d.match(/M/g)).toHaveLength(2);
    expect(paths[1]?.d.match(/M/g)).toHaveLength(1);
    expect(gaps).toHaveLength(1);
    expect(gaps[0]).toMatchObject({
      x: scale.exactX(500_000),
      width: scale.exactX(200_000) - scale.exactX(0),
    });
    const none = drawn({ times, speeds: { right }, full: 100 }, 1_000_000);
    expect([none.paths.length, none.gaps.length]).toEqual([1, 1]);
  });

  it('where frames are narrower than a pixel the fastest of them counts, and no more points are made than pixels', () => {
    const frames = 100_000;
    const many = Float64Array.from({ length: frames }, (_, frame) => frame * 10_000);
    const speed = new Float32Array(frames);
    speed[51_234] = 80;
    const { scale, paths } = drawn({ times: many, speeds: { left: speed }, full: 100 }, 1e9);
    const points = pointsOf(paths[0]?.d);
    expect(points.length).toBeLessThan(1010);
    const top = points.reduce((best, point) => (point[1] < best[1] ? point : best));
    expect(Math.abs(top[0] - scale.exactX(512_340_000))).toBeLessThan(1.1);
  });

  it('without a track there is none', () => {
    const ground = { ...scoreOf(method, { view: { fromUs: 0, toUs: 1e6 } }), ribbonHeight: 40 };
    const { areas, scale } = scorePlan(ground);
    expect(ribbonNodes(ground, areas, scale)).toEqual([]);
  });
});
