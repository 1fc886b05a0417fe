import type { MethodReading } from '../../examine/index.ts';
import { type Instance, type Orders, type Schedule, scheduleOf } from '../compose/index.ts';
import { type PredictionBase, predictWork, type WorkTimes } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';

export interface FigureAtOnce {
  readonly times: WorkTimes;
  readonly instance: Instance;
  readonly schedule: Schedule;
  /** Microseconds for one unit. */
  readonly unitTime: number;
  /** Which of the known orders is the shortest here. */
  readonly from: number;
}

/**
 * A method for a work whose places were moved, without a search: the orders of methods that were found before, timed anew
 * with the moves as they are now, and the shortest of them. It can be done as it stands; whether a shorter one is there
 * only the composer can say. Undefined when no order is for steps of this number.
 */
export function figureAtOnce(
  work: Work,
  readings: readonly MethodReading[],
  known: readonly Orders[],
  more: Pick<PredictionBase, 'table' | 'library'> = {},
): FigureAtOnce | undefined {
  const fitting = known.flatMap((orders, from) =>
    orders.modes.length === work.steps.length ? [{ orders, from }] : [],
  );
  if (fitting.length === 0) return undefined;
  const times = predictWork(work, readings, more);
  const instance = instanceOf(work, times);
  let best: FigureAtOnce | undefined;
  for (const { orders, from } of fitting) {
    const schedule = scheduleOf(instance, orders);
    if (schedule === undefined || (best !== undefined && schedule.period >= best.schedule.period)) continue;
    best = { times, instance, schedule, unitTime: schedule.period / work.unitsPerCycle, from };
  }
  return best;
}
