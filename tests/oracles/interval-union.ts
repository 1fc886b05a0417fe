/**
 * How long at least one of the intervals lasts, from the definition alone: all ends and starts are sorted, and each bit
 * between two of them counts when any interval has it inside. Whole units, such as microseconds.
 */
export function intervalUnion(
  intervals: readonly { readonly start: number; readonly end: number }[],
): number {
  const moments = intervals.flatMap(({ start, end }) => [start, end]).sort((a, b) => a - b);
  let sum = 0;
  for (const [index, from] of moments.entries()) {
    const to = moments[index + 1] ?? from;
    if (intervals.some(({ start, end }) => start <= from && to <= end)) sum += to - from;
  }
  return sum;
}
