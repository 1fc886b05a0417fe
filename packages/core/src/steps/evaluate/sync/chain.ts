import type { SyncPart } from './sync.ts';

/**
 * Of stretches that both cycles have, those that can be kept in step: they come in the same order in both and do not
 * overlap in either, and together they are as long as they can be. The order of the cycle before; among equals the
 * earlier ones.
 */
export function longestChain(parts: readonly SyncPart[]): readonly SyncPart[] {
  const sorted = parts
    .filter((part) => length(part) > 0)
    .sort((a, b) => a.before.start - b.before.start || a.after.start - b.after.start);
  // What has ended in the cycle before may be followed; the best of it is asked for by where it ended in the cycle after.
  const ended = [...sorted.keys()].sort(
    (a, b) => (sorted[a]?.before.end ?? 0) - (sorted[b]?.before.end ?? 0) || a - b,
  );
  const ends = [...new Set(sorted.map(({ after }) => after.end))].sort((a, b) => a - b);
  const best = bestSoFar(ends);
  const totals: number[] = [];
  const previous: number[] = [];
  let next = 0;
  for (const [index, part] of sorted.entries()) {
    for (; next < ended.length; next += 1) {
      const other = ended[next] ?? 0;
      const done = sorted[other];
      if (done === undefined || done.before.end > part.before.start) break;
      best.add(done.after.end, totals[other] ?? 0, other);
    }
    const found = best.upTo(part.after.start);
    totals[index] = (found?.total ?? 0) + length(part);
    previous[index] = found?.index ?? -1;
  }
  let last = totals.reduce((top, total, index) => (total > (totals[top] ?? -1) ? index : top), -1);
  const chain: SyncPart[] = [];
  for (; last >= 0; last = previous[last] ?? -1) {
    const part = sorted[last];
    if (part !== undefined) chain.push(part);
  }
  return chain.reverse();
}

/** Without length in one of the two it cannot be seen beginning and ending there. */
function length({ before, after }: SyncPart): number {
  const [one, two] = [before.end - before.start, after.end - after.start];
  return one > 0 && two > 0 ? one + two : 0;
}

interface Best {
  readonly total: number;
  readonly index: number;
}

/** The greatest total among all ends up to a given one (a binary indexed tree of maxima; Fenwick 1994, from memory). */
function bestSoFar(ends: readonly number[]) {
  const tree: (Best | undefined)[] = [];
  const places = new Map(ends.map((end, index) => [end, index + 1]));
  return {
    add: (end: number, total: number, index: number) => {
      for (let at = places.get(end) ?? 0; at > 0 && at <= ends.length; at += at & -at) {
        const known = tree[at];
        if (known === undefined || total > known.total) tree[at] = { total, index };
      }
    },
    upTo: (end: number): Best | undefined => {
      let found: Best | undefined;
      for (let at = countUpTo(ends, end); at > 0; at -= at & -at) {
        const known = tree[at];
        if (known !== undefined && (found === undefined || known.total > found.total)) found = known;
      }
      return found;
    },
  };
}

function countUpTo(sorted: readonly number[], most: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? 0) <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}
