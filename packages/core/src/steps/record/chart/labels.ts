/** A label that would like to stand at `ideal` (its middle) and takes `height`. */
export interface WantedLabel {
  readonly ideal: number;
  readonly height: number;
}

/**
 * Middles for labels in one column so that none overlaps, their order is kept, all stay between `top` and `bottom`, and
 * the sum of the squared distances from where they want to be is least: isotonic regression by pooling neighbours that
 * violate the order (Barlow et al., Statistical Inference under Order Restrictions, 1972; from memory), cut to the bounds.
 * @param labels in the order of `ideal`
 * @throws RangeError when the labels are higher together than the column
 */
export function spreadLabels(labels: readonly WantedLabel[], top: number, bottom: number): readonly number[] {
  const total = labels.reduce((sum, label) => sum + label.height, 0);
  if (total > bottom - top + 1e-6) {
    throw new RangeError(`labels of ${total} do not fit into a column of ${bottom - top}`);
  }
  // Taking off the heights above each label turns "does not overlap" into "does not decrease".
  let above = 0;
  const offsets = labels.map((label) => {
    const offset = above + label.height / 2;
    above += label.height;
    return offset;
  });
  const free = poolNeighbours(labels.map((label, index) => label.ideal - (offsets[index] ?? 0)));
  const last = Math.max(top, bottom - total);
  return free.map((start, index) => Math.min(last, Math.max(top, start)) + (offsets[index] ?? 0));
}

interface Pool {
  sum: number;
  count: number;
}

function poolNeighbours(wanted: readonly number[]): number[] {
  const pools: Pool[] = [];
  for (const value of wanted) {
    let pool: Pool = { sum: value, count: 1 };
    for (
      let before = pools.at(-1);
      before !== undefined && mean(before) > mean(pool);
      before = pools.at(-1)
    ) {
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
      pools.pop();
    }
    pools.push(pool);
  }
  return pools.flatMap((pool) => Array.from({ length: pool.count }, () => mean(pool)));
}

function mean(pool: Pool): number {
  return pool.sum / pool.count;
}
