/**
 * The position of the last item whose key is not above `key`, in a list sorted by that key; −1 when all are above.
 * Binary search, so a look-up in 60,000 motions costs 16 comparisons.
 */
export function lastAtOrBefore<T>(items: readonly T[], key: number, keyOf: (item: T) => number): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (keyOf(items[middle] as T) <= key) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
