import { describe, expect, it } from 'vitest';
import { benchWork } from '../../../../../../tests/helpers/bench-works.ts';
import { overlappingTexts } from '../../../../../../tests/helpers/read-scene.ts';
import {
  pointsPerMillimetre,
  type RectNode,
  type Scene,
  type SceneNode,
  textBox,
  textsOf,
} from '../../../ground/scene/index.ts';
import type { Work } from '../work/index.ts';
import { benchPlan } from './bench-plan.ts';
import { usualReach } from './people.ts';
import type { PlanLook } from './plan-frame.ts';
import type { Trips } from './trips.ts';

const look: PlanLook = { paper: 'a4', scale: 5, reach: usualReach, bench: { width: 1000, depth: 500 } };
const { work } = benchWork(4, 4, 9);
const trips: Trips = {
  list: [
    { hand: 'left', from: 'fixture', to: 'exit', loaded: true, perCycle: 1 },
    { hand: 'right', from: 'bin-1', to: 'fixture', loaded: true, perCycle: 2 },
  ],
  unknown: 0,
};

function planOf(of: Work, how: PlanLook): Scene {
  const made = benchPlan(of, how);
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
}

function flat(nodes: readonly SceneNode[]): readonly SceneNode[] {
  return nodes.flatMap((node) => (node.kind === 'group' ? flat(node.nodes) : [node]));
}

const rects = (scene: Scene) =>
  flat(scene.nodes).filter((node): node is RectNode => node.kind === 'rect' && node.stroke !== undefined);
const onPaper = (mm: number, scale: number) => (mm / scale) * pointsPerMillimetre;

describe('the plan of the bench', () => {
  it.each([
    [5, 'a4'],
    [10, 'a4'],
    [5, 'a3'],
    [10, 'letter'],
  ] as const)('1:%d on %s: bench, places and the distances between them are to scale', (scale, paper) => {
    const scene = planOf(work, { ...look, scale, paper });
    const [bench, ...places] = rects(scene);
    // Points of the drawing are rounded to a hundredth.
    expect(bench?.width).toBeCloseTo(onPaper(1000, scale), 1);
    expect(bench?.height).toBeCloseTo(onPaper(500, scale), 1);
    expect(places).toHaveLength(work.places.length);
    const centre = ({ x, y, width, height }: RectNode) => ({ x: x + width / 2, y: y + height / 2 });
    work.places.forEach(({ at, size }, index) => {
      const drawn = places[index];
      if (drawn === undefined || bench === undefined) throw new Error('not drawn');
      expect(drawn.width).toBeCloseTo(onPaper(size?.x ?? 0, scale), 1);
      expect(centre(drawn).x - centre(bench).x).toBeCloseTo(onPaper(at?.x ?? 0, scale), 1);
      expect(bench.y + bench.height - centre(drawn).y).toBeCloseTo(onPaper(at?.y ?? 0, scale), 1);
    });
  });

  it.each([
    [5, 'a4'],
    [10, 'a4'],
    [10, 'letter'],
    [5, 'a3'],
  ] as const)('1:%d on %s: nothing leaves the sheet and no two texts meet', (scale, paper) => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const scene = planOf(benchWork(seed, 5, 10).work, {
        ...look,
        scale,
        paper,
        trips,
        day: { period: 6_000_000, worked: 25_200_000_000 },
        ...(seed % 2 === 0
          ? { titleBlock: { operation: 'Hose couplings, line 3', drawnBy: 'analyst 7', date: '2026-11-26' } }
          : {}),
      });
      expect(overlappingTexts(scene)).toEqual([]);
      for (const node of textsOf(scene.nodes)) {
        const { left, top, right, bottom } = textBox(node);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(top).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(scene.width);
        expect(bottom).toBeLessThanOrEqual(scene.height);
      }
    }
  });

  it('a place that is turned is drawn with its corners, and the title block names scale, bench and day', () => {
    const turned: Work = {
      ...work,
      places: work.places.map((place, index) => (index === 0 ? { ...place, angle: 30 } : place)),
    };
    const scene = planOf(turned, {
      ...look,
      titleBlock: { operation: 'Hose couplings', date: '2026-11-26' },
    });
    const drawn = flat(scene.nodes).flatMap((node) =>
      node.kind === 'path' && node.d.endsWith('Z') ? [node.d] : [],
    );
    expect(drawn).toHaveLength(1);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = drawn[0]?.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
    // The near side lies 30 degrees against the clock; y grows downwards on paper.
    expect(Math.atan2(-(y1 - y0), x1 - x0)).toBeCloseTo(Math.PI / 6, 2);
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(onPaper(work.places[0]?.size?.x ?? 0, 5), 1);
    const words = textsOf(scene.nodes).map(({ text }) => text);
    expect(words).toContain('1:5 on A4');
    expect(words).toContain('1000 × 500');
    expect(words).toContain('2026-11-26');
  });

  it('areas end at the edges of the bench', () => {
    const scene = planOf(work, look);
    const [bench] = rects(scene);
    const paths = flat(scene.nodes).flatMap((node) => (node.kind === 'path' ? [node.d] : []));
    expect(paths).toHaveLength(4);
    for (const d of paths) {
      const numbers = d.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
      expect(numbers.length).toBeGreaterThan(20);
      numbers.forEach((value, index) => {
        const [low, high] =
          index % 2 === 0
            ? [bench?.x ?? 0, (bench?.x ?? 0) + (bench?.width ?? 0)]
            : [bench?.y ?? 0, (bench?.y ?? 0) + (bench?.height ?? 0)];
        expect(value).toBeGreaterThanOrEqual(low - 0.02);
        expect(value).toBeLessThanOrEqual(high + 0.02);
      });
    }
  });

  it('ways of the hands are drawn and summed in words; source and caution stand on the sheet', () => {
    const day = { period: 6_000_000, worked: 28_800_000_000 };
    const scene = planOf(work, { ...look, trips, day });
    const words = textsOf(scene.nodes)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toMatch(/left \d\.\d\d m, right \d\.\d\d m a cycle, together \d+\.\d km in 8\.0 h/);
    expect(words).toContain('ANSUR II');
    expect(words).toContain('local rules and qualified people decide');
    expect(words).toContain('Invented');
    expect(flat(scene.nodes).filter(({ kind }) => kind === 'path')).toHaveLength(6);
  });

  it('what has no position or lies off the bench is told, not lost', () => {
    const odd: Work = {
      ...work,
      places: work.places.map((place, index) =>
        index === 0
          ? { id: place.id, name: place.name, kind: place.kind }
          : index === 1
            ? { ...place, at: { x: 900, y: 200 } }
            : place,
      ),
    };
    const words = textsOf(planOf(odd, look).nodes)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain(`Without a position, so not drawn: ${work.places[0]?.name}.`);
    expect(words).toContain(`Not on this bench: ${work.places[1]?.name}.`);
  });

  it('a bench that is too large for the sheet is told with what to do', () => {
    const made = benchPlan(work, { ...look, bench: { width: 2400, depth: 900 } });
    expect(made.ok ? '' : made.error.message).toBe(
      'A bench of 2400 by 900 mm does not fit on A4 at 1:5. Take 1:10, a larger sheet, or a smaller bench.',
    );
  });
});
