import type { MovementLawId, SourceId } from '../../../ground/tables/index.ts';
import { normalMultiplier } from './calibration.ts';

export type TimeSource =
  | { readonly kind: 'measured'; readonly n: number; readonly where: 'here' | 'elsewhere' | 'library' }
  | {
      readonly kind: 'law';
      readonly law: MovementLawId;
      readonly source: SourceId;
      readonly calibrated: boolean;
    }
  | { readonly kind: 'table'; readonly name: string }
  | { readonly kind: 'known' };

/** One thing that is not known. Times that rest on the same readings have an error of the same name and err together. */
export interface TimeError {
  readonly name: string;
  /** Standard deviation of the logarithm. */
  readonly spread: number;
}

/** The time of a motion that was not made yet. Microseconds. */
export interface PredictedTime {
  /** The middle of what is expected. */
  readonly us: number;
  /** 90 % interval of the mean of the motion at this work, which is not that of a single motion. */
  readonly low: number;
  readonly high: number;
  readonly errors: readonly TimeError[];
  /** Standard deviation of the logarithm that the motion shares with all others through the pace. */
  readonly shared: number;
  readonly source: TimeSource;
  /** Where the time comes from, in words. */
  readonly words: string;
}

export function predictedTime(
  us: number,
  { errors, shared }: Pick<PredictedTime, 'errors' | 'shared'>,
  source: TimeSource,
  words: string,
): PredictedTime {
  const half = normalMultiplier * Math.hypot(shared, ...errors.map(({ spread }) => spread));
  return {
    us: Math.round(us),
    low: Math.round(us * Math.exp(-half)),
    high: Math.round(us * Math.exp(half)),
    errors,
    shared,
    source,
    words,
  };
}

/** One draw of it. @param own standard normal number of an error, pace the one of all motions of a draw */
export function drawnTime(
  { us, errors, shared }: PredictedTime,
  own: (error: string) => number,
  pace: number,
): number {
  return us * Math.exp(errors.reduce((sum, { name, spread }) => sum + spread * own(name), shared * pace));
}
