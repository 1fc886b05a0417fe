/**
 * Items to be put on spots, one on each at the most: what counts is flow between two items times the distance between their
 * spots, summed over all ordered pairs (an item with itself included), and a cost of each item on its spot (Koopmans and
 * Beckmann 1957, with a linear part).
 */
export interface QuadraticAssignment {
  readonly items: number;
  /** At least as many as items. */
  readonly spots: number;
  /** items × items, 0 or more. */
  readonly flow: Float64Array;
  /** spots × spots, 0 or more. */
  readonly distance: Float64Array;
  /** items × spots; positive infinity where the item must not stand. */
  readonly linear: Float64Array;
  /** Two items that must not stand on these two spots at once. */
  readonly conflict?: ((item: number, spot: number, other: number, otherSpot: number) => boolean) | undefined;
}

/** Infinite where a rule is broken. */
export function assignmentCost(problem: QuadraticAssignment, spotOf: ArrayLike<number>): number {
  const { items, spots, flow, distance, linear, conflict } = problem;
  let cost = 0;
  for (let item = 0; item < items; item += 1) {
    const spot = spotOf[item] as number;
    cost += linear[item * spots + spot] as number;
    for (let other = 0; other < items; other += 1) {
      const otherSpot = spotOf[other] as number;
      if (other !== item && (otherSpot === spot || conflict?.(item, spot, other, otherSpot) === true))
        return Number.POSITIVE_INFINITY;
      cost += (flow[item * items + other] as number) * (distance[spot * spots + otherSpot] as number);
    }
  }
  return cost;
}

/** Every cost of the problem is a whole number, so that a bound may be rounded up. */
export function isWhole({ flow, distance, linear }: QuadraticAssignment): boolean {
  const whole = (value: number) => Number.isInteger(value) || value === Number.POSITIVE_INFINITY;
  return flow.every(whole) && distance.every(whole) && linear.every(whole);
}
