import { describe, expect, it } from 'vitest';
import type { RectNode, SceneNode, TextNode } from '../../../ground/scene/index.ts';
import type { Method } from '../../../ground/study/index.ts';
import { type MotionKind, motionFactsOf, motionKinds } from '../../../ground/tables/index.ts';
import { middleOf } from './marks.ts';
import { scoreLayout } from './score-layout.ts';
import { composed, filmed, row, scoreOf } from './testing/made-up.ts';

const second = { fromUs: 0, toUs: 1_000_000 };

const method = composed({
  left: row('l', 1_000_000, [
    [0, 'TE', { object: 'hose body', to: 'p' }],
    [250_000, 'G', { object: 'hose body' }],
    [300_000, 'UD'],
    [700_000, 'H', { object: 'collar', said: 'proposed' }],
  ]),
  right: row('r', 900_000, [
    [0, 'unmarked'],
    [500_000, 'A', { object: 'collar' }],
  ]),
  cycles: {
    items: [
      { id: 'c0', start: 100_000 },
      { id: 'c1', start: 600_000, setAside: 'ring fell down' },
    ],
    end: 950_000,
  },
});

function rects(nodes: readonly SceneNode[]): RectNode[] {
  return nodes.filter((node) => node.kind === 'rect');
}

function texts(nodes: readonly SceneNode[]): TextNode[] {
  return nodes.filter((node) => node.kind === 'text');
}

/** The blocks of a kind: rectangles in its colour, the first coat only. */
function blocks(nodes: readonly SceneNode[], kind: MotionKind): RectNode[] {
  const { colour } = motionFactsOf(kind);
  return rects(nodes).filter(
    ({ fill }) => typeof fill?.ink === 'object' && fill.ink.colour === colour && fill.opacity === undefined,
  );
}

describe('the layout of the score', () => {
  it('puts every boundary where its time is: 1 s on 1000 px from 78 on (arithmetic)', () => {
    const { ground } = scoreLayout(scoreOf(method, { view: second }));
    expect(blocks(ground, 'TE')).toMatchObject([{ x: 78, width: 250 }]);
    expect(blocks(ground, 'G')).toMatchObject([{ x: 328, width: 50 }]);
    expect(blocks(ground, 'A')).toMatchObject([{ x: 578, width: 400 }]);
  });

  it('goes by the frames’ own times in a film of uneven rate, and by the scene clock', () => {
    const parts = {
      left: row('l', 4, [
        [0, 'TE'],
        [1, 'G'],
        [2, 'TL'],
      ]),
    };
    const plain = filmed([0, 100, 700, 800], 1000, parts);
    const [g] = blocks(scoreLayout(scoreOf(plain.method, { view: second }, plain.clock)).ground, 'G');
    expect(g).toMatchObject({ x: 178, width: 600 });
    const slow = filmed([0, 100, 700, 800], 1000, parts, { kind: 'factor', realPerFilm: 0.5 });
    const [half] = blocks(scoreLayout(scoreOf(slow.method, { view: second }, slow.clock)).ground, 'G');
    expect(half).toMatchObject({ x: 128, width: 300 });
  });

  it('lays neighbours edge to edge on whole pixels of the screen at any zoom', () => {
    for (const pixelRatio of [1, 1.25, 2]) {
      const view = { fromUs: 33_333, toUs: 777_777 };
      const { ground } = scoreLayout(scoreOf(method, { view, pixelRatio }));
      const [te, g] = [blocks(ground, 'TE')[0], blocks(ground, 'G')[0]];
      expect((te?.x ?? 0) + (te?.width ?? 0)).toBeCloseTo(g?.x ?? -1, 9);
      const edge = (g?.x ?? 0) * pixelRatio;
      expect(edge).toBeCloseTo(Math.round(edge), 9);
    }
  });

  it('the left hand stands on the axis and the right hand hangs from it', () => {
    const { ground, areas } = scoreLayout(scoreOf(method, { view: second }));
    const [te, a] = [blocks(ground, 'TE')[0], blocks(ground, 'A')[0]];
    expect((te?.y ?? 0) + (te?.height ?? 0)).toBe(areas.axis.y);
    expect(a?.y).toBe(areas.axis.y + areas.axis.height);
  });

  it('swapping the hands mirrors the picture about the middle of the axis', () => {
    const input = { view: second, placeName: () => 'body bin' };
    const one = scoreLayout(scoreOf({ ...method, cycles: { items: [], end: 0 } }, input));
    const swapped: Method = {
      ...method,
      left: method.right,
      right: method.left,
      cycles: { items: [], end: 0 },
    };
    const other = scoreLayout(scoreOf(swapped, input));
    const middle = one.areas.axis.y + one.areas.axis.height / 2;
    const seen = (nodes: readonly SceneNode[], mirror: boolean) =>
      nodes
        .filter((node) => node.kind !== 'text' || !/hand$|^Whole$/.test(node.text))
        .map((node) => {
          if (node.kind === 'rect') {
            const y = mirror ? 2 * middle - node.y - node.height : node.y;
            return `rect ${node.x} ${y.toFixed(6)} ${node.width} ${node.height.toFixed(6)} ${JSON.stringify(node.fill ?? node.stroke)}`;
          }
          if (node.kind !== 'text') throw new Error('only rectangles and words are expected');
          const y = mirror ? 2 * middle - middleOf(node) : middleOf(node);
          return `text ${node.x} ${y.toFixed(6)} ${node.text}`;
        })
        .sort();
    expect(seen(one.ground, false).length).toBeGreaterThan(20);
    expect(seen(one.ground, false)).toEqual(seen(other.ground, true));
  });

  it('an idle hand stands lower than a holding one, and that lower than one at work', () => {
    const { ground } = scoreLayout(scoreOf(method, { view: second }));
    const heights = (['UD', 'H', 'TE'] as const).map((kind) => {
      const { colour } = motionFactsOf(kind);
      const own = rects(ground).filter(
        ({ fill }) => typeof fill?.ink === 'object' && fill.ink.colour === colour,
      );
      return Math.max(...own.map((node) => node.height));
    });
    expect(heights[0]).toBeLessThan(heights[1] ?? 0);
    expect(heights[1]).toBeLessThan(heights[2] ?? 0);
  });

  it('writes code, time and way where there is room, and each object once on a line of its own', () => {
    const { ground } = scoreLayout(scoreOf(method, { view: second, placeName: () => 'body bin' }));
    const words = texts(ground).map((node) => node.text);
    expect(words).toEqual(expect.arrayContaining(['TE', '0.25', '→ body bin', 'G', 'UD', '0.40', 'H?', 'A']));
    expect(words.filter((word) => word === 'hose body')).toHaveLength(1);
    const label = texts(ground).find((node) => node.text === 'hose body');
    // Both motions together last from 0 to 0.3 s.
    expect(Math.abs((label?.x ?? 0) - (78 + 150))).toBeLessThanOrEqual(1);
  });

  it('no word leaves its motion, whatever the zoom', () => {
    for (const toUs of [1_000_000, 4_000_000, 20_000_000, 80_000_000]) {
      const { ground, scale } = scoreLayout(scoreOf(method, { view: { fromUs: 0, toUs } }));
      for (const node of texts(ground)) {
        if (node.text !== 'TE') continue;
        expect(node.x).toBeGreaterThanOrEqual(78);
        expect(node.x + 14).toBeLessThanOrEqual(scale.x(250_000) + 1);
      }
    }
  });

  it('what is not marked is paper in a dashed frame and says so; what is proposed has a hatched frame', () => {
    const { ground } = scoreLayout(scoreOf(method, { view: second }));
    expect(rects(ground).some((node) => node.stroke?.dash !== undefined && node.fill === undefined)).toBe(
      true,
    );
    expect(texts(ground).map((node) => node.text)).toContain('not marked yet');
    const hatched = rects(ground).filter(
      ({ fill }) =>
        fill?.pattern === 'diagonal' &&
        typeof fill.ink === 'object' &&
        fill.ink.colour === motionFactsOf('H').colour,
    );
    expect(hatched).toMatchObject([{ x: 778, width: 300 }]);
  });

  it('cycles: a line at each mark and at the end, numbers with times, the reason of one set aside', () => {
    const { ground, areas } = scoreLayout(scoreOf(method, { view: second }));
    const bottom = areas.right.y + areas.right.height;
    const lines = rects(ground).filter(
      (node) => node.width === 1 && node.y === 3 && node.y + node.height === bottom,
    );
    expect(lines.map((node) => node.x)).toEqual([178, 678, 1028]);
    const words = texts(ground).map((node) => node.text);
    expect(words).toContain('Cycle 1  ·  0.50 s');
    expect(words).toContain('Cycle 2 set aside: ring fell down  ·  0.35 s');
    const shades = rects(ground).filter((node) => node.fill?.ink === 'shade');
    expect(shades.map((node) => [node.x, node.width])).toEqual([
      [678, 350],
      [678, 350],
    ]);
  });

  it('cycles too close together for lines are counted, and those set aside stay shaded', () => {
    const items = Array.from({ length: 400 }, (_, index) => ({
      id: `c${index}`,
      start: index * 100_000,
      ...(index === 200 ? { setAside: 'interrupted' } : {}),
    }));
    const many = composed({ left: method.left, cycles: { items, end: 40_000_000 } });
    const { ground } = scoreLayout(scoreOf(many, { view: { fromUs: 0, toUs: 40_000_000 } }));
    expect(texts(ground).map((node) => node.text)).toContain('400 cycles in sight, 1 set aside');
    expect(rects(ground).filter((node) => node.y === 3)).toHaveLength(0);
    expect(rects(ground).find((node) => node.fill?.ink === 'shade')?.x).toBe(78 + 500);
    const near = scoreLayout(scoreOf(many, { view: { fromUs: 10_000_000, toUs: 11_000_000 } }));
    expect(texts(near.ground).map((node) => node.text)).toContain('Cycle 101');
    expect(rects(near.ground).filter((node) => node.y === 3)).toHaveLength(10);
  });

  it('draws nothing of what cannot be seen: nodes depend on the view, not on the length of the study', () => {
    const long = (count: number) =>
      composed({
        left: row(
          'l',
          count * 100_000,
          Array.from({ length: count }, (_, index) => [index * 100_000, index % 2 === 0 ? 'TE' : 'G']),
        ),
      });
    const view = { fromUs: 5_000_000, toUs: 6_000_000 };
    const count = (motions: number) => scoreLayout(scoreOf(long(motions), { view })).ground.length;
    expect(count(20_000)).toBe(count(100));
    expect(blocks(scoreLayout(scoreOf(long(20_000), { view })).ground, 'TE')).toHaveLength(5);
  });

  it('merging keeps each kind’s area of colour: time × height, at every zoom', () => {
    const kinds: MotionKind[] = ['TE', 'G', 'TL', 'P', 'A', 'RL', 'H', 'UD'];
    const motions = 4000;
    const many = composed({
      left: row(
        'l',
        motions * 10_000,
        Array.from({ length: motions }, (_, index) => [index * 10_000, kinds[(index * 7) % 8] ?? 'TE']),
      ),
    });
    // On a fine screen, as the edges lie on whole pixels of it.
    const areaOf = (toUs: number, kind: MotionKind) => {
      const score = scoreLayout(scoreOf(many, { view: { fromUs: 0, toUs }, pixelRatio: 8 }));
      const inPixels = blocks(score.ground, kind).reduce((sum, node) => sum + node.width * node.height, 0);
      return inPixels * score.scale.usPerPixel;
    };
    for (const kind of kinds) {
      // The first 2 s one by one (5 px a motion), the whole 40 s merged (0.25 px a motion): a kind has 1/8 of both.
      const single = areaOf(2_000_000, kind) / 2_000_000;
      const merged = areaOf(40_000_000, kind) / 40_000_000;
      expect(merged / single).toBeGreaterThan(0.97);
      expect(merged / single).toBeLessThan(1.03);
    }
  });

  it('a motion alone among long ones never vanishes: at least one pixel of the screen is left of it', () => {
    const rare = composed({
      left: row('l', 3_600_000_000, [
        [0, 'H'],
        [1_800_000_000, 'G'],
        [1_800_040_000, 'H'],
      ]),
    });
    const { ground } = scoreLayout(
      scoreOf(rare, { view: { fromUs: 0, toUs: 3_600_000_000 }, pixelRatio: 2 }),
    );
    expect(blocks(ground, 'G')).toMatchObject([{ width: 0.5 }]);
  });

  it('every kind can be drawn', () => {
    const all = composed({
      left: row(
        'l',
        motionKinds.length * 100_000,
        motionKinds.map((kind, index) => [index * 100_000, kind]),
      ),
    });
    const { ground } = scoreLayout(scoreOf(all, { view: { fromUs: 0, toUs: motionKinds.length * 100_000 } }));
    for (const kind of motionKinds)
      if (kind !== 'unmarked') expect(blocks(ground, kind).length).toBeGreaterThan(0);
  });

  it('frames have ticks once they are more than 6 px apart, at their own times', () => {
    const made = filmed(
      Array.from({ length: 100 }, (_, frame) => frame * 40),
      4000,
      {},
    );
    const ticks = (toUs: number) => {
      const { ground, areas } = scoreLayout(scoreOf(made.method, { view: { fromUs: 0, toUs } }, made.clock));
      return rects(ground).filter(
        (node) => node.y === areas.axis.y + 1 && node.height === 4 && node.fill?.ink === 'ink',
      );
    };
    // 1000 px show 150 frames at 6 s (6.7 px each) and 175 at 7 s (5.7 px each).
    expect(
      ticks(2_000_000)
        .map((node) => node.x)
        .slice(0, 3),
    ).toEqual([78, 98, 118]);
    expect(ticks(2_000_000)).toHaveLength(51);
    const wide = filmed(
      Array.from({ length: 400 }, (_, frame) => frame * 40),
      16_000,
      {},
    );
    const at = (toUs: number) =>
      scoreLayout(scoreOf(wide.method, { view: { fromUs: 0, toUs } }, wide.clock)).ground.filter(
        (node) => node.kind === 'rect' && node.height === 4 && node.fill?.ink === 'ink',
      ).length;
    expect(at(6_000_000)).toBe(2 * 151);
    expect(at(7_000_000)).toBe(0);
  });

  it('keeps a place for a ribbon under the right hand, and both hands equal beside it', () => {
    const { areas } = scoreLayout(scoreOf(method, { view: second, ribbonHeight: 24 }));
    expect(areas.ribbon.height).toBe(24);
    expect(areas.ribbon.y).toBeGreaterThanOrEqual(areas.right.y + areas.right.height);
    expect(areas.overview.y).toBeGreaterThanOrEqual(areas.ribbon.y + 24);
    expect(areas.left.height).toBe(areas.right.height);
    for (const height of [0, 60, 150, 190, 341]) {
      const small = scoreLayout(scoreOf(method, { view: second, height, width: 300 })).areas;
      expect(small.left.height).toBe(small.right.height);
      expect(small.left.height).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('what lies over the score', () => {
  it('the playhead goes through everything at its time, with the time in the chosen unit', () => {
    const { overlay } = scoreLayout(scoreOf(method, { view: second, playhead: 300_000, unit: 'winks' }));
    const line = rects(overlay).find((node) => node.width === 2 && node.y === 0);
    expect(line?.x).toBe(78 + 300 - 1);
    // 0.3 s are 10 winks (1 wink = 0.03 s).
    expect(texts(overlay).map((node) => node.text)).toEqual(['10.0']);
  });

  it('frames the selected motion in its hand, a span of both through both', () => {
    const one = scoreLayout(
      scoreOf(method, { view: second, selection: { kind: 'motion', hand: 'left', motionId: 'l1' } }),
    );
    const frame = (nodes: readonly SceneNode[]) => rects(nodes).find((node) => node.stroke?.ink === 'accent');
    expect(frame(one.overlay)).toMatchObject({ x: 329, width: 48, y: one.areas.left.y + 1 });
    const both = scoreLayout(
      scoreOf(method, {
        view: second,
        selection: { kind: 'span', hand: 'both', from: 100_000, to: 200_000 },
      }),
    );
    expect(frame(both.overlay)).toMatchObject({ x: 179, width: 98, height: 118 + 30 + 118 - 2 });
    const gone = scoreLayout(
      scoreOf(method, { view: second, selection: { kind: 'motion', hand: 'left', motionId: 'x' } }),
    );
    expect(frame(gone.overlay)).toBeUndefined();
  });

  it('a held boundary is drawn where it would go, with how far it has come', () => {
    const preview = { row: 'left', id: 'l1', to: 280_000 } as const;
    const { ground, overlay } = scoreLayout(scoreOf(method, { view: second, preview }));
    expect(blocks(ground, 'TE')).toMatchObject([{ x: 78, width: 280 }]);
    expect(blocks(ground, 'G')).toMatchObject([{ x: 358, width: 20 }]);
    expect(texts(overlay).map((node) => node.text)).toEqual(['0.28 s  ·  +0.03 s']);
    expect(method.left.items[1]?.start).toBe(250_000);
  });

  it('the overview frames what is shown of the whole: 1 s of 4 s is a quarter of 1000 px', () => {
    const view = { fromUs: 2_000_000, toUs: 3_000_000 };
    const { overlay, areas } = scoreLayout(scoreOf(method, { view, whole: { fromUs: 0, toUs: 4_000_000 } }));
    const frame = rects(overlay).find((node) => node.stroke?.ink === 'soft');
    expect(frame).toMatchObject({ x: 78 + 500 + 0.75, width: 250 - 1.5, y: areas.overview.y + 0.75 });
  });
});
