export interface LinearAssignment {
  readonly cost: number;
  /** Column of each row. */
  readonly columnOf: Int32Array;
  /** Prices: cost[row, column] − rows[row] − columns[column] is never negative, and 0 where assigned. */
  readonly rows: Float64Array;
  readonly columns: Float64Array;
}

/**
 * The cheapest assignment of every row to a column of its own, by shortest augmenting paths (the method of Jonker and
 * Volgenant 1987 without its start-up, from memory). Undefined when the forbidden pairs leave none.
 * @param costs rows × columns; positive infinity forbids a pair
 * @throws RangeError when there are more rows than columns
 */
export function linearAssignment(
  costs: Float64Array,
  rowCount: number,
  columnCount: number,
): LinearAssignment | undefined {
  if (rowCount > columnCount) throw new RangeError(`${rowCount} rows do not fit ${columnCount} columns`);
  const rows = new Float64Array(rowCount);
  const columns = new Float64Array(columnCount);
  const rowOf = new Int32Array(columnCount).fill(-1);
  const columnOf = new Int32Array(rowCount).fill(-1);
  const least = new Float64Array(columnCount);
  const from = new Int32Array(columnCount);
  const done = new Uint8Array(columnCount);
  for (let start = 0; start < rowCount; start += 1) {
    least.fill(Number.POSITIVE_INFINITY);
    from.fill(-1);
    done.fill(0);
    let [row, last] = [start, -1];
    const path: number[] = [];
    while (row >= 0) {
      let [delta, next] = [Number.POSITIVE_INFINITY, -1];
      const price = rows[row] as number;
      for (let column = 0; column < columnCount; column += 1) {
        if (done[column] === 1) continue;
        const reduced = (costs[row * columnCount + column] as number) - price - (columns[column] as number);
        if (reduced < (least[column] as number)) {
          least[column] = reduced;
          from[column] = last;
        }
        if ((least[column] as number) < delta) {
          delta = least[column] as number;
          next = column;
        }
      }
      if (next < 0) return undefined;
      rows[start] = (rows[start] as number) + delta;
      for (const column of path) {
        const owner = rowOf[column] as number;
        rows[owner] = (rows[owner] as number) + delta;
        columns[column] = (columns[column] as number) - delta;
      }
      for (let column = 0; column < columnCount; column += 1)
        if (done[column] === 0) least[column] = (least[column] as number) - delta;
      done[next] = 1;
      path.push(next);
      last = next;
      row = rowOf[next] as number;
    }
    for (let column = last; column >= 0; ) {
      const before = from[column] as number;
      const owner = before < 0 ? start : (rowOf[before] as number);
      rowOf[column] = owner;
      columnOf[owner] = column;
      column = before;
    }
  }
  let cost = 0;
  for (let row = 0; row < rowCount; row += 1)
    cost += costs[row * columnCount + (columnOf[row] as number)] as number;
  return { cost, columnOf, rows, columns };
}
