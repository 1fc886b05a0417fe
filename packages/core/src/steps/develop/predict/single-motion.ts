import { type Interval, sampleOf, studentQuantile } from '../../../ground/numerics/index.ts';
import { predictedConfidence } from './calibration.ts';

/**
 * Where the next single motion of a cell lies, as far as its readings tell: times vary by shares of themselves, so Student's
 * prediction interval is taken on the logarithms. Undefined with fewer than two readings.
 * @param times microseconds, above 0
 * @param grain what the times were read to, one frame of a film; readings that are all alike still hide that much
 */
export function nextMotion(
  times: readonly number[],
  grain = 0,
  confidence = predictedConfidence,
): Interval | undefined {
  const { n, mean, deviation } = sampleOf(times.map(Math.log));
  if (deviation === undefined) return undefined;
  const hidden = grain / Math.sqrt(12) / Math.exp(mean);
  const half =
    studentQuantile(0.5 + confidence / 2, n - 1) * Math.max(deviation, hidden) * Math.sqrt(1 + 1 / n);
  return { low: Math.exp(mean - half), high: Math.exp(mean + half), confidence };
}
