import { describe, expect, it } from 'vitest';
import type { RectNode, SceneNode } from '../../../ground/scene/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { groundNodes, overviewNodes, scorePlan } from './index.ts';
import { composed, row, scoreOf } from './testing/made-up.ts';

const colour = motionFactsOf('TE').colour;

/** Half of the row confirmed, half only proposed: motions of 1 ms, far too narrow to be hatched. */
function method(proposedFrom: number) {
  const said = (at: number) => ({ said: at >= proposedFrom ? ('proposed' as const) : ('marked' as const) });
  const given = Array.from({ length: 1000 }, (_, at) => [at * 1000, 'TE', said(at)] as const);
  return composed({
    left: row('l', 1_000_000, given),
    right: row('r', 1_000_000, [[0, 'unmarked']]),
  });
}

function opacities(nodes: readonly SceneNode[], from: number, to: number): Set<number> {
  const coloured = nodes.filter(
    (node): node is RectNode =>
      node.kind === 'rect' &&
      typeof node.fill?.ink === 'object' &&
      'colour' in node.fill.ink &&
      node.fill.ink.colour === colour &&
      node.x >= from &&
      node.x + node.width <= to,
  );
  expect(coloured.length).toBeGreaterThan(10);
  return new Set(coloured.map(({ fill }) => fill?.opacity ?? 1));
}

describe('what is only proposed, where hatching has no room', () => {
  // 10 ms in a pixel and less: all motions of the rows are merged.
  const input = scoreOf(method(500), { view: { fromUs: 0, toUs: 1_000_000 }, width: 200 });
  const { areas, scale } = scorePlan(input);
  const middle = scale.x(500_000);

  it('is pale in merged runs of the score; what is confirmed keeps its full colour', () => {
    const ground = groundNodes(input).filter(
      (node) => node.kind === 'rect' && node.y >= areas.left.y && node.y < areas.left.y + areas.left.height,
    );
    expect([...opacities(ground, 0, middle - 3)]).toEqual([1]);
    const [pale, ...others] = opacities(ground, middle + 3, 1000);
    expect([others.length, (pale as number) < 0.5]).toEqual([0, true]);
  });

  it('is pale in the overview of the whole film', () => {
    const half = areas.overview.x + areas.overview.width / 2;
    const nodes = overviewNodes(input, areas);
    expect([...opacities(nodes, 0, half - 3)]).toEqual([1]);
    const [pale, ...others] = opacities(nodes, half + 3, 1000);
    expect([others.length, (pale as number) < 0.5]).toEqual([0, true]);
  });

  it('is pale in the overview also where one motion is wide', () => {
    const wide = composed({
      left: row(
        'l',
        1_000_000,
        Array.from({ length: 20 }, (_, at) => [at * 50_000, 'TE', { said: 'proposed' }] as const),
      ),
      right: row('r', 1_000_000, [[0, 'unmarked']]),
    });
    const shown = scoreOf(wide, { view: { fromUs: 0, toUs: 1_000_000 } });
    const [pale, ...others] = opacities(overviewNodes(shown, scorePlan(shown).areas), 0, 10_000);
    expect([others.length, (pale as number) < 0.5]).toEqual([0, true]);
  });
});
