import type { ConfirmedCycle, Stretch } from './confirmed.ts';
import { channel, channels, type Signals } from './signals.ts';

/** A cycle found in the film: at which time of the film it is where in the confirmed cycle that it follows. */
export interface FoundCycle {
  /** Index of the confirmed cycle that it follows. */
  readonly follows: number;
  readonly start: number;
  readonly end: number;
  /** Time of the film for each grid point of the confirmed cycle; growing. */
  readonly times: Float64Array;
  /** Mean difference from the confirmed cycle, in units of the difference of a chance pair. */
  readonly distance: number;
  /** Share of the confirmed cycle that was passed over. */
  readonly skipped: number;
}

export interface PathWeights {
  readonly place: number;
  readonly velocity: number;
  readonly speed: number;
  readonly open: number;
  readonly most: number;
  readonly unseen: number;
  readonly stall: number;
  readonly twice: number;
  readonly thrice: number;
  readonly leap: number;
  readonly enter: number;
  readonly outside: number;
}

export const pathWeights: PathWeights = {
  place: 15,
  velocity: 7,
  speed: 1.7,
  open: 4,
  most: 6,
  unseen: 1.2,
  stall: 0.35,
  twice: 0.25,
  thrice: 0.8,
  leap: 64,
  enter: 3,
  outside: 1,
};

const perHand = 6;

/** Signals as the path compares them: weighted so that a plain sum of squares is the difference. */
function weighted(signals: Signals, weights: PathWeights): { values: Float32Array; width: number } {
  const width = 2 * (perHand + 2);
  const values = new Float32Array(signals.count * width);
  const root = {
    place: Math.sqrt(weights.place),
    velocity: Math.sqrt(weights.velocity),
    speed: Math.sqrt(weights.speed),
    open: Math.sqrt(weights.open),
  };
  [signals.left, signals.right].forEach(({ data }, side) => {
    for (let point = 0; point < signals.count; point += 1) {
      const from = point * channels;
      const to = point * width + side * (perHand + 2);
      const z = data[from + channel.z] as number;
      const vz = data[from + channel.vz] as number;
      values[to] = (data[from + channel.x] as number) * root.place;
      values[to + 1] = (data[from + channel.y] as number) * root.place;
      values[to + 2] = Number.isNaN(z) ? 0 : z * root.place;
      values[to + 3] = (data[from + channel.vx] as number) * root.velocity;
      values[to + 4] = (data[from + channel.vy] as number) * root.velocity;
      values[to + 5] = Number.isNaN(vz) ? 0 : vz * root.velocity;
      values[to + 6] = (data[from + channel.speed] as number) * root.speed;
      values[to + 7] = (data[from + channel.open] as number) * root.open;
    }
  });
  return { values, width };
}

function difference(
  values: Float32Array,
  width: number,
  a: number,
  b: number,
  { most, unseen }: PathWeights,
): number {
  let sum = 0;
  for (let side = 0; side < 2; side += 1) {
    const [one, two] = [a * width + side * (perHand + 2), b * width + side * (perHand + 2)];
    const [seenOne, seenTwo] = [!Number.isNaN(values[one]), !Number.isNaN(values[two])];
    if (!seenOne || !seenTwo) {
      if (seenOne !== seenTwo) sum += unseen;
      continue;
    }
    let own = 0;
    for (let index = 0; index < perHand + 2; index += 1) {
      const gap = (values[one + index] as number) - (values[two + index] as number);
      if (!Number.isNaN(gap)) own += gap * gap;
    }
    sum += own < most ? own : most;
  }
  return sum;
}

/** The difference of two moments taken by chance: the measure for how like two moments are. */
function chanceDifference(
  signals: { values: Float32Array; width: number; count: number },
  templates: readonly { from: number; length: number }[],
  weights: PathWeights,
): number {
  const drawn: number[] = [];
  const every = Math.max(1, Math.floor(signals.count / 400));
  for (const { from, length } of templates)
    for (let point = 0; point < signals.count; point += every) {
      let sum = 0;
      let number = 0;
      for (let at = 0; at < length; at += Math.max(1, Math.floor(length / 24))) {
        sum += difference(signals.values, signals.width, from + at, point, weights);
        number += 1;
      }
      drawn.push(sum / number);
    }
  drawn.sort((a, b) => a - b);
  return Math.max(1e-6, drawn[drawn.length >> 1] ?? 1);
}

/**
 * The cycles of a stretch: the cheapest path on which every moment of the film either lies outside the cycles or is a
 * moment of a confirmed cycle. A cycle goes forward through the confirmed one at no, one, two or three points for each
 * point of the film; a pause stands still, a motion left out is leapt over, and both cost something.
 */
export function findCycles(
  signals: Signals,
  confirmed: readonly ConfirmedCycle[],
  { start, end }: Stretch,
  weights: PathWeights = pathWeights,
  order: Order = 'forward',
): FoundCycle[] {
  const { values, width } = weighted(signals, weights);
  const point = (time: number) => Math.round((time - signals.from) / signals.step);
  const templates = confirmed.map((cycle) => {
    const from = Math.max(0, point(cycle.start));
    return { from, length: Math.max(2, Math.min(point(cycle.end), signals.count) - from) };
  });
  const chance = chanceDifference({ values, width, count: signals.count }, templates, weights);
  const first = Math.max(0, point(start));
  const length = Math.min(signals.count, point(end)) - first;
  if (length < 2) return [];
  const bases: number[] = [];
  let states = 1;
  for (const template of templates) {
    bases.push(states);
    states += template.length;
  }
  const outside = weights.outside;
  let before = new Float64Array(states).fill(Number.POSITIVE_INFINITY);
  let now = new Float64Array(states);
  const cameFrom = new Int32Array(length * states);
  const queue = new Int32Array(states);
  before[0] = 0;
  for (let moment = 0; moment < length; moment += 1) {
    const row = moment * states;
    // Ends of cycles from which the next one may begin or the outside be entered.
    let ended = Number.POSITIVE_INFINITY;
    let endedAt = 0;
    templates.forEach((template, index) => {
      const last = (bases[index] as number) + template.length - 1;
      for (let back = 0; back < Math.min(3, template.length); back += 1)
        if ((before[last - back] as number) + back * 0.3 < ended) {
          ended = (before[last - back] as number) + back * 0.3;
          endedAt = last - back;
        }
    });
    const out = before[0] as number;
    now[0] = Math.min(out, ended) + outside;
    cameFrom[row] = ended < out ? endedAt : 0;
    const entering = Math.min(out, ended) + weights.enter;
    const enteringFrom = ended < out ? endedAt : 0;
    templates.forEach((template, index) => {
      const base = bases[index] as number;
      // The least of what may be leapt from, by the usual queue of a sliding window.
      const farthest = Math.max(5, Math.floor(template.length * 0.4));
      let head = 0;
      let tail = 0;
      for (let at = 0; at < template.length; at += 1) {
        const state = base + at;
        if (at >= 4) {
          const cost = before[state - 4] as number;
          while (tail > head && (before[queue[tail - 1] as number] as number) >= cost) tail -= 1;
          queue[tail] = state - 4;
          tail += 1;
          while (state - (queue[head] as number) > farthest) head += 1;
        }
        let best = (before[state] as number) + weights.stall;
        let from = state;
        if (at >= 1 && (before[state - 1] as number) <= best) {
          best = before[state - 1] as number;
          from = state - 1;
        }
        if (at >= 2 && (before[state - 2] as number) + weights.twice < best) {
          best = (before[state - 2] as number) + weights.twice;
          from = state - 2;
        }
        if (at >= 3 && (before[state - 3] as number) + weights.thrice < best) {
          best = (before[state - 3] as number) + weights.thrice;
          from = state - 3;
        }
        if (tail > head && (before[queue[head] as number] as number) + weights.leap < best) {
          best = (before[queue[head] as number] as number) + weights.leap;
          from = queue[head] as number;
        }
        if (at === 0 && entering < best) {
          best = entering;
          from = enteringFrom === 0 ? 0 : -enteringFrom;
        }
        const cost =
          best === Number.POSITIVE_INFINITY
            ? 0
            : difference(values, width, pointOf(template, at, order), first + moment, weights) / chance;
        now[state] = best + cost;
        cameFrom[row + state] = from;
      }
    });
    [before, now] = [now, before];
  }
  return traced({
    cameFrom,
    states,
    length,
    bases,
    templates,
    before,
    first,
    values,
    width,
    chance,
    weights,
    signals,
    order,
  });
}

/** In what order the confirmed cycles are gone through: as they are, or in an order that nobody works in, for comparison. */
export type Order = 'forward' | 'backward' | 'halves';

function pointOf(
  { from, length }: { readonly from: number; readonly length: number },
  at: number,
  order: Order,
): number {
  if (order === 'forward') return from + at;
  return order === 'backward' ? from + length - 1 - at : from + ((at + (length >> 1)) % length);
}

/**
 * How much more like the confirmed cycle a found one is than anything would be: its difference as a share of that which
 * the same confirmed cycle has when it is gone through in a wrong order. Near 1, or above it, there is no likeness.
 */
export function likenessShare(
  signals: Signals,
  confirmed: readonly ConfirmedCycle[],
  found: FoundCycle,
  weights: PathWeights = pathWeights,
): number {
  const own = [confirmed[found.follows] as ConfirmedCycle];
  const whole: PathWeights = { ...weights, outside: 20, enter: 60 };
  const wrong = (['backward', 'halves'] as const).flatMap((order) => {
    const cycles = findCycles(signals, own, found, whole, order);
    return cycles.length === 0 ? [] : [Math.min(...cycles.map(({ distance }) => distance))];
  });
  return wrong.length === 0 ? 1 : found.distance / Math.min(...wrong);
}

interface Trace {
  readonly cameFrom: Int32Array;
  readonly states: number;
  readonly length: number;
  readonly bases: readonly number[];
  readonly templates: readonly { readonly from: number; readonly length: number }[];
  readonly before: Float64Array;
  readonly first: number;
  readonly values: Float32Array;
  readonly width: number;
  readonly chance: number;
  readonly weights: PathWeights;
  readonly signals: Signals;
  readonly order: Order;
}

function traced(trace: Trace): FoundCycle[] {
  const { cameFrom, states, length, bases, templates, before } = trace;
  let state = 0;
  // The film may end with the last point of a cycle.
  templates.forEach((template, index) => {
    const last = (bases[index] as number) + template.length - 1;
    if ((before[last] as number) < (before[state] as number)) state = last;
  });
  const found: FoundCycle[] = [];
  let path: { moment: number; at: number }[] = [];
  // Whether the moment after the path lies outside of all cycles.
  let stopped = true;
  const templateOf = (of: number) => {
    let index = bases.length - 1;
    while (index > 0 && (bases[index] as number) > of) index -= 1;
    return index;
  };
  for (let moment = length - 1; moment >= 0; moment -= 1) {
    const raw = cameFrom[moment * states + state] as number;
    if (state === 0) {
      stopped = true;
      state = raw;
      continue;
    }
    const index = templateOf(state);
    const base = bases[index] as number;
    path.push({ moment, at: state - base });
    const next = Math.abs(raw);
    const entered = raw <= 0;
    if (entered || moment === 0) {
      if (entered)
        found.push(
          cycleOf(trace, index, path.reverse(), { begins: next === 0, ends: found.length === 0 || stopped }),
        );
      stopped = next === 0;
      path = [];
    }
    state = next;
  }
  return found.reverse();
}

function cycleOf(
  { templates, first, signals, values, width, chance, weights, order }: Trace,
  index: number,
  whole: readonly { readonly moment: number; readonly at: number }[],
  rest: { readonly begins: boolean; readonly ends: boolean },
): FoundCycle {
  const template = templates[index] as Trace['templates'][number];
  const pause = Math.round(longPause / signals.step);
  const path = withoutRest(whole, template.length, { ...rest, pause });
  const times = new Float64Array(template.length + 1).fill(Number.NaN);
  const time = (moment: number) => signals.from + (first + moment) * signals.step;
  let sum = 0;
  let skipped = 0;
  path.forEach(({ moment, at }, step) => {
    if (Number.isNaN(times[at])) times[at] = time(moment);
    sum += difference(values, width, pointOf(template, at, order), first + moment, weights) / chance;
    const leap = step === 0 ? at : at - (path[step - 1]?.at ?? 0);
    if (leap > 3) skipped += leap - 1;
  });
  const last = path.at(-1);
  times[template.length] = time((last?.moment ?? 0) + 1);
  fillBetween(times, time(path[0]?.moment ?? 0));
  return {
    follows: index,
    start: time(path[0]?.moment ?? 0),
    end: times[template.length] as number,
    times,
    distance: sum / Math.max(1, path.length),
    skipped: skipped / template.length,
  };
}

/** Rest between two cycles longer than this belongs to neither, in seconds. */
const longPause = 0.5;

/** Points at either end of a cycle among which a hand at rest may be found. */
const zone = 4;

/**
 * Standing still at the first or last points of a cycle is rest and no part of it: beside time outside of all cycles any of
 * it, between two cycles when it is longer than `pause` points.
 */
function withoutRest<Step extends { readonly at: number }>(
  path: readonly Step[],
  length: number,
  { begins, ends, pause }: { readonly begins: boolean; readonly ends: boolean; readonly pause: number },
): readonly Step[] {
  const first = path.findIndex(({ at }) => at >= zone);
  const last = path.findLastIndex(({ at }) => at < length - zone);
  const before = first < 0 ? 0 : first - zone;
  const after = last < 0 ? 0 : path.length - 1 - last - zone;
  const from = before > (begins ? 0 : pause) ? before : 0;
  const to = path.length - (after > (ends ? 0 : pause) ? after : 0);
  return to - from < 3 ? path : path.slice(from, to);
}

function fillBetween(times: Float64Array, start: number): void {
  if (Number.isNaN(times[0])) times[0] = start;
  let known = 0;
  for (let at = 1; at < times.length; at += 1) {
    if (Number.isNaN(times[at])) continue;
    for (let gap = known + 1; gap < at; gap += 1)
      times[gap] =
        (times[known] as number) +
        (((times[at] as number) - (times[known] as number)) * (gap - known)) / (at - known);
    known = at;
  }
}
