import { type Hand, hands, isProposed, type Method } from '../../../ground/study/index.ts';
import { betweenCycles } from '../propose/aside.ts';

/** One thing that waits for a person’s yes or no. */
export interface ReviewItem {
  readonly row: Hand | 'cycles';
  readonly id: string;
  /** Boundary at which it begins, in the method’s own count. */
  readonly at: number;
  /** 0 to 1; 0 where the program says none. */
  readonly confidence: number;
}

/** Everything that is proposed and not confirmed, the least certain first; of equals the earlier one. */
export function reviewOrder(method: Method): readonly ReviewItem[] {
  const motions = hands.flatMap((row) =>
    method[row].items
      .filter(isProposed)
      .map(({ id, start, confidence }) => itemOf(row, id, start, confidence)),
  );
  const cycles = method.cycles.items
    // A gap between two cycles is confirmed with the cycle before it.
    .filter((cycle) => isProposed(cycle) && cycle.setAside !== betweenCycles)
    .map(({ id, start, confidence }) => itemOf('cycles', id, start, confidence));
  return [...cycles, ...motions].sort(byCertainty);
}

function itemOf(row: ReviewItem['row'], id: string, at: number, confidence: number | undefined): ReviewItem {
  return { row, id, at, confidence: confidence ?? 0 };
}

const rank: Readonly<Record<ReviewItem['row'], number>> = { cycles: 0, left: 1, right: 2 };

function byCertainty(a: ReviewItem, b: ReviewItem): number {
  return a.confidence - b.confidence || a.at - b.at || rank[a.row] - rank[b.row];
}

/**
 * The next (or the one before) in the order of review. `from` need not be there any more: what has just been confirmed
 * is followed by what came after it. Runs on from the end to the beginning; undefined when nothing is left.
 */
export function nextToReview(
  method: Method,
  from: ReviewItem | undefined,
  direction: 1 | -1 = 1,
): ReviewItem | undefined {
  const order = reviewOrder(method);
  if (from === undefined) return direction > 0 ? order[0] : order.at(-1);
  return direction > 0
    ? (order.find((item) => byCertainty(item, from) > 0) ?? order[0])
    : (order.findLast((item) => byCertainty(item, from) < 0) ?? order.at(-1));
}
