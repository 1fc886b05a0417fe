import { endOf, itemsBetween, spanAt } from './row.ts';
import { hands, type Method, type Motion } from './schema.ts';

/** What the program said and no person has confirmed. */
export function isProposed(item: { readonly said?: string | undefined }): boolean {
  return item.said === 'proposed';
}

/** How many motions of either hand that touch a stretch are proposed and not confirmed. */
export function proposedBetween(method: Method, from: number, to: number): number {
  return hands.reduce(
    (sum, hand) => sum + itemsBetween(method[hand], from, to).filter(({ item }) => isProposed(item)).length,
    0,
  );
}

/**
 * Whether a person stands behind the whole of a cycle: its mark, the mark that ends it, and every motion in it. A cycle of
 * which a part is only proposed counts in no figure, for its time and its gaps would be the program’s and not the film’s.
 * @param index position of the cycle in the method, from 0
 * @returns false also where there is no such cycle
 */
export function isConfirmedCycle(method: Method, index: number): boolean {
  const cycle = spanAt(method.cycles, index);
  if (cycle === undefined || isProposed(cycle.item)) return false;
  const ends = method.cycles.items[index + 1];
  return !(ends !== undefined && isProposed(ends)) && proposedBetween(method, cycle.start, cycle.end) === 0;
}

/** From the first to the last motion of either hand that is not `unmarked` and counts; undefined when there is none. */
export function markedStretch(
  method: Method,
  counts: (motion: Motion) => boolean,
): { readonly from: number; readonly to: number } | undefined {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const hand of hands) {
    method[hand].items.forEach((item, index) => {
      if (item.kind === 'unmarked' || !counts(item)) return;
      from = Math.min(from, item.start);
      to = Math.max(to, endOf(method[hand], index));
    });
  }
  return to > from ? { from, to } : undefined;
}
