/**
 * A second, slow way to fit a straight line through points by least squares, from the definition alone: the line whose
 * sum of squared vertical distances is least. Exact rational arithmetic on whole numbers, so that nothing is lost;
 * solves the two normal equations by Cramer's rule instead of centring on the means.
 * @returns the vertical distance of every point from the line, rounded half away from zero
 */
export function lineResiduals(points: readonly { readonly x: bigint; readonly y: bigint }[]): bigint[] {
  const n = BigInt(points.length);
  const sum = (of: (point: { x: bigint; y: bigint }) => bigint) =>
    points.reduce((total, point) => total + of(point), 0n);
  const sx = sum(({ x }) => x);
  const sy = sum(({ y }) => y);
  const sxx = sum(({ x }) => x * x);
  const sxy = sum(({ x, y }) => x * y);
  const determinant = n * sxx - sx * sx;
  const slope = n * sxy - sx * sy;
  const intercept = sxx * sy - sx * sxy;
  return points.map(({ x, y }) => roundedQuotient(y * determinant - intercept - slope * x, determinant));
}

function roundedQuotient(top: bigint, bottom: bigint): bigint {
  const sign = top < 0n !== bottom < 0n ? -1n : 1n;
  const a = top < 0n ? -top : top;
  const b = bottom < 0n ? -bottom : bottom;
  return sign * ((2n * a + b) / (2n * b));
}
