import type { Micros } from '../../../ground/base/index.ts';
import type { Sample } from '../../../ground/numerics/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { Trace } from '../reading/index.ts';
import type { MotionToken, TokenBy } from './token.ts';

/** Whose motions a sequence is made of; `both` takes the pair of motions in every segment of the cycle. */
export type SequenceRow = Hand | 'both';

export interface SequenceChoice {
  /** When two motions are the same; left out: same kind and same object. */
  readonly by?: TokenBy | undefined;
  /** How many runs each ranking lists, 1 or more; left out: 20. */
  readonly top?: number | undefined;
  /** 1: occurrences that differ in one motion count with a run of three or more. Left out: 0. */
  readonly tolerance?: 0 | 1 | undefined;
}

/** How an occurrence compares with its run: the same, one motion differs, one more in between, one missing. */
export type Likeness = 'exact' | 'differs' | 'extra' | 'missing';

/** One occurrence; as a trace it says where to look. */
export interface RunOccurrence extends Trace {
  readonly time: Micros;
  readonly likeness: Likeness;
}

/** One motion of a run: of one hand, or of both at the same time. */
export interface RunStep {
  readonly left: MotionToken | undefined;
  readonly right: MotionToken | undefined;
}

/** A sequence of motions that comes again. */
export interface RepeatedRun {
  readonly row: SequenceRow;
  readonly steps: readonly RunStep[];
  /** "TE ring, G ring, TL ring"; both hands: "TE body | TE ring, …". */
  readonly words: string;
  /** Number of motions (of pairs for both hands), 2 or more. */
  readonly length: number;
  /** Occurrences that do not overlap, taken from the left; with tolerance the inexact ones too. */
  readonly count: number;
  /** How many of them are not exact. */
  readonly inexact: number;
  readonly countACycle: number;
  /** The most in any one cycle: 2 or more means that it repeats inside a cycle. */
  readonly mostInACycle: number;
  /** Time of all counted occurrences; never more than the cycles have. */
  readonly total: Micros;
  readonly timeACycle: Micros;
  /** Time of one occurrence, microseconds. */
  readonly sample: Sample;
  /** In order of time. */
  readonly occurrences: readonly RunOccurrence[];
}

export interface RankedRuns {
  /** Most occurrences first, then the most time, then the longer, then the earlier. */
  readonly byCount: readonly RepeatedRun[];
  /** Most time first, then the most occurrences, then the longer, then the earlier. */
  readonly byCost: readonly RepeatedRun[];
}

export type RepeatedSequences = Readonly<Record<SequenceRow, RankedRuns>> & {
  /** What counts as a run and how it is counted, in words. */
  readonly rule: string;
};
