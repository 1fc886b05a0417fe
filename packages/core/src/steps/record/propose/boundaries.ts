import type { Hand } from '../../../ground/study/index.ts';
import { type ConfirmedCycle, type ExpectedStart, startsWithin } from './confirmed.ts';
import type { FoundCycle } from './cycle-path.ts';
import { type HandPathWeights, handPath, handPathWeights } from './hand-path.ts';
import { gainsOf, likeliest, spread, type Window } from './likeliest.ts';
import { handSignals, type Signals } from './signals.ts';
import {
  faster,
  type Moments,
  momentsOf,
  resting,
  type UnlikeWeights,
  unlike,
  unlikeScaled,
} from './unlike.ts';

/** A boundary put into the film. */
export interface PlacedStart {
  /** Index of the found cycle to which it belongs. */
  readonly cycle: number;
  /** Label of the motion that begins; undefined where the work stops after a cycle. */
  readonly label: number | undefined;
  /** Seconds of the film. */
  readonly at: number;
  /** It is the boundary with which the confirmed cycle begins. */
  readonly first: boolean;
  /** The motion that begins here is not in this cycle. */
  readonly missing: boolean;
  /** How long the motion lasts in the confirmed cycles, at the speed of this one, in seconds. */
  readonly usual: number | undefined;
  /** Chance, before calibration, that the boundary lies within a fifth of a second of here. */
  readonly sure: number;
  /** How far the next best place lies above this one; bigger is surer. */
  readonly difference: number;
}

export interface BoundaryWeights extends UnlikeWeights {
  readonly window: number;
  readonly search: number;
  readonly look: number;
  readonly inside: number;
  readonly warp: number;
  readonly warpSpread: number;
  readonly timeSpread: number;
  readonly other: number;
  /** Cost of running slower or faster on one side, for the square of the logarithm. */
  readonly scaling: number;
  /** How freely a whole motion may be slower or faster, 0 to 1. */
  readonly freely: number;
  readonly missing: number;
  readonly heat: number;
  /** The same for choosing the places; `heat` is for saying how sure they are. */
  readonly placeHeat: number;
}

export const boundaryWeights: BoundaryWeights = {
  window: 0.5,
  search: 0.9,
  look: 9,
  inside: 1.4,
  warp: 1,
  warpSpread: 0.35,
  timeSpread: 0.4,
  other: 0.25,
  place: 12,
  velocity: 2,
  speed: 1.1,
  open: 3.5,
  opens: 0.6,
  most: 3,
  scaling: 0.3,
  freely: 0.8,
  missing: 6,
  heat: 2,
  placeHeat: 1,
};

/** A boundary to be placed, with the like boundaries of the confirmed cycles and where the path puts it. */
interface Sought {
  readonly cycle: number;
  readonly label: number | undefined;
  readonly expected: number;
  /** Times of the film at which like boundaries lie in confirmed cycles. */
  readonly examples: readonly number[];
  /** Times of the motion that begins here in the confirmed cycles, in seconds; none after the last. */
  readonly lasts: readonly number[];
  /** First and last time of that motion in each confirmed cycle. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  readonly tempo: number;
  readonly first: boolean;
  /** Work begins here out of rest, or goes over into it: the other side of the boundary tells nothing. */
  readonly edge?: 'begins' | 'ends';
}

/** Places all boundaries of one hand in the found cycles of one stretch: the cheapest of all ways in order of time. */
export function placeStarts(
  signals: Signals,
  hand: Hand,
  confirmed: readonly ConfirmedCycle[],
  found: readonly FoundCycle[],
  weights: BoundaryWeights = boundaryWeights,
  path: HandPathWeights = handPathWeights,
): PlacedStart[] {
  const sought = soughtStarts(signals, hand, confirmed, found, path);
  if (sought.length === 0) return [];
  return placed(signals, hand, sought, weights);
}

function soughtStarts(
  signals: Signals,
  hand: Hand,
  confirmed: readonly ConfirmedCycle[],
  found: readonly FoundCycle[],
  path: HandPathWeights,
): Sought[] {
  const tolerance = signals.step * 2.5;
  const expectedOf = confirmed.map((cycle) => startsWithin(cycle, hand, tolerance));
  const sought: Sought[] = [];
  found.forEach((cycle, number) => {
    const own = confirmed[cycle.follows] as ConfirmedCycle;
    const starts = expectedOf[cycle.follows] as ExpectedStart[];
    const follows = found[number + 1];
    const joins = follows !== undefined && follows.start - cycle.end < signals.step * 3;
    const earlier = found[number - 1];
    const continues = earlier !== undefined && cycle.start - earlier.end < signals.step * 3;
    const times = handPath(signals, handSignals(signals, hand), own, cycle, path);
    const tempo = (cycle.end - cycle.start) / Math.max(1e-6, own.end - own.start);
    const partners = confirmed.map((_, index) =>
      index === cycle.follows
        ? starts.map((__, at) => at)
        : matched(starts, expectedOf[index] as ExpectedStart[]),
    );
    const paths = confirmed.map((other, index) => {
      if (index === cycle.follows) return times;
      const theirs = expectedOf[index] as ExpectedStart[];
      const joints = (partners[index] as (number | undefined)[]).flatMap((partner, at) =>
        partner === undefined
          ? []
          : [{ theirs: (theirs[partner] as ExpectedStart).at, own: (starts[at] as ExpectedStart).at }],
      );
      const carried = carriedTimes(signals.step, other, own, joints, times);
      return handPath(signals, handSignals(signals, hand), other, { ...cycle, times: carried }, path);
    });
    const expectedAt = (at: number): number => {
      const all = paths.flatMap((one, index) => {
        const partner = partners[index]?.[at];
        if (partner === undefined) return [];
        return [timeAt(one, ((expectedOf[index] as ExpectedStart[])[partner]?.at as number) / signals.step)];
      });
      return middleOf(all);
    };
    starts.forEach((start, at) => {
      const like = confirmed.flatMap((other, index) => {
        const partner = partners[index]?.[at];
        const theirs = partner === undefined ? undefined : (expectedOf[index] as ExpectedStart[])[partner];
        if (theirs === undefined) return [];
        const next = (expectedOf[index] as ExpectedStart[])[(partner as number) + 1];
        const from = other.start + theirs.at;
        return [{ from, to: next === undefined ? other.end : other.start + next.at }];
      });
      sought.push({
        cycle: number,
        label: start.label,
        expected: expectedAt(at),
        examples: like.map(({ from }) => from),
        spans: like,
        lasts: like.map(({ from, to }) => to - from),
        tempo,
        first: start.at <= tolerance,
        ...(start.at <= tolerance && !continues ? { edge: 'begins' as const } : {}),
      });
    });
    if (!joins)
      sought.push({
        cycle: number,
        label: undefined,
        expected: cycle.end,
        examples: [own.end],
        spans: [],
        lasts: [],
        tempo,
        first: false,
        edge: 'ends',
      });
  });
  return sought;
}

/** The times of one confirmed cycle’s points, carried over from another one between boundaries that both have. */
function carriedTimes(
  step: number,
  other: ConfirmedCycle,
  own: ConfirmedCycle,
  joints: readonly { readonly theirs: number; readonly own: number }[],
  times: Float64Array,
): Float64Array {
  const ends = [
    { theirs: 0, own: 0 },
    ...joints.filter(({ theirs }) => theirs > 0),
    { theirs: other.end - other.start, own: own.end - own.start },
  ];
  const count = Math.max(2, Math.round((other.end - other.start) / step) + 1);
  let at = 0;
  return Float64Array.from({ length: count }, (_, point) => {
    const time = point * step;
    while (at < ends.length - 2 && time > (ends[at + 1]?.theirs ?? 0)) at += 1;
    const [low, high] = [ends[at], ends[at + 1]] as [(typeof ends)[number], (typeof ends)[number]];
    const share =
      high.theirs > low.theirs ? Math.min(1, (time - low.theirs) / (high.theirs - low.theirs)) : 1;
    return timeAt(times, (low.own + (high.own - low.own) * share) / step);
  });
}

function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[half] as number)
    : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2;
}

function timeAt(times: Float64Array, position: number): number {
  const last = times.length - 1;
  const low = Math.max(0, Math.min(last, Math.floor(position)));
  const high = Math.min(last, low + 1);
  const share = Math.max(0, Math.min(1, position - low));
  return (times[low] as number) * (1 - share) + (times[high] as number) * share;
}

/** For each of the starts the like one of another cycle, by the longest common row of labels. */
function matched(one: readonly ExpectedStart[], other: readonly ExpectedStart[]): (number | undefined)[] {
  const width = other.length + 1;
  const best = new Int32Array((one.length + 1) * width);
  for (let a = one.length - 1; a >= 0; a -= 1)
    for (let b = other.length - 1; b >= 0; b -= 1) {
      const same = alike(one[a] as ExpectedStart, other[b] as ExpectedStart);
      best[a * width + b] = Math.max(
        best[(a + 1) * width + b] as number,
        best[a * width + b + 1] as number,
        same === 0 ? 0 : same + (best[(a + 1) * width + b + 1] as number),
      );
    }
  const partner: (number | undefined)[] = one.map(() => undefined);
  let [a, b] = [0, 0];
  while (a < one.length && b < other.length) {
    const same = alike(one[a] as ExpectedStart, other[b] as ExpectedStart);
    const here = best[a * width + b] as number;
    if (same > 0 && here === same + (best[(a + 1) * width + b + 1] as number)) {
      partner[a] = b;
      a += 1;
      b += 1;
    } else if (here === best[(a + 1) * width + b]) a += 1;
    else b += 1;
  }
  return partner;
}

/** 3 when both the motion that ends and the one that begins are the same, 2 when only the one that begins is. */
function alike(one: ExpectedStart, other: ExpectedStart): number {
  if (one.label !== other.label) return 0;
  return one.before === other.before ? 3 : 2;
}

function placed(
  signals: Signals,
  hand: Hand,
  sought: readonly Sought[],
  weights: BoundaryWeights,
): PlacedStart[] {
  const compare = comparison(signals, hand, weights);
  const reach = Math.round(weights.search / signals.step);
  const ranges = sought.map(({ expected, edge, lasts, tempo }) => {
    const middle = Math.round((expected - signals.from) / signals.step);
    // Out of rest a hand comes another way than usual, so the path may have found the first motion late.
    // And where a hand comes to rest the path may go on standing still.
    const late = edge === 'ends' ? 1.5 : 0;
    const earlier = edge === 'begins' ? 1.2 * geometricMean(lasts) * tempo : late;
    const early = Math.round(earlier / signals.step);
    const low = Math.max(0, middle - reach - early);
    return { low, high: Math.max(low, Math.min(signals.count, middle + reach)) };
  });
  const windows = inOrder(ranges);
  const own = sought.map((item, index) => {
    const { low, count } = windows[index] as (typeof windows)[number];
    const costs = new Float64Array(count);
    for (let at = 0; at < count; at += 1) {
      const time = signals.from + (low + at) * signals.step;
      const off = (time - item.expected) / weights.warpSpread;
      costs[at] = weights.warp * Math.min(off * off * 0.5, 4) + weights.look * compare.look(item, low + at);
    }
    return costs;
  });
  const pairs = sought.slice(0, -1).map((item, index) => {
    const [here, next] = [windows[index], windows[index + 1]] as [
      (typeof windows)[number],
      (typeof windows)[number],
    ];
    return pairCosts(signals, item, here, next, compare, weights);
  });
  return decided(signals, sought, windows, own, pairs, weights);
}

/** Paths may cross; windows are widened until each boundary has a place after the one before it and before the next one. */
function inOrder(ranges: readonly { readonly low: number; readonly high: number }[]): Window[] {
  const lows = ranges.map(({ low }) => low);
  const highs = ranges.map(({ high }) => high);
  for (let at = 1; at < ranges.length; at += 1)
    highs[at] = Math.max(highs[at] as number, highs[at - 1] as number);
  for (let at = ranges.length - 2; at >= 0; at -= 1)
    lows[at] = Math.min(lows[at] as number, lows[at + 1] as number);
  return lows.map((low, at) => ({ low, count: (highs[at] as number) - low + 1 }));
}

/** What it costs that the motion between two boundaries runs from one point to another. */
function pairCosts(
  signals: Signals,
  item: Sought,
  here: Window,
  next: Window,
  compare: Comparison,
  weights: BoundaryWeights,
): Float64Array {
  const costs = new Float64Array(here.count * next.count).fill(Number.POSITIVE_INFINITY);
  const usual =
    item.lasts.length === 0 ? undefined : Math.max(signals.step, geometricMean(item.lasts) * item.tempo);
  const samples = 7;
  const first = here.low;
  const last = next.low + next.count - 1;
  const tables = item.spans.length === 0 ? undefined : compare.inside(item, samples, first, last);
  const span = last - first + 1;
  for (let a = 0; a < here.count; a += 1)
    for (let b = 0; b < next.count; b += 1) {
      const points = next.low + b - (here.low + a);
      if (points < 0) continue;
      if (points < 2) {
        costs[a * next.count + b] = usual === undefined ? 0 : weights.missing;
        continue;
      }
      if (usual === undefined || tables === undefined) {
        costs[a * next.count + b] = 0;
        continue;
      }
      const seconds = points * signals.step;
      const ratio = Math.log(seconds / usual) / weights.timeSpread;
      let sum = 0;
      let shift = 0;
      let squares = 0;
      for (let sample = 0; sample < samples; sample += 1) {
        const at = here.low + a + (points * (sample + 0.5)) / samples;
        const cell = sample * span + Math.round(at) - first;
        sum += tables.rest[cell] as number;
        const away = tables.speed[cell] as number;
        shift += away;
        squares += away * away;
      }
      sum += Math.min(weights.most * samples, squares - (weights.freely * shift * shift) / samples);
      const lasting = Math.min(seconds, usual * 2) / 0.25;
      costs[a * next.count + b] =
        0.5 * Math.min(ratio * ratio, 9) + (weights.inside * lasting * sum) / samples;
    }
  return costs;
}

function geometricMean(values: readonly number[]): number {
  return Math.exp(values.reduce((sum, value) => sum + Math.log(Math.max(0.02, value)), 0) / values.length);
}

interface Comparison {
  /** How unlike the moment is to the boundary in the confirmed cycles. */
  look(item: Sought, point: number): number;
  /** For samples along the motion and points of the film how unlike they are. */
  inside(
    item: Sought,
    samples: number,
    first: number,
    last: number,
  ): { rest: Float64Array; speed: Float64Array };
}

const scales = [0.6, 0.8, 1, 1.25, 1.6] as const;

function comparison(signals: Signals, hand: Hand, weights: BoundaryWeights): Comparison {
  const mine = momentsOf(handSignals(signals, hand), weights);
  // Out of rest the same place is reached another way: what tells is that the hand sets off.
  const moving = momentsOf(handSignals(signals, hand), {
    ...weights,
    place: 0,
    velocity: 0,
    open: 0,
    opens: 0,
  });
  // Speeds are compared along the whole motion, less its mean: a slower motion goes the same way.
  const placed = momentsOf(handSignals(signals, hand), {
    ...weights,
    velocity: weights.velocity * 0.5,
    speed: 0,
  });
  const other = momentsOf(handSignals(signals, hand === 'left' ? 'right' : 'left'), weights);
  const pointOf = (time: number) => Math.round((time - signals.from) / signals.step);
  const steps = 6;
  /** One side of a boundary; it may run slower or faster than in the confirmed cycle. */
  const half = (hand: Moments, base: number, point: number, side: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const scale of scales) {
      let sum = 0;
      for (let index = 0; index < steps; index += 1) {
        const away = (side * weights.window * index) / (steps - 1) / signals.step;
        const theirs = base + Math.round(away);
        const here = point + Math.round(away * scale);
        sum += unlikeScaled(hand, theirs, here, scale) + weights.other * unlike(other, theirs, here);
      }
      const cost = sum / steps + weights.scaling * Math.log(scale) ** 2;
      if (cost < least) least = cost;
    }
    return least;
  };
  const restedHalf = (point: number): number => {
    let sum = 0;
    for (let index = 1; index < steps; index += 1)
      sum += resting(mine, point - Math.round((weights.window * index) / (steps - 1) / signals.step));
    return sum / steps;
  };
  return {
    look(item, point) {
      let total = 0;
      for (const example of item.examples) {
        const base = pointOf(example);
        if (item.edge === 'begins') total += restedHalf(point) + half(moving, base, point, 1);
        else if (item.edge === 'ends') total += 2 * half(mine, base, point, -1);
        else total += half(mine, base, point, -1) + half(mine, base, point, 1);
      }
      return total / Math.max(1, 2 * item.examples.length);
    },
    inside(item, samples, first, last) {
      const span = last - first + 1;
      const rest = new Float64Array(samples * span);
      const speed = new Float64Array(samples * span);
      const share = 1 / item.spans.length;
      for (const { from, to } of item.spans)
        for (let sample = 0; sample < samples; sample += 1) {
          const theirs = pointOf(from + ((to - from) * (sample + 0.5)) / samples);
          for (let at = 0; at < span; at += 1) {
            const cell = sample * span + at;
            rest[cell] = (rest[cell] as number) + unlike(placed, theirs, first + at) * share;
            speed[cell] = (speed[cell] as number) + faster(mine, theirs, first + at) * share;
          }
        }
      return { rest, speed };
    },
  };
}

/** Forward and backward over all ways: the cheapest way, and how the others are spread about it. */
function decided(
  signals: Signals,
  sought: readonly Sought[],
  windows: readonly Window[],
  own: readonly Float64Array[],
  pairs: readonly Float64Array[],
  weights: BoundaryWeights,
): PlacedStart[] {
  const best: Float64Array[] = [];
  const from: Int32Array[] = [];
  own.forEach((costs, index) => {
    const before = best[index - 1];
    const pair = pairs[index - 1];
    const sum = new Float64Array(costs.length);
    const back = new Int32Array(costs.length);
    for (let at = 0; at < costs.length; at += 1) {
      let least = before === undefined ? 0 : Number.POSITIVE_INFINITY;
      if (before !== undefined && pair !== undefined)
        for (let last = 0; last < before.length; last += 1) {
          const cost = (before[last] as number) + (pair[last * costs.length + at] as number);
          if (cost < least) {
            least = cost;
            back[at] = last;
          }
        }
      sum[at] = least + (costs[at] as number);
    }
    best.push(sum);
    from.push(back);
  });
  const chosen = new Int32Array(sought.length);
  let at = argmin(best.at(-1) as Float64Array);
  for (let index = sought.length - 1; index >= 0; index -= 1) {
    chosen[index] = at;
    at = (from[index] as Int32Array)[at] as number;
  }
  const shares = spread(own, pairs, weights.heat);
  const near = Math.round(0.2 / signals.step);
  const wide = Math.round(1 / signals.step);
  const gains = spread(own, pairs, weights.placeHeat).map((chances) => gainsOf(chances, near, wide));
  const placed = likeliest(chosen, windows, gains);
  return sought.map((item, index) => {
    const point = placed[index] as number;
    const low = (windows[index] as Window).low;
    const chances = shares[index] as Float64Array;
    let sure = 0;
    for (
      let other = Math.max(0, point - near);
      other <= Math.min(chances.length - 1, point + near);
      other += 1
    )
      sure += chances[other] as number;
    const next =
      index + 1 < sought.length
        ? (windows[index + 1] as Window).low + (placed[index + 1] as number)
        : undefined;
    const missing = item.label !== undefined && next !== undefined && next - (low + point) < 2;
    return {
      cycle: item.cycle,
      label: item.label,
      at: signals.from + (low + point) * signals.step,
      first: item.first,
      missing,
      usual: item.lasts.length === 0 ? undefined : geometricMean(item.lasts) * item.tempo,
      sure,
      difference: (own[index] as Float64Array)[point] as number,
    };
  });
}

function argmin(values: Float64Array): number {
  let best = 0;
  values.forEach((value, index) => {
    if (value < (values[best] as number)) best = index;
  });
  return best;
}
