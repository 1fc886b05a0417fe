import type { SceneNode } from '../../../ground/scene/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import type { Area, ScoreAreas } from './areas.ts';
import { wordsAt } from './marks.ts';
import type { ScoreGround } from './score-input.ts';

/** What each part is, at its left; in a narrow window only what cannot be guessed. */
export function headingNodes(ground: ScoreGround, areas: ScoreAreas): SceneNode[] {
  const wide = areas.gutter > 40;
  const x = areas.gutter - 10;
  const middle = (area: Area) => area.y + area.height / 2;
  const name = { size: 12.5, weight: 600, ink: 'ink', align: 'end' } as const;
  const small = { size: 11.5, weight: 400, ink: 'soft', align: 'end' } as const;
  const nodes: SceneNode[] = [];
  if (areas.left.height >= 14) {
    nodes.push(wordsAt(x, middle(areas.left), wide ? 'Left hand' : 'L', name));
    nodes.push(wordsAt(x, middle(areas.right), wide ? 'Right hand' : 'R', name));
  }
  if (wide && ground.ribbon !== undefined && areas.ribbon.height >= 12)
    nodes.push(wordsAt(x, middle(areas.ribbon), 'Speed', small));
  if (wide) {
    nodes.push(wordsAt(x, middle(areas.axis), timeUnits[ground.unit].symbol, { ...small, size: 12 }));
    nodes.push(
      wordsAt(x, middle(areas.overview), ground.clock.unit === 'frames' ? 'Whole film' : 'Whole', small),
    );
  }
  return nodes;
}
