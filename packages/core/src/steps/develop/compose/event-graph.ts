import type { Hand } from '../../../ground/study/index.ts';
import { greatestMean } from './cycle-mean.ts';
import { eyeGroups } from './eyes.ts';
import { type CycleKind, type Instance, type Mode, roleOf, setupTime } from './instance.ts';

/** start(to) + turns · period ≥ start(from) + weight. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  /** 1 when `to` belongs to the next cycle. */
  readonly turns: 0 | 1;
}

/** Who does what and in which order; the times follow from it. */
export interface Orders {
  readonly kind: CycleKind;
  /** Position of the chosen mode for each task. */
  readonly modes: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Every task that must be looked at, in the order in which it is. */
  readonly eyes: readonly number[];
}

/** Undefined when what a hand carries does not fit from one task to the next. */
export function arcsOf(instance: Instance, orders: Orders): readonly Arc[] | undefined {
  const arcs: Arc[] = [];
  const timeOf = (task: number) => modeOf(instance, orders, task).time;
  for (const hand of ['left', 'right'] as const) {
    const found = handArcs(instance, orders, hand);
    if (found === undefined) return undefined;
    arcs.push(...found);
  }
  instance.tasks.forEach(({ after }, to) => {
    for (const { task, lag } of after) arcs.push({ from: task, to, weight: timeOf(task) + lag, turns: 0 });
  });
  for (const [from, to] of gazeChanges(instance, orders.eyes))
    arcs.push({ from, to, weight: timeOf(from) + instance.gazeGap, turns: 0 });
  arcs.push(...eyeArcs(instance, orders));
  for (const { claimedBy, releasedBy } of instance.spots) {
    arcs.push({ from: releasedBy, to: claimedBy, weight: timeOf(releasedBy), turns: 1 });
  }
  return orders.kind === 'closed' ? [...arcs, ...barrierArcs(instance, orders)] : arcs;
}

export function modeOf({ tasks }: Instance, { modes }: Pick<Orders, 'modes'>, task: number): Mode {
  const mode = tasks[task]?.modes[modes[task] ?? 0];
  if (mode === undefined) throw new RangeError(`task ${task} has no mode ${modes[task]}`);
  return mode;
}

function handArcs(instance: Instance, orders: Orders, hand: Hand): Arc[] | undefined {
  const order = orders[hand];
  const arcs: Arc[] = [];
  for (const [index, from] of order.entries()) {
    const last = index === order.length - 1;
    const to = last ? order[0] : order[index + 1];
    if (to === undefined) continue;
    const [one, other] = [modeOf(instance, orders, from), modeOf(instance, orders, to)];
    const [a, b] = [roleOf(one, hand), roleOf(other, hand)];
    if (a === undefined || b === undefined) return undefined;
    const setup = setupTime(instance, hand, a, b, last);
    if (setup === undefined) return undefined;
    arcs.push({ from, to, weight: one.time + setup, turns: last ? 1 : 0 });
  }
  return arcs;
}

/**
 * Pairs of looks of which the later must wait for the earlier. A pair that one look between keeps apart by itself, being
 * apart from both, is left out: it follows from the other two.
 */
function gazeChanges({ tasks, apart }: Instance, eyes: readonly number[]): (readonly [number, number])[] {
  const places = eyes.map((task) => tasks[task]?.eyes ?? 0);
  const pairs: (readonly [number, number])[] = [];
  for (const [first, from] of eyes.entries()) {
    const between: number[] = [];
    for (let later = first + 1; later < eyes.length; later += 1) {
      const [one, other, to] = [places[first] ?? 0, places[later] ?? 0, eyes[later]];
      if (to === undefined || !apart(one, other)) continue;
      if (!between.some((place) => apart(place, other))) pairs.push([from, to]);
      if (!between.includes(other)) between.push(other);
    }
  }
  return pairs;
}

/** Of a closed cycle: one event from which both hands begin, and that comes again when both are back where they begin. */
function barrierArcs(instance: Instance, orders: Orders): Arc[] {
  const barrier = instance.tasks.length;
  return (['left', 'right'] as const).flatMap((hand): Arc[] => {
    const [first, last] = [orders[hand][0], orders[hand].at(-1)];
    if (first === undefined || last === undefined) return [];
    const [end, begin] = [modeOf(instance, orders, last), modeOf(instance, orders, first)];
    const [a, b] = [roleOf(end, hand), roleOf(begin, hand)];
    const back = a === undefined || b === undefined ? 0 : (setupTime(instance, hand, a, b, true) ?? 0);
    return [
      { from: barrier, to: first, weight: 0, turns: 0 },
      { from: last, to: barrier, weight: end.time + back, turns: 1 },
    ];
  });
}

/**
 * The eyes begin their next cycle when they have done with this one: an event before every look that shares them, which
 * comes again when every such look has ended and the gaze has gone back.
 */
function eyeArcs(instance: Instance, orders: Orders): Arc[] {
  const groups = eyeGroups(instance);
  return orders.eyes.flatMap((task): Arc[] => {
    const group = groups.of[task] ?? -1;
    if (group < 0) return [];
    const eyes = instance.tasks.length + 1 + group;
    const weight = modeOf(instance, orders, task).time + instance.gazeGap;
    return [
      { from: eyes, to: task, weight: 0, turns: 0 },
      { from: task, to: eyes, weight, turns: 1 },
    ];
  });
}

export interface Timing {
  readonly period: number;
  /** Earliest starts that repeat with the period; the first of all is 0. */
  readonly starts: readonly number[];
}

/**
 * The shortest period of the arcs and starts that keep it; undefined when tasks wait for each other in one cycle. Longest
 * paths within a cycle lead from what comes again (the ends of arcs into the next cycle) to what comes again; the greatest
 * mean of their circles is the period.
 */
export function timingOf(tasks: number, arcs: readonly Arc[]): Timing | undefined {
  // Beside the tasks there are events for the barrier of a closed cycle and for the eyes.
  const count = arcs.reduce((most, { from, to }) => Math.max(most, from + 1, to + 1), tasks);
  const within = inOrder(
    count,
    arcs.filter(({ turns }) => turns === 0),
  );
  if (within === undefined) return undefined;
  const across = arcs.filter(({ turns }) => turns === 1);
  const again = [...new Set(across.map(({ to }) => to))];
  const matrix = new Float64Array(again.length ** 2).fill(Number.NEGATIVE_INFINITY);
  const reach = new Float64Array(count);
  for (const [row, source] of again.entries()) {
    reach.fill(Number.NEGATIVE_INFINITY);
    reach[source] = 0;
    lengthen(reach, within);
    for (const { from, to, weight } of across) {
      const at = row * again.length + again.indexOf(to);
      matrix[at] = Math.max(matrix[at] as number, (reach[from] as number) + weight);
    }
  }
  const period = Math.ceil(greatestMean(matrix, again.length) - 1e-6);
  const own = startsAt(count, within, across, period, again.length + 1)?.slice(0, tasks);
  if (own === undefined) throw new Error(`the arcs cannot be kept at the period ${period} that they give`);
  const first = own.reduce((least, start) => Math.min(least, start), Number.POSITIVE_INFINITY);
  return { period, starts: own.map((start) => start - first) };
}

/** Arcs within a cycle so that what leads to an event comes before what leads on from it; undefined when there is a circle. */
function inOrder(count: number, arcs: readonly Arc[]): readonly Arc[] | undefined {
  const open = new Int32Array(count);
  const out: Arc[][] = Array.from({ length: count }, () => []);
  for (const arc of arcs) {
    open[arc.to] = (open[arc.to] as number) + 1;
    out[arc.from]?.push(arc);
  }
  const ready = [...open.keys()].filter((event) => open[event] === 0);
  const ordered: Arc[] = [];
  for (const event of ready) {
    for (const arc of out[event] ?? []) {
      ordered.push(arc);
      open[arc.to] = (open[arc.to] as number) - 1;
      if (open[arc.to] === 0) ready.push(arc.to);
    }
  }
  return ready.length === count ? ordered : undefined;
}

/** Longest paths along arcs that are in order. */
function lengthen(reach: Float64Array, ordered: readonly Arc[]): void {
  for (const { from, to, weight } of ordered) {
    const least = (reach[from] as number) + weight;
    if (least > (reach[to] as number)) reach[to] = least;
  }
}

/** Earliest starts that repeat with a period; undefined when there are none. */
function startsAt(
  count: number,
  within: readonly Arc[],
  across: readonly Arc[],
  period: number,
  rounds: number,
): number[] | undefined {
  const starts = new Float64Array(count);
  for (let round = 0; round <= rounds; round += 1) {
    lengthen(starts, within);
    let changed = false;
    for (const { from, to, weight } of across) {
      const least = (starts[from] as number) + weight - period;
      if (least <= (starts[to] as number)) continue;
      starts[to] = least;
      changed = true;
    }
    if (!changed) return [...starts];
  }
  return undefined;
}
