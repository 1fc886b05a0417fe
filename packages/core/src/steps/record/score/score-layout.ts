import type { SceneNode } from '../../../ground/scene/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { type ScoreAreas, scoreAreas } from './areas.ts';
import { axisNodes } from './axis-nodes.ts';
import { cycleGround, cycleNodes, shownCycles } from './cycle-nodes.ts';
import { handNodes } from './hand-nodes.ts';
import { handSide } from './hand-side.ts';
import { headingNodes } from './heading-nodes.ts';
import { hitScore, type ScoreHit } from './hit.ts';
import { box } from './marks.ts';
import { overlayNodes } from './overlay-nodes.ts';
import { overviewNodes } from './overview-nodes.ts';
import { rowPieces } from './pieces.ts';
import { ribbonNodes } from './ribbon-nodes.ts';
import { shownTimes } from './row-times.ts';
import { type TimeScale, timeScale } from './scale.ts';
import type { ScoreGround, ScoreInput } from './score-input.ts';

/**
 * A score as it stands on the screen, in CSS pixels, in three layers to be painted one over the other: each changes
 * at its own pace. `overview` with the document, `ground` with the view too, `overlay` with every frame of the film.
 */
export interface ScoreLayout {
  readonly areas: ScoreAreas;
  readonly scale: TimeScale;
  readonly overview: readonly SceneNode[];
  readonly ground: readonly SceneNode[];
  readonly overlay: readonly SceneNode[];
  /** What lies under a point; `touch` widens what can be taken hold of. */
  readonly hitTest: (x: number, y: number, touch?: boolean) => ScoreHit;
}

/** The whole of it at once, for a still picture and for tests; a surface asks for the layers it needs. */
export function scoreLayout(input: ScoreInput): ScoreLayout {
  const { areas, scale } = scorePlan(input);
  return {
    areas,
    scale,
    overview: overviewNodes(input, areas),
    ground: groundNodes(input),
    overlay: overlayNodes(input, areas, scale),
    hitTest: (x, y, touch = false) => hitScore(input, areas, scale, { x, y, touch }),
  };
}

/** Where the parts lie and how time is laid over the width. */
export function scorePlan(ground: ScoreGround): { readonly areas: ScoreAreas; readonly scale: TimeScale } {
  const { width, height, ribbonHeight = 0 } = ground;
  const areas = scoreAreas({ width, height, ribbonHeight });
  return { areas, scale: timeScale(ground.view, areas.left, ground.pixelRatio) };
}

/** Everything that stands still while the film plays: only what the view shows is visited. */
export function groundNodes(ground: ScoreGround): SceneNode[] {
  const { areas, scale } = scorePlan(ground);
  const cycles = shownCycles(ground, scale);
  const nodes = [...cycleGround(cycles, areas, scale), ...headingNodes(ground, areas)];
  for (const hand of hands) {
    const side = handSide(areas, hand);
    const times = shownTimes(ground.method[hand], ground.clock, hand, ground.preview);
    for (const node of handNodes(ground, side, scale, rowPieces(times, scale.view, scale.usPerPixel)))
      nodes.push(node);
    if (ground.activeHands !== undefined && !ground.activeHands.includes(hand)) {
      const { x, y, width, height } = areas[hand];
      nodes.push(box(x, y, width, height, { ink: 'paper', opacity: 0.5 }));
    }
  }
  nodes.push(...axisNodes(ground, areas, scale), ...cycleNodes(ground, cycles, areas, scale));
  nodes.push(...ribbonNodes(ground, areas, scale));
  return nodes;
}
