import type { Hand } from '../../../ground/study/index.ts';
import { arcsOf, modeOf, type Orders, timingOf } from './event-graph.ts';
import { type Instance, roleOf, type Schedule, setupTime } from './instance.ts';

/** The schedule of least period that keeps these orders; undefined when there is none. */
export function scheduleOf(instance: Instance, orders: Orders): Schedule | undefined {
  const arcs = arcsOf(instance, orders);
  const timing = arcs === undefined ? undefined : timingOf(instance.tasks.length, arcs);
  if (timing === undefined) return undefined;
  return {
    kind: orders.kind,
    period: timing.period,
    placed: instance.tasks.map((_, task) => ({
      task,
      mode: orders.modes[task] ?? 0,
      start: timing.starts[task] ?? 0,
    })),
    left: [...orders.left],
    right: [...orders.right],
    travel: handTravel(instance, orders, 'left') + handTravel(instance, orders, 'right'),
  };
}

function handTravel(instance: Instance, orders: Orders, hand: Hand): number {
  const order = orders[hand];
  return order.reduce((sum, from, index) => {
    const last = index === order.length - 1;
    const to = last ? order[0] : order[index + 1];
    if (to === undefined) return sum;
    const [a, b] = [roleOf(modeOf(instance, orders, from), hand), roleOf(modeOf(instance, orders, to), hand)];
    return sum + (a === undefined || b === undefined ? 0 : (setupTime(instance, hand, a, b, last) ?? 0));
  }, 0);
}

/** The orders of a schedule, by which other times can be tried. */
export function ordersOf(instance: Instance, { kind, placed, left, right }: Schedule): Orders {
  const eyes = placed
    .filter(({ task }) => instance.tasks[task]?.eyes !== undefined)
    .sort((a, b) => a.start - b.start || a.task - b.task)
    .map(({ task }) => task);
  return { kind, modes: placed.map(({ mode }) => mode), left, right, eyes };
}

/** How many steps of the left hand begin with one of the right hand, in the same moment of the cycle. */
export function begunTogether({ placed, left, right, period }: Schedule): number {
  const moment = (task: number) => (placed[task]?.start ?? 0) % Math.max(1, period);
  const moments = new Set(right.map(moment));
  return left.filter((task) => moments.has(moment(task))).length;
}
