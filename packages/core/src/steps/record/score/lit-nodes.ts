import type { SceneNode } from '../../../ground/scene/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { hands } from '../../../ground/study/index.ts';
import type { ScoreAreas } from './areas.ts';
import { box, frame } from './marks.ts';
import type { TimeScale } from './scale.ts';
import type { ScoreInput } from './score-input.ts';

interface Stretch {
  readonly left: number;
  readonly right: number;
}

/** What is pointed out stands in a frame; everything else of the hands is paled, so that it is seen without colour too. */
export function litNodes(input: ScoreInput, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  if (input.lit === undefined || input.lit.length === 0) return [];
  return hands.flatMap((hand) => handNodes(input, areas, scale, hand));
}

function handNodes(input: ScoreInput, areas: ScoreAreas, scale: TimeScale, hand: Hand): SceneNode[] {
  const area = areas[hand];
  const lit = merged(stretchesOf(input, scale, hand));
  const ends = [area.x, ...lit.flatMap(({ left, right }) => [left, right]), area.x + area.width];
  const nodes: SceneNode[] = [];
  for (let index = 0; index < ends.length; index += 2) {
    const [from, to] = [ends[index] ?? 0, ends[index + 1] ?? 0];
    if (to > from) nodes.push(box(from, area.y, to - from, area.height, { ink: 'paper', opacity: 0.66 }));
  }
  for (const { left, right } of lit) {
    nodes.push(frame({ ...area, x: left, width: Math.max(3, right - left) }, 'accent', 2, undefined));
  }
  return nodes;
}

/** In pixels, cut to what is shown, in order. */
function stretchesOf({ lit = [], clock }: ScoreInput, scale: TimeScale, hand: Hand): Stretch[] {
  const { fromUs, toUs } = scale.view;
  return lit
    .filter((span) => span.hand === hand || span.hand === 'both')
    .map(({ from, to }) => ({ from: clock.timeOf(from), to: clock.timeOf(to) }))
    .filter(({ from, to }) => to > fromUs && from < toUs)
    .map(({ from, to }) => ({ left: scale.cutX(from), right: scale.cutX(to) }))
    .sort((a, b) => a.left - b.left);
}

function merged(stretches: readonly Stretch[]): Stretch[] {
  const found: Stretch[] = [];
  for (const next of stretches) {
    const last = found.at(-1);
    if (last === undefined || next.left > last.right) found.push(next);
    else found[found.length - 1] = { left: last.left, right: Math.max(last.right, next.right) };
  }
  return found;
}
