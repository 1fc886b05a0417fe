import type { Finding } from '../../../ground/findings/index.ts';
import {
  type Arc,
  arcsOf,
  checkSchedule,
  type Instance,
  type Mode,
  type Orders,
  type Role,
  type Schedule,
  scheduleOf,
  timingOf,
} from '../compose/index.ts';

/** Orders that a person wrote, with what they break and how long they take. */
export interface JudgedOrders {
  /** With the looks in the order that was found best for these rows. */
  readonly orders: Orders;
  /** Of least period where the orders can be kept; else one that keeps as much of them as can be kept together. */
  readonly schedule: Schedule;
  /** What the independent checker says of the schedule; empty when it can be done. */
  readonly faults: readonly Finding[];
}

/**
 * Judges rows that a person has changed. Whether they can be done is said by the checker, which runs the schedule moment by
 * moment and shares no code with the composer.
 */
export function judgeOrders(instance: Instance, orders: Orders): JudgedOrders {
  const kept = withBestLooks(instance, orders);
  if (kept !== undefined) return { ...kept, faults: checkSchedule(instance, kept.schedule) };
  const schedule = looseSchedule(instance, orders);
  return { orders, schedule, faults: checkSchedule(instance, schedule) };
}

interface Kept {
  readonly orders: Orders;
  readonly schedule: Schedule;
}

/**
 * The rows of the hands with an order of the looks: that which they had, or that in which they begin when nobody minds the
 * eyes, whichever is shorter, then with neighbours exchanged as long as that saves time. A person says what the hands do;
 * the eyes follow.
 */
function withBestLooks(instance: Instance, orders: Orders): Kept | undefined {
  const blind = scheduleOf(instance, { ...orders, eyes: [] });
  if (blind === undefined) return undefined;
  const looked = instance.tasks.flatMap(({ eyes }, task) => (eyes === undefined ? [] : [task]));
  const startOf = (task: number) => blind.placed[task]?.start ?? 0;
  const byTime = looked.sort((a, b) => startOf(a) - startOf(b) || a - b);
  const tried = (eyes: readonly number[]): Kept | undefined => {
    const wanted = { ...orders, eyes };
    const schedule = scheduleOf(instance, wanted);
    return schedule === undefined ? undefined : { orders: wanted, schedule };
  };
  let best = shorter(tried(orders.eyes), tried(byTime));
  while (best !== undefined && best.schedule.period > blind.period) {
    const { eyes } = best.orders;
    const better = eyes.slice(1).reduce((found: Kept | undefined, later, index) => {
      const earlier = eyes[index] ?? later;
      return shorter(found, tried(eyes.with(index, later).with(index + 1, earlier)));
    }, undefined);
    if (better === undefined || better.schedule.period >= best.schedule.period) break;
    best = better;
  }
  return best;
}

function shorter(one: Kept | undefined, other: Kept | undefined): Kept | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return other.schedule.period < one.schedule.period ? other : one;
}

/**
 * A schedule for rows that cannot be kept as they stand: what is carried is left out of account, and of what must wait for
 * what, all that can hold together: the left hand first, then the right, then the order of the work, the eyes and spots. It is
 * there to be looked at and to be judged by the checker.
 */
function looseSchedule(instance: Instance, orders: Orders): Schedule {
  const loose = withoutLoads(instance);
  const arcs = arcsOf(loose, { ...orders, eyes: [] }) ?? [];
  const count = instance.tasks.length;
  const together: Arc[] = [];
  for (const arc of arcs) if (arc.turns === 1 || !hasCircle([...together, arc])) together.push(arc);
  const timing = timingOf(count, together);
  return {
    kind: orders.kind,
    period: timing?.period ?? 0,
    placed: instance.tasks.map((_, task) => ({
      task,
      mode: orders.modes[task] ?? 0,
      start: timing?.starts[task] ?? 0,
    })),
    left: orders.left,
    right: orders.right,
    travel: 0,
  };
}

/** Whether steps wait for each other within one cycle. */
function hasCircle(arcs: readonly Arc[]): boolean {
  const next = new Map<number, number[]>();
  for (const { from, to, turns } of arcs) if (turns === 0) next.set(from, [...(next.get(from) ?? []), to]);
  const state = new Map<number, 'open' | 'done'>();
  const visit = (event: number): boolean => {
    if (state.get(event) === 'open') return true;
    if (state.get(event) === 'done') return false;
    state.set(event, 'open');
    const circle = (next.get(event) ?? []).some(visit);
    state.set(event, 'done');
    return circle;
  };
  return [...next.keys()].some(visit);
}

/** The same with empty hands throughout; ways take as long as with the load that takes longest there. */
function withoutLoads(instance: Instance): Instance {
  const empty = (role: Role | undefined): Role | undefined =>
    role === undefined ? undefined : { ...role, before: 0, after: 0 };
  const loads = instance.loads.map((_, load) => load);
  return {
    ...instance,
    tasks: instance.tasks.map((task) => ({
      ...task,
      modes: task.modes.map(
        ({ left, right, time }): Mode => ({ left: empty(left), right: empty(right), time }),
      ),
    })),
    travel: (hand, from, to) => Math.max(...loads.map((load) => instance.travel(hand, from, to, load))),
  };
}
