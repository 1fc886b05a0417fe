/** No path. Sums with it stay far below every time and inside 32 bits. */
export const never = -(2 ** 30);
export const halfNever = never / 2;

/**
 * Greatest mean weight of a circle of events, in the weight's unit, after Karp (1978, from memory): walks of each length
 * from each event back to itself. `matrix[from · n + to]` is the longest path, −Infinity for none.
 */
export function greatestMean(matrix: Float64Array, n: number): number {
  let best = 0;
  const [now, then] = [new Float64Array(n), new Float64Array(n)];
  for (let source = 0; source < n; source += 1) {
    now.fill(Number.NEGATIVE_INFINITY);
    now[source] = 0;
    for (let length = 1; length <= n; length += 1) {
      then.fill(Number.NEGATIVE_INFINITY);
      for (let from = 0; from < n; from += 1) {
        const far = now[from] as number;
        if (far === Number.NEGATIVE_INFINITY) continue;
        for (let to = 0; to < n; to += 1) {
          const value = far + (matrix[from * n + to] as number);
          if (value > (then[to] as number)) then[to] = value;
        }
      }
      best = Math.max(best, (then[source] as number) / length);
      now.set(then);
    }
  }
  return best;
}
