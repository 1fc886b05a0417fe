/** Value and slope at 0 of the polynomial that lies nearest to the points by least squares. */
export interface LocalFit {
  readonly value: number;
  readonly slope: number;
}

/**
 * @param at places of the points; best of about the size of 1, or the sums lose digits
 * @param degree 1 to 3, below the number of points
 * @returns nothing when the points do not determine the polynomial
 */
export function localFit(
  at: readonly number[],
  values: readonly number[],
  degree: number,
): LocalFit | undefined {
  const size = degree + 1;
  const moments = new Array<number>(2 * degree + 1).fill(0);
  const sums = new Array<number>(size).fill(0);
  at.forEach((place, index) => {
    let power = 1;
    for (let order = 0; order < moments.length; order += 1) {
      moments[order] = (moments[order] as number) + power;
      if (order < size) sums[order] = (sums[order] as number) + power * (values[index] as number);
      power *= place;
    }
  });
  const rows = sums.map((sum, row) => [...moments.slice(row, row + size), sum]);
  const solved = solve(rows);
  return solved === undefined ? undefined : { value: solved[0] as number, slope: solved[1] as number };
}

/** Solves linear equations given as rows with their right sides last; nothing when they have no single answer. */
export function solve(rows: readonly (readonly number[])[]): readonly number[] | undefined {
  const work = rows.map((row) => [...row]);
  const size = work.length;
  for (let column = 0; column < size; column += 1) {
    let best = column;
    for (let row = column + 1; row < size; row += 1)
      if (Math.abs(work[row]?.[column] ?? 0) > Math.abs(work[best]?.[column] ?? 0)) best = row;
    const pivot = work[best] as number[];
    work[best] = work[column] as number[];
    work[column] = pivot;
    const lead = pivot[column] as number;
    if (!(Math.abs(lead) > 1e-12)) return undefined;
    for (let row = 0; row < size; row += 1) {
      const other = work[row] as number[];
      const factor = (other[column] as number) / lead;
      if (row === column || factor === 0) continue;
      for (let cell = column; cell <= size; cell += 1)
        other[cell] = (other[cell] as number) - factor * (pivot[cell] as number);
    }
  }
  return work.map((row, index) => (row[size] as number) / (row[index] as number));
}
