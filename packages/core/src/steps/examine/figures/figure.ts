import type { Sample } from '../../../ground/numerics/index.ts';
import type { Trace } from '../reading/index.ts';

/** `time` in microseconds a cycle, `share` and `ratio` 0 to 1, `count` in pieces a cycle, `rate` in pieces a minute. */
export type FigureUnit = 'time' | 'share' | 'ratio' | 'count' | 'rate';

/** One figure over the chosen cycles, and how it varies from cycle to cycle. */
export interface Figure {
  readonly unit: FigureUnit;
  /**
   * A time or a count: the mean of the cycles. A share, rate or ratio: the total over all cycles ÷ the total it is a part
   * of, so that shares of one whole add up to 1. Undefined when there is nothing to divide by.
   */
  readonly value: number | undefined;
  /**
   * The cycles as a sample, those without a value left out. Of a share or rate its mean weighs every cycle the same and
   * may differ from `value`. Undefined when no cycle has a value.
   */
  readonly sample: Sample | undefined;
  /** One value for each cycle of the reading, by its position; undefined where there is nothing to divide by. */
  readonly perCycle: () => readonly (number | undefined)[];
}

/** Where a figure can be seen on the film, in order of cycle and time. Made when asked for. */
export interface Traced {
  readonly traces: () => readonly Trace[];
}
