import { type Interval, sampleOf, studentQuantile, studentShare } from '../../ground/numerics/index.ts';

/** A straight line by least squares, with what is known of it. */
export interface Line {
  readonly n: number;
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number;
  readonly interceptError: number;
  /** Standard deviation about the line, with n − 2 degrees of freedom. */
  readonly deviation: number;
  /** Share of the squares that the line explains, 0 to 1; undefined when all values are equal. */
  readonly explained: number | undefined;
  /** Interval of the slope by Student's t. */
  readonly slopeInterval: Interval;
  /** Share of the cases in which chance alone gives a slope as far from 0, 0 to 1; undefined when all values are equal. */
  readonly chance: number | undefined;
}

/**
 * The line through points, by least squares about the means.
 * @param xs three or more finite numbers, not all equal
 * @param ys as many finite numbers
 * @throws RangeError for fewer or unequal lists, or when all xs are equal
 */
export function lineOf(xs: readonly number[], ys: readonly number[], confidence = 0.95): Line {
  const n = xs.length;
  if (n < 3 || ys.length !== n)
    throw new RangeError(`a line needs three or more pairs, got ${n} and ${ys.length}`);
  const [meanX, meanY] = [sampleOf(xs).mean, sampleOf(ys).mean];
  let [squaresX, squaresY, products] = [0, 0, 0];
  for (let index = 0; index < n; index++) {
    const [x, y] = [(xs[index] as number) - meanX, (ys[index] as number) - meanY];
    squaresX += x * x;
    squaresY += y * y;
    products += x * y;
  }
  if (squaresX === 0) throw new RangeError('a line needs two different places');
  const slope = products / squaresX;
  const residual = residualSquares(xs, ys, meanX, meanY, slope);
  const deviation = Math.sqrt(residual / (n - 2));
  const slopeError = deviation / Math.sqrt(squaresX);
  const half = studentQuantile(0.5 + confidence / 2, n - 2) * slopeError;
  return {
    n,
    slope,
    intercept: meanY - slope * meanX,
    slopeError,
    interceptError: deviation * Math.sqrt(1 / n + meanX ** 2 / squaresX),
    deviation,
    explained: squaresY === 0 ? undefined : Math.max(0, 1 - residual / squaresY),
    slopeInterval: { low: slope - half, high: slope + half, confidence },
    chance: squaresY === 0 ? undefined : chanceOf(slope, slopeError, n - 2),
  };
}

/** From the deviations themselves, because the difference of two sums of squares loses digits on a good line. */
function residualSquares(
  xs: readonly number[],
  ys: readonly number[],
  meanX: number,
  meanY: number,
  slope: number,
): number {
  let sum = 0;
  for (let index = 0; index < xs.length; index++) {
    sum += ((ys[index] as number) - meanY - slope * ((xs[index] as number) - meanX)) ** 2;
  }
  return sum;
}

function chanceOf(slope: number, error: number, degrees: number): number {
  if (error === 0) return slope === 0 ? 1 : 0;
  return 2 * studentShare(-Math.abs(slope / error), degrees);
}
