import type { Micros } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Sample } from '../../../ground/numerics/index.ts';
import type { ElementMark, Hand } from '../../../ground/study/index.ts';
import type { Piece, Trace } from '../reading/index.ts';

/** Times of the same thing over cycles, microseconds. */
export interface Spread {
  readonly sample: Sample;
  readonly least: number;
  readonly lowerQuartile: number;
  readonly median: number;
  readonly upperQuartile: number;
  readonly most: number;
}

/** One element over the cycles: a named one, or one motion of the typical cycle. */
export interface ElementVariation {
  readonly name: string;
  /** The hand whose motion it is or begins with; `both` for the stretch before the first named element. */
  readonly hand: Hand | 'both';
  readonly mark: ElementMark | undefined;
  /** One for each cycle of the reading, by position; undefined where it is missing or was not found. */
  readonly times: readonly (Micros | undefined)[];
  /** Where it was found, in order of the cycles. */
  readonly traces: readonly Trace[];
  /** Undefined when it was found in no cycle. */
  readonly spread: Spread | undefined;
}

/** What a deviation looks like. Names of motions only: nothing is said about the person or the cause. */
export type DeviationPattern =
  | 'regrasp'
  | 'fumble'
  | 'drop'
  | 'second-reach'
  | 'search'
  | 'wait'
  | 'hold'
  | 'inspect'
  | 'more'
  | 'instead'
  | 'missing';

/** Where a cycle differs from the typical one: motions more, motions fewer, or others instead. */
export interface Deviation {
  readonly cycle: number;
  readonly hand: Hand;
  readonly pattern: DeviationPattern;
  /** Motions of this cycle that the typical one lacks, one after another. */
  readonly extra: readonly Piece[];
  /** Motions of the typical cycle that this one lacks there. */
  readonly missing: readonly Piece[];
  /** Time of the extra motions. */
  readonly time: Micros;
  /** "let go and taken up again: RL ring, TE ring, G ring; without P ring". */
  readonly words: string;
  /** The extra motions; where only some are missing, the motions around the place. */
  readonly trace: Trace;
}

export interface PatternCount {
  readonly pattern: DeviationPattern;
  readonly name: string;
  readonly count: number;
  /** Numbers of the cycles, rising. */
  readonly cycles: readonly number[];
  /** Time of the extra motions over all cycles. */
  readonly time: Micros;
}

export interface VariationChoice {
  /** Left out: the elements of the method. An empty list compares the motions of the typical cycle instead. */
  readonly marks?: readonly ElementMark[] | undefined;
}

/** The cycle the others are compared with, for one hand. */
export interface TypicalCycle {
  /** Position in the reading. */
  readonly cycle: number;
  readonly number: number;
  /** In how many cycles the hand makes exactly these motions in this order. */
  readonly alike: number;
  /** How it was chosen, in words. */
  readonly words: string;
}

/** A time that practice may be held against; `words` say what it is and what it is not. */
export interface PracticeBound {
  readonly time: Micros;
  readonly words: string;
  readonly traces: readonly Trace[];
}

/** A bound, or in words why there is none. */
export type BoundOrReason =
  | { readonly bound: PracticeBound; readonly reason?: undefined }
  | { readonly bound?: undefined; readonly reason: string };

export interface Variation {
  /** What the elements are: named by the analyst, or the motions of the typical cycle. */
  readonly basis: 'elements' | 'motions';
  readonly elements: readonly ElementVariation[];
  /** Whole cycles. */
  readonly cycles: Spread;
  readonly typical: Readonly<Record<Hand, TypicalCycle | undefined>>;
  /** By hand, cycle and time. */
  readonly deviations: readonly Deviation[];
  readonly patterns: readonly PatternCount[];
  /** The shortest complete cycle seen. */
  readonly best: BoundOrReason & { readonly number: number | undefined };
  /** The cycle built of each element's own lower quartile. */
  readonly quartiles: BoundOrReason;
  /** How cycles were compared, in words. */
  readonly rule: string;
  /** Where elements or motions could not be compared. */
  readonly findings: readonly Finding[];
}
