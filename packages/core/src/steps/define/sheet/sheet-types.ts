import type { Finding } from '../../../ground/findings/index.ts';
import type { Method, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import type { Allowance, Relaxation } from '../allowances.ts';
import type { CyclesForm, CyclesNeeded, PrecisionReached } from '../cycles-needed.ts';
import type { ElementSummary, OutlierProposal } from '../element-summary.ts';
import type { BasicTimes } from '../rating.ts';
import type { StandardElement } from '../standard-time.ts';
import type { StudyStandard } from '../study-standard.ts';
import type { Trend } from '../trend.ts';
import type { Variance } from '../variance.ts';

/** A time study worked out. Times are in `unit` unless a field says microseconds. */
export interface TimeStudySheet {
  readonly timeStudy: TimeStudy;
  readonly method: Method | undefined;
  readonly unit: TimeUnit;
  /** Numbers of the cycles in which any element has a reading, ascending. */
  readonly cycles: readonly number[];
  /** One for each element, in its order. */
  readonly rows: readonly SheetRow[];
  /** Elements of the record that the time study does not have. */
  readonly missing: readonly string[];
  readonly whole: WholeCycle;
  /** The readings there are beside those that are needed. */
  readonly pilot: PilotProgress;
  readonly allowances: SheetAllowances | undefined;
  /** Undefined while something in `faults` stands in its way. */
  readonly standard: StudyStandard | undefined;
  readonly words: {
    /** The allowances and what they are a share of. */
    readonly allowance: string;
    /** How the interval was made; empty where there is none. */
    readonly interval: string;
  };
  readonly faults: readonly SheetFault[];
  /** What limits the conclusion, each once. */
  readonly notes: readonly Finding[];
}

export interface SheetRow {
  /** With the times of the record filled in, where the study takes its times from one. */
  readonly element: TimeStudyElement;
  readonly cells: readonly SheetCell[];
  /** Undefined when no reading counts or one cannot be a time. */
  readonly summary: ElementSummary | undefined;
  /** Undefined of a process element, which is not rated, and where a rating is missing or wrong. */
  readonly rated: BasicTimes | undefined;
  /** Undefined as long as the study has no standard. */
  readonly standard: StandardElement | undefined;
  /** By t iterated, for the precision and confidence of the study; undefined below two readings. */
  readonly needed: CyclesNeeded | undefined;
  readonly reached: PrecisionReached | undefined;
  readonly forms: readonly { readonly form: CyclesForm; readonly needed: CyclesNeeded }[];
  /** Undefined below three readings. */
  readonly trend: Trend | undefined;
  /** Undefined below two operator codes. */
  readonly operators: Variance | undefined;
  readonly faults: readonly SheetFault[];
}

export interface PilotProgress {
  /** Elements that do not have enough readings, in their order. */
  readonly gaps: readonly PilotGap[];
  readonly enough: boolean;
  /** Cycles after which every element has what it needs; 0 when enough, undefined when it cannot be told yet. */
  readonly moreCycles: number | undefined;
  readonly words: string;
}

/** What one element still lacks. */
export interface PilotGap {
  /** Its id. */
  readonly element: string;
  readonly name: string;
  /** Readings that count. */
  readonly counted: number;
  /** By t iterated; undefined below two readings. */
  readonly needed: number | undefined;
  /** Undefined also when nobody could take so many. */
  readonly more: number | undefined;
  /** Cycles in which so many are to be had: more than `more` for an element that is not in every cycle. */
  readonly moreCycles: number | undefined;
}

export interface SheetCell {
  readonly cycle: number;
  readonly time: number | undefined;
  readonly us: number | undefined;
  readonly rating: number | undefined;
  readonly setAside: string | undefined;
  /** The rule asks to look at it; it counts as long as nobody sets it aside. */
  readonly proposal: OutlierProposal | undefined;
}

/**
 * The cycle as a whole: in each cycle the sum of the elements that occur in every cycle, work inside machine time left
 * out; only cycles in which all of them count.
 */
export interface WholeCycle {
  readonly cycles: readonly { readonly cycle: number; readonly time: number | undefined }[];
  readonly trend: Trend | undefined;
  readonly operators: Variance | undefined;
}

export interface SheetAllowances {
  readonly worker: Allowance;
  /** The same allowance in the other convention. */
  readonly other: Allowance;
  /** When it comes from a published table. */
  readonly relaxation: Relaxation | undefined;
}

export type SheetField = 'source' | 'rating' | 'allowances' | 'piecesPerCycle' | 'elements';

/** What stands in the way of a standard, and where: an element, one of its cells, or a field of the head. */
export interface SheetFault {
  readonly finding: Finding;
  readonly element?: string | undefined;
  readonly cycle?: number | undefined;
  readonly field?: SheetField | undefined;
}
