import { commonStarts, suffixArray } from './suffix-array.ts';

/** All runs that can be neither lengthened to the left nor to the right without losing an occurrence. */
export interface MaximalRuns {
  /** Starts of all suffixes in their order. */
  readonly order: Int32Array;
  /** How much each suffix has in common with the one before it, up to the next separator. */
  readonly common: Int32Array;
  /** One entry a run: its length, its first place in the order, and how many places it takes there. */
  readonly length: Int32Array;
  readonly first: Int32Array;
  readonly places: Int32Array;
}

/** An occurrence stands after a separator, or not all occurrences stand after the same letter. */
const various = -1;

interface Open {
  readonly length: number;
  readonly first: number;
  before: number;
}

/**
 * The runs of two letters or more that occur at least twice, overlapping or not. There are fewer than the text has
 * letters; they are the inner nodes of its suffix tree of which not every occurrence follows the same letter.
 */
export function maximalRuns(text: Int32Array, letters: number): MaximalRuns {
  const order = suffixArray(text, letters);
  const common = commonStarts(text, order);
  const [length, first, places]: [number[], number[], number[]] = [[], [], []];
  const before = (index: number) => text[(order[index] as number) - 1] || various;
  const open: Open[] = [{ length: 0, first: 0, before: various }];
  for (let index = 1; index <= order.length; index += 1) {
    const here = common[index] ?? 0;
    let [start, letter] = [index - 1, before(index - 1)];
    let top = open.at(-1) as Open;
    while (top.length > here) {
      open.pop();
      letter = top.before === letter ? letter : various;
      start = top.first;
      if (top.length >= 2 && letter === various) {
        length.push(top.length);
        first.push(start);
        places.push(index - start);
      }
      top = open.at(-1) as Open;
    }
    if (top.length < here) open.push({ length: here, first: start, before: letter });
    else if (top.before !== letter) top.before = various;
  }
  const fixed = { length: Int32Array.from(length), first: Int32Array.from(first) };
  return { order, common, ...fixed, places: Int32Array.from(places) };
}
