import type { Micros } from '../../../ground/base/index.ts';
import type { Traced } from './figure.ts';

/**
 * How well the two rows agree when one is moved against the other. The agreement at a lag is the time in which the left
 * hand does a motion and the right hand, the lag later, does the same one, ÷ the time in which both are marked then;
 * each cycle by itself, summed over the cycles. A lag below 0 means that the left hand is the later one.
 */
export interface LagAgreement {
  /** Lags from −reach to +reach were tried. */
  readonly reach: Micros;
  /** Agreement as recorded. */
  readonly atZero: number;
  /** The highest agreement of all lags, not only of those of the curve; of several the one with the smallest lag. */
  readonly best: BestLag;
  /** Evenly spaced lags, rising, at most 201; undefined where too little is left to compare. */
  readonly curve: readonly { readonly lag: Micros; readonly agreement: number | undefined }[];
}

export interface BestLag extends Traced {
  /** 0 or more. */
  readonly lag: Micros;
  /** Which hand is first; `either` when both orders agree equally well. */
  readonly leads: 'left' | 'right' | 'either' | 'neither';
  readonly agreement: number;
}
