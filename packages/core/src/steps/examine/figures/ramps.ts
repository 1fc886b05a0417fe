/** A stretch of time, end after start. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/**
 * A sum over pairs of stretches as a function of the lag: each pair gives the time for which the first stretch and the
 * second, moved earlier by the lag, overlap. A straight line between whole breakpoints, so that walking it loses nothing.
 */
export interface RampSum {
  /** Value and slope at −reach. */
  value: number;
  slope: number;
  /** Breakpoints above −reach at which the slope grows (falls) by 1; each list is sorted before it is walked. */
  readonly rises: number[];
  readonly falls: number[];
}

export function emptyRampSum(): RampSum {
  return { value: 0, slope: 0, rises: [], falls: [] };
}

/** Time for which the first stretch and the second, moved earlier by the lag, overlap. */
export function overlapAt(first: Stretch, second: Stretch, lag: number): number {
  return Math.max(0, Math.min(first.end, second.end - lag) - Math.max(first.start, second.start - lag));
}

/** Adds every pair that overlaps at some lag within ± reach. Both lists are in order of time, without overlap. */
export function addPairs(
  sum: RampSum,
  firsts: readonly Stretch[],
  seconds: readonly Stretch[],
  reach: number,
): void {
  let low = 0;
  for (const first of firsts) {
    while ((seconds[low]?.end ?? Number.POSITIVE_INFINITY) <= first.start - reach) low += 1;
    for (let index = low; ; index += 1) {
      const second = seconds[index];
      if (second === undefined || second.start >= first.end + reach) break;
      addPair(sum, first, second, reach);
    }
  }
}

function addPair(sum: RampSum, first: Stretch, second: Stretch, reach: number): void {
  sum.value += overlapAt(first, second, -reach);
  bend(sum, second.start - first.end, 1, reach);
  bend(sum, second.start - first.start, -1, reach);
  bend(sum, second.end - first.end, -1, reach);
  bend(sum, second.end - first.start, 1, reach);
}

function bend(sum: RampSum, at: number, by: 1 | -1, reach: number): void {
  if (at <= -reach) sum.slope += by;
  else if (at < reach) (by === 1 ? sum.rises : sum.falls).push(at);
}

/** Reads a sum at lags that never fall. */
export interface RampReader {
  readonly at: (lag: number) => number;
  /** The next breakpoint after the last lag that was read; infinity after the last one. */
  readonly next: () => number;
}

export function rampReader(sum: RampSum, reach: number): RampReader {
  const rises = Float64Array.from(sum.rises).sort();
  const falls = Float64Array.from(sum.falls).sort();
  let { value, slope } = sum;
  let [place, up, down] = [-reach, 0, 0];
  const next = () => Math.min(rises[up] ?? Number.POSITIVE_INFINITY, falls[down] ?? Number.POSITIVE_INFINITY);
  const pass = (lag: number) => {
    value += slope * (lag - place);
    place = lag;
    for (; rises[up] === lag; up += 1) slope += 1;
    for (; falls[down] === lag; down += 1) slope -= 1;
  };
  const at = (lag: number) => {
    for (let point = next(); point <= lag; point = next()) pass(point);
    value += slope * (lag - place);
    place = lag;
    return value;
  };
  return { at, next };
}
