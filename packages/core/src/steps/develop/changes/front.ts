/**
 * What is not beaten: of those that cost no more, none takes as little time. Rising in cost, falling in time; of equals the
 * first stays.
 */
export function frontOf<T>(
  items: readonly T[],
  costOf: (item: T) => number,
  timeOf: (item: T) => number,
): readonly T[] {
  const sorted = items
    .map((item, index) => ({ item, index, cost: costOf(item), time: timeOf(item) }))
    .sort((a, b) => a.cost - b.cost || a.time - b.time || a.index - b.index);
  let least = Number.POSITIVE_INFINITY;
  return sorted.flatMap(({ item, time }) => {
    if (time >= least) return [];
    least = time;
    return [item];
  });
}
