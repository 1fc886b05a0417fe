/**
 * Times of the units 1 to n straight from the definitions: first · n^b of each unit (Crawford), or what each unit adds to
 * n times the average first · n^b (Wright).
 */
export function learningByAddition(
  curve: { readonly model: 'unit' | 'cumulative-average'; readonly first: number; readonly rate: number },
  units: number,
): number[] {
  const line = (n: number) => curve.first * Math.exp((Math.log(curve.rate) / Math.LN2) * Math.log(n));
  return Array.from({ length: units }, (_, index) => {
    const n = index + 1;
    if (curve.model === 'unit') return line(n);
    return n * line(n) - (n === 1 ? 0 : (n - 1) * line(n - 1));
  });
}
