import { bestFirst } from './best-first.ts';
import type { MaximalRuns } from './maximal-runs.ts';
import { type NextPlace, nextPlace } from './next-place.ts';
import type { TokenRow } from './token-row.ts';

/** A run with the occurrences that count. */
export interface CountedRun {
  /** Number of letters. */
  readonly length: number;
  /** Positions of the counted occurrences in the text, rising; none overlaps the one before. */
  readonly starts: readonly number[];
  /** Time of the counted occurrences, microseconds. */
  readonly total: number;
}

export interface TopRuns {
  readonly byCount: readonly CountedRun[];
  readonly byCost: readonly CountedRun[];
}

/** The runs that come again most often and those that cost most, exactly; only what can enter a ranking is counted. */
export function topRuns(row: TokenRow, runs: MaximalRuns, top: number): TopRuns {
  const counter = runCounter(row, runs);
  const bounds = costBounds(row, runs);
  const count = runs.length.length;
  return {
    byCount: ranked(count, top, { rough: (run) => mostCounted(row, runs, run), compare: byCount, counter }),
    byCost: ranked(count, top, { ...bounds, compare: byCost, counter }),
  };
}

interface Ranking {
  /** No less than the figure that is ranked; cheap. */
  readonly rough: (run: number) => number;
  /** The same, closer and dearer. */
  readonly fine?: (run: number) => number;
  readonly compare: Comparison;
  readonly counter: (run: number) => CountedRun;
}

interface Comparison {
  readonly figure: (run: CountedRun) => number;
  readonly order: (a: CountedRun, b: CountedRun) => number;
}

const byLengthAndPlace = (a: CountedRun, b: CountedRun) =>
  b.length - a.length || (a.starts[0] ?? 0) - (b.starts[0] ?? 0);
const byCount: Comparison = {
  figure: (run) => run.starts.length,
  order: (a, b) => b.starts.length - a.starts.length || b.total - a.total || byLengthAndPlace(a, b),
};
const byCost: Comparison = {
  figure: (run) => run.total,
  order: (a, b) => b.total - a.total || b.starts.length - a.starts.length || byLengthAndPlace(a, b),
};

function ranked(count: number, top: number, ranking: Ranking): CountedRun[] {
  const { rough, fine, compare, counter } = ranking;
  const bound = new Float64Array(count);
  for (let run = 0; run < count; run += 1) bound[run] = rough(run);
  const best: CountedRun[] = [];
  for (const run of bestFirst(bound)) {
    const last = best.length < top ? undefined : best.at(-1);
    const least = last === undefined ? 0 : compare.figure(last);
    if ((bound[run] as number) < least) break;
    if (fine !== undefined && last !== undefined && fine(run) < least) continue;
    const counted = counter(run);
    if (counted.starts.length < 2) continue;
    insert(best, counted, compare);
    if (best.length > top) best.pop();
  }
  return best;
}

function insert(best: CountedRun[], run: CountedRun, { order }: Comparison): void {
  const at = best.findIndex((other) => order(run, other) < 0);
  best.splice(at < 0 ? best.length : at, 0, run);
}

/** No more occurrences than there are, and no more than fit side by side. */
function mostCounted({ text }: TokenRow, { length, places }: MaximalRuns, run: number): number {
  return Math.min(places[run] as number, Math.floor(text.length / (length[run] as number)));
}

/** Counts the occurrences of a run from the left, each as soon as the one before is over: no choice gives more. */
function runCounter(row: TokenRow, runs: MaximalRuns): (run: number) => CountedRun {
  const known = new Map<number, CountedRun>();
  let next: NextPlace | undefined;
  return (run) => {
    const before = known.get(run);
    if (before !== undefined) return before;
    const [length, first, places] = [runs.length, runs.first, runs.places].map((list) => list[run] as number);
    if (length === undefined || first === undefined || places === undefined) throw new RangeError('no run');
    const jumps = (row.text.length / length) * 40;
    let starts: number[];
    if (places * Math.log2(places) <= jumps) starts = sideBySide(runs.order, first, places, length);
    else {
      next ??= nextPlace(runs.order);
      starts = byJumps(next, first, places, length);
    }
    const counted = { length, starts, total: timeOfAll(row, starts, length) };
    known.set(run, counted);
    return counted;
  };
}

function sideBySide(order: Int32Array, first: number, places: number, length: number): number[] {
  const found: number[] = [];
  let free = 0;
  for (const start of order.slice(first, first + places).sort()) {
    if (start < free) continue;
    found.push(start);
    free = start + length;
  }
  return found;
}

function byJumps(next: NextPlace, first: number, places: number, length: number): number[] {
  const found: number[] = [];
  const after = (limit: number) => next.atOrAfter(first, first + places, limit);
  for (let start = after(0); start >= 0; start = after(start + length)) found.push(start);
  return found;
}

function timeOfAll({ before }: TokenRow, starts: readonly number[], length: number): number {
  return starts.reduce(
    (sum, start) => sum + (before[start + length] as number) - (before[start] as number),
    0,
  );
}

/** Above this length the closer bound costs more than it saves. */
const longRun = 256;

/**
 * What a run can cost at most: roughly, every occurrence with the longest motion of each kind; closely, for each motion of
 * the run the longest ones that were recorded, no more of them than the run can have occurrences.
 */
function costBounds(row: TokenRow, runs: MaximalRuns): Pick<Ranking, 'rough' | 'fine'> {
  const longest = longestSums(row);
  const everything = row.before[row.text.length] as number;
  const sums = new Float64Array(row.text.length + 1);
  row.text.forEach((letter, at) => {
    sums[at + 1] = (sums[at] as number) + (longest[letter]?.[1] ?? 0);
  });
  const startOf = (run: number) => runs.order[runs.first[run] as number] as number;
  const rough = (run: number) => {
    const start = startOf(run);
    const one = (sums[start + (runs.length[run] as number)] as number) - (sums[start] as number);
    return Math.min(everything, mostCounted(row, runs, run) * one);
  };
  const fine = (run: number) => {
    const length = runs.length[run] as number;
    if (length > longRun) return everything;
    const most = mostCounted(row, runs, run);
    let sum = 0;
    for (let at = startOf(run), step = 0; step < length; step += 1) {
      const known = longest[row.text[at + step] as number] as Float64Array;
      sum += known[Math.min(most, known.length - 1)] as number;
    }
    return sum;
  };
  return { rough, fine };
}

/** For each letter the time of its longest motion, of its two longest, and so on; entry 0 is 0. */
function longestSums({ text, letters, before }: TokenRow): readonly Float64Array[] {
  const counts = new Int32Array(letters);
  for (const letter of text) counts[letter] = (counts[letter] as number) + 1;
  const times = Array.from(counts, (count) => new Float64Array(count + 1));
  counts.fill(0);
  text.forEach((letter, at) => {
    const list = times[letter] as Float64Array;
    // Negative, so that sorting puts the longest first and the empty entry last.
    list[counts[letter] as number] = (before[at] as number) - (before[at + 1] as number);
    counts[letter] = (counts[letter] as number) + 1;
  });
  return times.map(sumsOfLongest);
}

/** @param list negative times and a last 0; becomes 0, the longest time, the two longest together, and so on */
function sumsOfLongest(list: Float64Array): Float64Array {
  list.sort();
  const sums = new Float64Array(list.length);
  for (let at = 1; at < list.length; at += 1) sums[at] = (sums[at - 1] as number) - (list[at - 1] as number);
  return sums;
}
