import { describe, expect, it } from 'vitest';
import type { RectNode } from '../../../ground/scene/index.ts';
import { litNodes } from './lit-nodes.ts';
import { scorePlan } from './score-layout.ts';
import { composed, row, scoreOf } from './testing/made-up.ts';

// One second on 1000 px, from 78 on (arithmetic).
const view = { fromUs: 0, toUs: 1_000_000 };
const method = composed({
  left: row('l', 1_000_000, [[0, 'H']]),
  right: row('r', 1_000_000, [[0, 'TE']]),
});

type Lit = NonNullable<Parameters<typeof scoreOf>[1]>['lit'];

function pointedOut(lit: Lit, shown = view): { readonly frames: RectNode[]; readonly paled: RectNode[] } {
  const input = scoreOf(method, { view: shown, lit });
  const { areas, scale } = scorePlan(input);
  const rects = litNodes(input, areas, scale).filter((node): node is RectNode => node.kind === 'rect');
  return {
    frames: rects.filter(({ stroke }) => stroke?.ink === 'accent'),
    paled: rects.filter(({ fill }) => fill?.ink === 'paper' && fill.opacity !== undefined),
  };
}

const spans = (rects: readonly RectNode[]) => rects.map(({ x, width }) => [x, x + width]);

describe('what is pointed out on the score', () => {
  it('stands in a frame, and the rest of both hands is paled', () => {
    const { frames, paled } = pointedOut([
      { hand: 'left', from: 200_000, to: 400_000 },
      { hand: 'left', from: 700_000, to: 800_000 },
    ]);
    // The line of a frame is 2 wide and lies inside.
    expect(spans(frames)).toEqual([
      [279, 477],
      [779, 877],
    ]);
    expect(spans(paled)).toEqual([
      [78, 278],
      [478, 778],
      [878, 1078],
      [78, 1078],
    ]);
    expect(new Set(frames.map(({ y }) => y)).size).toBe(1);
  });

  it('is one frame where stretches overlap or touch, and one in each hand where both are meant', () => {
    const { frames, paled } = pointedOut([
      { hand: 'both', from: 300_000, to: 500_000 },
      { hand: 'left', from: 500_000, to: 600_000 },
      { hand: 'left', from: 100_000, to: 350_000 },
    ]);
    expect(spans(frames)).toEqual([
      [179, 677],
      [379, 577],
    ]);
    expect(spans(paled)).toEqual([
      [78, 178],
      [678, 1078],
      [78, 378],
      [578, 1078],
    ]);
  });

  it('is cut to what is in sight, can be seen however short it is, and is nothing when nothing is pointed out', () => {
    const shown = { fromUs: 400_000, toUs: 600_000 };
    const { frames } = pointedOut(
      [
        { hand: 'left', from: 0, to: 500_000 },
        { hand: 'left', from: 550_000, to: 550_001 },
        { hand: 'right', from: 900_000, to: 950_000 },
      ],
      shown,
    );
    expect(frames).toHaveLength(2);
    expect(frames[0]?.width).toBeGreaterThan(490);
    expect((frames[0]?.x ?? 0) + (frames[0]?.width ?? 0)).toBeLessThanOrEqual(578);
    expect(frames[1]?.width).toBeGreaterThanOrEqual(1);
    expect(pointedOut(undefined)).toEqual({ frames: [], paled: [] });
    expect(pointedOut([])).toEqual({ frames: [], paled: [] });
  });
});
