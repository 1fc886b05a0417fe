import type { Ink, SceneNode } from '../../../ground/scene/index.ts';
import type { Area, ScoreAreas } from './areas.ts';
import { type AxisTick, axisSteps, axisTicks } from './axis-ticks.ts';
import { box, wordsAt } from './marks.ts';
import { wordWidth } from './motion-words.ts';
import type { TimeScale } from './scale.ts';
import type { ScoreGround } from './score-input.ts';

/** Frames get ticks of their own from here on. CSS pixels. */
const leastFrame = 6;

/** The time that reads zero. */
export function originOf(ground: ScoreGround): number {
  return ground.originUs ?? ground.clock.timeOf(0);
}

/** The two base lines, the ticks that stand on both, and the numbers between them. */
export function axisNodes(ground: ScoreGround, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  const { axis } = areas;
  const nodes: SceneNode[] = [
    box(axis.x, axis.y, axis.width, 1, { ink: 'ink' }),
    box(axis.x, axis.y + axis.height - 1, axis.width, 1, { ink: 'ink' }),
  ];
  const frames = frameTicks(ground, areas, scale);
  for (const tick of shownTicks(ground, scale)) {
    const x = scale.x(tick.us);
    // Where frames have ticks of their own, steps of the unit between the numbers would only confuse.
    if (tick.text === undefined && frames.length > 0) continue;
    nodes.push(...pair(axis, x, scale.hair, tick.text === undefined ? 4 : 8, 'soft'));
    if (tick.text === undefined) continue;
    const half = wordWidth(tick.text, 12, 400) / 2;
    if (x - half < axis.x || x + half > axis.x + axis.width) continue;
    const look = { size: 12, weight: 400, ink: 'ink', align: 'middle' } as const;
    nodes.push(wordsAt(x, axis.y + axis.height / 2, tick.text, look));
  }
  return [...nodes, ...frames];
}

/** The ticks of the axis in steps that suit the scale. */
export function shownTicks(ground: ScoreGround, scale: TimeScale): AxisTick[] {
  const steps = axisSteps(scale.usPerPixel, ground.unit, 72);
  return axisTicks(scale.view.fromUs, scale.view.toUs, originOf(ground), steps, ground.unit);
}

function pair(axis: Area, x: number, width: number, long: number, ink: Ink): SceneNode[] {
  return [
    box(x, axis.y + 1, width, long - 1, { ink }),
    box(x, axis.y + axis.height - long, width, long - 1, { ink }),
  ];
}

/** Every frame boundary on the base lines, where its own time puts it; nothing while frames are too narrow. */
function frameTicks({ clock }: ScoreGround, { axis }: ScoreAreas, scale: TimeScale): SceneNode[] {
  if (clock.unit !== 'frames' || clock.last === undefined) return [];
  const first = clock.boundaryAt(scale.view.fromUs);
  const last = Math.min(clock.last, clock.boundaryAt(scale.view.toUs) + 1);
  if (last <= first || axis.width / (last - first) <= leastFrame) return [];
  const nodes: SceneNode[] = [];
  for (let boundary = first; boundary <= last; boundary += 1) {
    const us = clock.timeOf(boundary);
    if (us < scale.view.fromUs || us > scale.view.toUs) continue;
    nodes.push(...pair(axis, scale.x(us), scale.hair, 5, 'ink'));
  }
  return nodes;
}
