import { roundMicros } from '../../../ground/base/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
  textWidth,
} from '../../../ground/scene/index.ts';
import { type TimeUnit, timeText, timeUnits } from '../../../ground/units/index.ts';
import { axisSteps, axisTicks } from '../../record/index.ts';
import type { Difference, MethodTimes } from '../difference/difference.ts';

export interface CycleTimesLook {
  /** Paper units, 240 or more. */
  readonly width: number;
  readonly unit: TimeUnit;
  /** Size of the letters; 11 when left out. */
  readonly size?: number | undefined;
}

interface Plan {
  readonly size: number;
  readonly unit: TimeUnit;
  readonly left: number;
  readonly right: number;
  readonly x: (us: number) => number;
}

/**
 * A point for each cycle of both methods on one scale from 0, in their order from top to bottom, with the means and their
 * intervals.
 */
export function cycleTimesPicture(
  { before, after }: Pick<Difference, 'before' | 'after'>,
  times: { readonly before: readonly number[]; readonly after: readonly number[] },
  { width, unit, size = 11 }: CycleTimesLook,
): Scene {
  const most = [...times.before, ...times.after].reduce((high, time) => Math.max(high, time), 1);
  const names = [before.name, after.name].map((name) => textWidth(name, size, 600));
  const [left, right] = [Math.min(width * 0.36, Math.max(size * 6, ...names) + size * 1.4), size * 1.5];
  const plan: Plan = {
    size,
    unit,
    left,
    right: width - right,
    x: (us) => left + (us / most) * (width - left - right),
  };
  const row = size * 3.4;
  const axis = 2 * row;
  return {
    width,
    height: axis + size * 2.4,
    title: 'Time for a unit, cycle by cycle',
    description: `${words(before, times.before.length, unit)} ${words(after, times.after.length, unit)}`,
    nodes: [
      groupNode('figure', methodNodes(plan, 0, row, before, times.before), before.name),
      groupNode('figure', methodNodes(plan, row, row, after, times.after), after.name),
      groupNode('layer', axisNodes(plan, axis, most)),
    ],
  };
}

function words({ name, sample }: MethodTimes, count: number, unit: TimeUnit): string {
  const { interval } = sample;
  const range =
    interval === undefined
      ? ''
      : `, ${Math.round(interval.confidence * 100)} % interval ${timeText(roundMicros(interval.low), unit)} to ${timeText(roundMicros(interval.high), unit)}`;
  return `“${name}”: ${count} cycles, mean ${timeText(roundMicros(sample.mean), unit)} a unit${range}.`;
}

function methodNodes(
  plan: Plan,
  top: number,
  height: number,
  { name, sample }: MethodTimes,
  times: readonly number[],
): SceneNode[] {
  const { size, left, x, unit } = plan;
  const middle = top + height * 0.62;
  const { mean, interval } = sample;
  const nodes: SceneNode[] = [
    textNode(0, middle + size * 0.36, fitText(name, left - size, size, 600), { size, weight: 600 }),
  ];
  if (interval !== undefined) {
    const [low, high] = [x(Math.max(0, interval.low)), Math.min(x(interval.high), plan.right + size)];
    nodes.push({
      kind: 'rect',
      x: low,
      y: middle - height * 0.2,
      width: Math.max(0.5, high - low),
      height: height * 0.4,
      fill: { ink: 'shade' },
      stroke: { ink: 'rule', width: 0.5 },
    });
  }
  const radius = size * 0.22;
  // From top to bottom in the order in which they were done, so that none hides another.
  const step = times.length < 2 ? 0 : Math.min(radius * 1.6, (height * 0.46) / (times.length - 1));
  const first = middle - (step * (times.length - 1)) / 2;
  nodes.push(...times.map((time, index) => dot(x(time), first + index * step, radius)));
  nodes.push(lineNode(x(mean), middle - height * 0.3, x(mean), middle + height * 0.3, 1.4, 'ink'));
  const label = timeText(roundMicros(mean), unit);
  const half = textWidth(label, size * 0.9, 600) / 2;
  const at = Math.min(Math.max(x(mean), left + half), plan.right + size - half);
  nodes.push(textNode(at, middle - height * 0.36, label, { size: size * 0.9, weight: 600, align: 'middle' }));
  return nodes;
}

function dot(x: number, y: number, radius: number): SceneNode {
  const [a, b] = [x - radius, x + radius].map((value) => value.toFixed(2));
  const r = radius.toFixed(2);
  return {
    kind: 'path',
    d: `M ${a} ${y.toFixed(2)} A ${r} ${r} 0 1 1 ${b} ${y.toFixed(2)} A ${r} ${r} 0 1 1 ${a} ${y.toFixed(2)} Z`,
    fill: { ink: 'paper', opacity: 0.6 },
    stroke: { ink: 'ink', width: 0.7 },
  };
}

function axisNodes({ size, left, right, unit, x }: Plan, top: number, most: number): SceneNode[] {
  const steps = axisSteps(most / (right - left), unit, size * 3);
  const ticks = axisTicks(0, most, 0, steps, unit).flatMap(({ us, text }): SceneNode[] => {
    const at = x(us);
    const mark = lineNode(at, top, at, top + (text === undefined ? 2 : 4), 0.6, 'soft');
    if (text === undefined || at + textWidth(text, size * 0.85, 400) / 2 > right + size) return [mark];
    return [mark, textNode(at, top + size * 1.5, text, { size: size * 0.85, align: 'middle', ink: 'soft' })];
  });
  return [
    lineNode(left, top, right, top, 0.7, 'ink'),
    textNode(left - size * 1.4, top + size * 1.5, `${timeUnits[unit].symbol} a unit`, {
      size: size * 0.85,
      align: 'end',
      ink: 'soft',
    }),
    ...ticks,
  ];
}
