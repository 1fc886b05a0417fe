import { studentQuantile } from '@evenhand/core/ground/numerics';

/** The least number of readings whose own t interval keeps within a half width, tried one after another from two. */
export function cyclesByTrial(
  deviation: number,
  halfWidth: number,
  confidence: number,
  most: number,
): number {
  for (let n = 2; n <= most; n++) {
    if ((studentQuantile(0.5 + confidence / 2, n - 1) * deviation) / Math.sqrt(n) <= halfWidth) return n;
  }
  return Number.POSITIVE_INFINITY;
}
