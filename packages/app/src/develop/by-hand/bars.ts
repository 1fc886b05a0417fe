import { type Instance, type JudgedOrders, roleOf } from '@evenhand/core/develop';
import type { Hand } from '@evenhand/core/ground/study';

/** A stretch of a step in the row of one hand, microseconds from the start of the cycle. */
export interface Bar {
  readonly task: number;
  readonly from: number;
  readonly to: number;
  /** The hand holds while the other works. */
  readonly holds: boolean;
  /** The end of a step that ran over from the cycle before. */
  readonly rest: boolean;
}

/** Steps of a hand on one cycle in the order of the row; what runs beyond its end goes on at its beginning. */
export function barsOf(instance: Instance, { orders, schedule }: JudgedOrders, hand: Hand): readonly Bar[] {
  const { period } = schedule;
  return orders[hand].flatMap((task): Bar[] => {
    const mode = instance.tasks[task]?.modes[orders.modes[task] ?? 0];
    const start = schedule.placed[task]?.start ?? 0;
    if (mode === undefined || period <= 0 || roleOf(mode, hand) === undefined) return [];
    const from = start % period;
    const end = from + mode.time;
    const both = mode.left !== undefined && mode.right !== undefined;
    const several = (instance.tasks[task]?.modes.length ?? 0) > 1;
    // Of the two ways of a step that either hand can do, the first is done by the left hand and held by the right.
    const holds = both && several && ((orders.modes[task] ?? 0) === 0) !== (hand === 'left');
    const bar: Bar = { task, from, to: Math.min(end, period), holds, rest: false };
    return end <= period ? [bar] : [bar, { ...bar, from: 0, to: Math.min(period, end - period), rest: true }];
  });
}
