/** Points of the film in which a boundary is sought: `count` of them from `low` on. */
export interface Window {
  readonly low: number;
  readonly count: number;
}

/**
 * What it is worth to put a boundary at each point of its window: the chance that it lies near, and a little for being no
 * farther than need be.
 * @param chances for each point that the boundary lies there, sum 1
 * @param near points that count as the same place
 * @param wide points from which on a place is worth nothing
 */
export function gainsOf(chances: Float64Array, near: number, wide: number): Float64Array {
  const gains = new Float64Array(chances.length);
  chances.forEach((chance, from) => {
    if (chance < 1e-6) return;
    const last = Math.min(chances.length - 1, from + wide);
    for (let at = Math.max(0, from - wide); at <= last; at += 1) {
      const away = Math.abs(at - from);
      gains[at] = (gains[at] as number) + chance * ((away <= near ? 1 : 0) + 1 - away / wide);
    }
  });
  return gains;
}

/**
 * The places that are worth most together, in order of time. The cheapest way alone may be one of many that differ from
 * it; what most ways agree on is more often right. Which motions are left out is taken from the cheapest way.
 * @param cheapest for each boundary its point in its window, by the cheapest way
 * @returns for each boundary its point in its window
 */
export function likeliest(
  cheapest: Int32Array,
  windows: readonly Window[],
  gains: readonly Float64Array[],
): Int32Array {
  const totals: Float64Array[] = [];
  const cameFrom: Int32Array[] = [];
  const place = (index: number) => (windows[index]?.low ?? 0) + (cheapest[index] as number);
  gains.forEach((gain, index) => {
    const before = totals[index - 1];
    if (before === undefined) {
      totals.push(gain);
      cameFrom.push(new Int32Array(gain.length));
      return;
    }
    const shift = (windows[index]?.low ?? 0) - (windows[index - 1]?.low ?? 0);
    const leftOut = place(index) - place(index - 1) < 2;
    const from = leftOut ? together(before, gain.length, shift) : after(before, gain.length, shift);
    totals.push(
      gain.map((value, at) =>
        (from[at] as number) < 0 ? none : value + (before[from[at] as number] as number),
      ),
    );
    cameFrom.push(from);
  });
  const last = totals.at(-1);
  if (last === undefined) return cheapest;
  let at = argmax(last);
  if (last[at] === none) return cheapest;
  const chosen = new Int32Array(cheapest.length);
  for (let index = chosen.length - 1; index >= 0; index -= 1) {
    chosen[index] = at;
    at = (cameFrom[index] as Int32Array)[at] as number;
  }
  return chosen;
}

const none = Number.NEGATIVE_INFINITY;

/** For each point the best one of the window before, at least two points earlier; -1 where there is none. */
function after(before: Float64Array, count: number, shift: number): Int32Array {
  let best = -1;
  let next = 0;
  return Int32Array.from({ length: count }, (_, at) => {
    for (; next < before.length && next <= at + shift - 2; next += 1)
      if (best < 0 || (before[next] as number) > (before[best] as number)) best = next;
    return best >= 0 && before[best] === none ? -1 : best;
  });
}

/** For each point the same one of the window before, or the one before that; -1 where there is none. */
function together(before: Float64Array, count: number, shift: number): Int32Array {
  return Int32Array.from({ length: count }, (_, at) => {
    const [same, earlier] = [at + shift, at + shift - 1];
    const [a, b] = [before[same] ?? none, before[earlier] ?? none];
    if (a === none && b === none) return -1;
    return a >= b ? same : earlier;
  });
}

function argmax(values: Float64Array): number {
  let best = 0;
  values.forEach((value, index) => {
    if (value > (values[best] as number)) best = index;
  });
  return best;
}

/**
 * How all ways of placing the boundaries, each weighed by the exponential of its cost, are spread over the points.
 * @param own cost of each point of each window
 * @param pairs cost of each pair of points of two windows that follow each other
 * @param heat the larger, the more dear ways count
 * @returns for each boundary the share of each point of its window, sum 1
 */
export function spread(
  own: readonly Float64Array[],
  pairs: readonly Float64Array[],
  heat: number,
): Float64Array[] {
  const forward: Float64Array[] = [];
  own.forEach((costs, index) => {
    const before = forward[index - 1];
    const pair = pairs[index - 1];
    const values = new Float64Array(costs.length);
    for (let at = 0; at < costs.length; at += 1) {
      let sum = before === undefined ? 1 : 0;
      if (before !== undefined && pair !== undefined)
        for (let last = 0; last < before.length; last += 1)
          sum += (before[last] as number) * Math.exp(-(pair[last * costs.length + at] as number) / heat);
      values[at] = sum * Math.exp(-(costs[at] as number) / heat);
    }
    forward.push(scaled(values));
  });
  const backward: Float64Array[] = own.map((costs) => new Float64Array(costs.length).fill(1));
  for (let index = own.length - 2; index >= 0; index -= 1) {
    const after = backward[index + 1] as Float64Array;
    const costs = own[index + 1] as Float64Array;
    const pair = pairs[index] as Float64Array;
    const values = backward[index] as Float64Array;
    for (let at = 0; at < values.length; at += 1) {
      let sum = 0;
      for (let next = 0; next < after.length; next += 1)
        sum +=
          (after[next] as number) *
          Math.exp(-((pair[at * after.length + next] as number) + (costs[next] as number)) / heat);
      values[at] = sum;
    }
    scaled(values);
  }
  return own.map((_, index) =>
    scaled(
      (forward[index] as Float64Array).map(
        (value, at) => value * ((backward[index] as Float64Array)[at] as number),
      ),
    ),
  );
}

/** Brings the sum to 1 in place; all alike when nothing is left. */
function scaled(values: Float64Array): Float64Array {
  const sum = values.reduce((all, value) => all + value, 0);
  if (!(sum > 0)) return values.fill(1 / values.length);
  for (let index = 0; index < values.length; index += 1) values[index] = (values[index] as number) / sum;
  return values;
}
