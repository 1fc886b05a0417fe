import type { Micros } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Sample } from '../../../ground/numerics/index.ts';
import type { ElementMark } from '../../../ground/study/index.ts';
import type { Piece } from '../reading/index.ts';

/**
 * How the beginning of an element was found in a cycle: `start` it begins with the cycle; `found` by the same motion with
 * the same object; `similar` by the same motion with another object; `between` its motion is missing, but the motions
 * before and after it follow one another, so it can lie only there; `missing` it cannot be told; `order` it was found,
 * but comes in another order than in the model cycle, so the elements beside it have no time.
 */
export type BreakStatus = 'start' | 'found' | 'similar' | 'between' | 'missing' | 'order';

/** The beginning of an element in one cycle. */
export interface ElementBreak {
  readonly status: BreakStatus;
  /** Boundary of the method; undefined when it is missing. */
  readonly at: number | undefined;
  /** The motions of that hand in this cycle between which it lies or is missing; undefined where it was found. */
  readonly around: readonly [before: Piece | undefined, after: Piece | undefined] | undefined;
}

/** An element in one cycle; all undefined where its beginning or its end was not found. */
export interface ElementSpan {
  /** Position of the cycle in the reading. */
  readonly cycle: number;
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly time: Micros | undefined;
}

/** A named element over the cycles of a reading. */
export interface ElementTimes {
  /** Undefined for the stretch from the start of the cycle to the first mark. */
  readonly mark: ElementMark | undefined;
  readonly name: string;
  /** One for each cycle of the reading, by position. */
  readonly spans: readonly ElementSpan[];
  /** How its beginning was found, one for each cycle of the reading, by position. */
  readonly breaks: readonly ElementBreak[];
  /** Over the cycles in which its time is known, microseconds; undefined when it is known in none. */
  readonly sample: Sample | undefined;
}

export interface FoundElements {
  /** Number of the cycle in which the elements were named, 0 for a record without cycles; undefined without marks. */
  readonly model: number | undefined;
  /** In the order of the model cycle. They tile every cycle in which all of them were found. */
  readonly elements: readonly ElementTimes[];
  readonly findings: readonly Finding[];
  /** How they were found, in words. */
  readonly rule: string;
}
