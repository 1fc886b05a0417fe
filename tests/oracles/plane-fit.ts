/**
 * A slow second way to fit a sum of terms by least squares, from the definition alone: the normal equations, solved by
 * elimination with the largest pivot.
 * @param rows the terms of each point (a 1 among them for the constant) and what was observed
 * @returns the coefficients, and the share of the variation about the mean that they explain
 */
export function fitByNormalEquations(
  rows: readonly { readonly terms: readonly number[]; readonly observed: number }[],
): { readonly coefficients: readonly number[]; readonly explained: number; readonly deviation: number } {
  const size = rows[0]?.terms.length ?? 0;
  const table = Array.from({ length: size }, (_, i) => [
    ...Array.from({ length: size }, (__, j) => total(rows, ({ terms }) => (terms[i] ?? 0) * (terms[j] ?? 0))),
    total(rows, ({ terms, observed }) => (terms[i] ?? 0) * observed),
  ]);
  const coefficients = solved(table);
  const left = ({ terms, observed }: (typeof rows)[number]) =>
    observed - terms.reduce((sum, term, index) => sum + term * (coefficients[index] ?? 0), 0);
  const middle = total(rows, ({ observed }) => observed) / rows.length;
  const rest = total(rows, (row) => left(row) ** 2);
  return {
    coefficients,
    explained: 1 - rest / total(rows, ({ observed }) => (observed - middle) ** 2),
    deviation: Math.sqrt(rest / (rows.length - size)),
  };
}

function total<T>(rows: readonly T[], of: (row: T) => number): number {
  return rows.reduce((sum, row) => sum + of(row), 0);
}

function solved(table: number[][]): number[] {
  const size = table.length;
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column; row < size; row += 1) {
      if (Math.abs(table[row]?.[column] ?? 0) > Math.abs(table[pivot]?.[column] ?? 0)) pivot = row;
    }
    const [top, other] = [table[pivot] ?? [], table[column] ?? []];
    table[pivot] = other;
    table[column] = top;
    for (let row = 0; row < size; row += 1) {
      if (row === column) continue;
      const share = (table[row]?.[column] ?? 0) / (top[column] ?? 1);
      table[row] = (table[row] ?? []).map((value, index) => value - share * (top[index] ?? 0));
    }
  }
  return table.map((row, index) => (row[size] ?? 0) / (row[index] ?? 1));
}
