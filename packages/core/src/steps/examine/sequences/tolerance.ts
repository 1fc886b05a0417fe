import type { MaximalRuns } from './maximal-runs.ts';
import type { Likeness } from './run.ts';

/** An occurrence in the text. */
export interface Placed {
  readonly start: number;
  readonly length: number;
  readonly likeness: Likeness;
}

/** The order in which an inexact likeness is preferred at the same start. */
const order = ['differs', 'extra', 'missing'] as const;

/** What the search reads: the text and all its suffixes in order. */
export interface Searched extends Pick<MaximalRuns, 'order' | 'common'> {
  readonly text: Int32Array;
  /** Place of each suffix in the order. */
  readonly rank: Int32Array;
}

/**
 * The exact occurrences with those that differ in one letter: another letter, one more inside, or one missing. Exact ones
 * come first; between them the inexact ones are taken from the left where they overlap nothing. One change leaves one
 * half of the run whole, so only the surroundings of the two halves are looked at.
 * @param starts counted exact occurrences of the run, rising, the first of which shows its letters
 */
export function withNearOnes(searched: Searched, starts: readonly number[], length: number): Placed[] {
  const exact = starts.map((start): Placed => ({ start, length, likeness: 'exact' }));
  const model = starts[0];
  if (model === undefined || length < 3) return exact;
  const taken = new Uint8Array(searched.text.length);
  for (const start of starts) taken.fill(1, start, start + length);
  const found: Placed[] = [];
  for (const start of seedStarts(searched, model, length, taken)) {
    const near = nearAt(searched.text, model, length, start, taken);
    if (near === undefined) continue;
    taken.fill(1, near.start, near.start + near.length);
    found.push(near);
  }
  return [...exact, ...found].sort((a, b) => a.start - b.start);
}

/** Every position at which an occurrence with one change can begin, rising. */
function seedStarts(searched: Searched, model: number, length: number, taken: Uint8Array): number[] {
  const half = Math.floor(length / 2);
  const starts = new Set<number>();
  for (const at of occurrences(searched, model, half)) if (taken[at] === 0) starts.add(at);
  for (const at of occurrences(searched, model + half, length - half)) {
    for (const start of [at - half - 1, at - half, at - half + 1]) {
      if (start >= 0 && taken[start] === 0) starts.add(start);
    }
  }
  return [...starts].sort((a, b) => a - b);
}

function* occurrences({ order, common, rank }: Searched, at: number, length: number): Generator<number> {
  let first = rank[at] as number;
  while (first > 0 && (common[first] as number) >= length) first -= 1;
  yield order[first] as number;
  for (let index = first + 1; index < order.length && (common[index] as number) >= length; index += 1) {
    yield order[index] as number;
  }
}

function nearAt(
  text: Int32Array,
  model: number,
  length: number,
  start: number,
  taken: Uint8Array,
): Placed | undefined {
  for (const likeness of order) {
    const found = length + (likeness === 'extra' ? 1 : likeness === 'missing' ? -1 : 0);
    if (start + found > text.length || !isFree(text, taken, start, found)) continue;
    if (isNear(text, model, length, start, likeness)) return { start, length: found, likeness };
  }
  return undefined;
}

function isFree(text: Int32Array, taken: Uint8Array, start: number, length: number): boolean {
  for (let at = start; at < start + length; at += 1) if (taken[at] === 1 || text[at] === 0) return false;
  return true;
}

/** Whether the letters from `start` are those of the run with one change; one more letter stands inside, not at an end. */
function isNear(
  text: Int32Array,
  model: number,
  length: number,
  start: number,
  likeness: (typeof order)[number],
): boolean {
  let same = 0;
  while (same < length && text[model + same] === text[start + same]) same += 1;
  const here = likeness === 'missing' ? 0 : 1;
  const there = likeness === 'extra' ? 0 : 1;
  if (likeness === 'extra' && (same === 0 || same === length)) return false;
  for (let at = same + there; at < length; at += 1) {
    if (text[model + at] !== text[start + at - there + here]) return false;
  }
  return likeness === 'missing' || same < length;
}
