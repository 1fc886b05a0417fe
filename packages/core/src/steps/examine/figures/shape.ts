import type { Micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { Grouping, MotionGroup, MotionKind } from '../../../ground/tables/index.ts';
import type { HandState } from '../reading/index.ts';
import type { Figure, Traced } from './figure.ts';
import type { LagAgreement } from './lag.ts';

/** How often, how long, and which share of the marked time of that hand (of both hands together: of the sum of theirs). */
export interface TimeRow extends Traced {
  readonly hand: Hand | 'both';
  /** Motions a cycle. A motion counts in the cycle in which it begins, its time wherever it lasts. */
  readonly count: Figure;
  readonly time: Figure;
  readonly share: Figure;
}

/** Rows of each hand and of both together: left, right, both; within a hand by falling time, then by name. */
export interface Times {
  readonly motions: readonly (TimeRow & { readonly kind: MotionKind })[];
  /** Without an object: not said. */
  readonly objects: readonly (TimeRow & { readonly object: string | undefined })[];
  /**
   * A transport counts at the place it goes to. Any other motion counts at its own place (`to`, else `from`), else at the
   * place where its hand last was in the same cycle. After a transport to nowhere said, or a stretch that is not marked,
   * the place is not said.
   */
  readonly places: readonly (TimeRow & {
    readonly place: string | undefined;
    readonly name: string | undefined;
  })[];
}

/** Effective, ineffective and not listed, as one author divides the motions. */
export interface Groups {
  readonly grouping: Grouping;
  /** Left, right, both; three rows each. */
  readonly rows: readonly (TimeRow & { readonly group: MotionGroup })[];
}

/** How many motions. */
export interface Pace extends Traced {
  readonly hand: Hand;
  /** Motions that begin in the cycle. */
  readonly aCycle: Figure;
  /** Motions ÷ marked time of the hand. */
  readonly aMinute: Figure;
}

/** Time and share of the cycle. */
export interface CyclePart extends Traced {
  readonly time: Figure;
  readonly share: Figure;
}

export type TogetherCode =
  | 'both-work'
  | 'left-works-right-holds'
  | 'right-works-left-holds'
  | 'left-works-right-waits'
  | 'right-works-left-waits'
  | 'both-hold'
  | 'left-holds-right-waits'
  | 'right-holds-left-waits'
  | 'both-wait'
  | 'not-marked';

export interface Together extends CyclePart {
  readonly code: TogetherCode;
  /** "left works, right holds". */
  readonly name: string;
}

/** What the hands did at the same time, motion by motion. The cells add up to the cycle. */
export interface Overlap {
  /** Kinds that occur in the hand, in the order of the motion list; `unmarked` last. */
  readonly left: readonly MotionKind[];
  readonly right: readonly MotionKind[];
  /** Only cells with time in them, in the order of `left`, then `right`. */
  readonly cells: readonly (CyclePart & { readonly left: MotionKind; readonly right: MotionKind })[];
}

/** How evenly the work lies on the hands. Holding and idle time is no work here. */
export interface Balance extends Traced {
  /** Working time of the hand that works less ÷ that of the other: 1 is even, 0 is one hand alone. */
  readonly ratio: Figure;
  /** Working time of the left hand less that of the right; below 0 when the right works more. */
  readonly difference: Figure;
}

/** Whether the hands begin, or end, at the same time. */
export interface Meeting extends Traced {
  /** Between the first beginnings (last ends) of work of the two hands, whichever comes first; cycles in which a hand never works left out. */
  readonly gap: Figure;
  /** Cycles in which the gap is within the tolerance, and cycles that have a gap. */
  readonly cycles: { readonly within: number; readonly of: number };
  readonly motions: readonly MotionsMeeting[];
}

/** Working motions that begin (end) within the tolerance of the beginning (end) of a working motion of the other hand. */
export interface MotionsMeeting extends Traced {
  readonly hand: Hand | 'both';
  readonly within: number;
  readonly of: number;
  readonly share: Figure;
  /** The motions that do not. */
  readonly apart: Traced['traces'];
}

export interface BeginEnd {
  /** Largest gap that still counts as together. */
  readonly tolerance: Micros;
  readonly begin: Meeting;
  readonly end: Meeting;
}

export interface SameMotion extends Traced {
  /** Time in which both hands do the same motion ÷ time in which both are marked. */
  readonly share: Figure;
  /** Time in which both hands do the same working motion ÷ time in which both work. */
  readonly workShare: Figure;
  /** Undefined when the hands are never marked at the same time. */
  readonly lag: LagAgreement | undefined;
}

/** The figures of a method over the chosen cycles. Unmarked time counts in none of them unless its name says so. */
export interface Figures {
  /** Length of the cycles. */
  readonly cycle: Figure & Traced;
  /** Marked time of each hand. */
  readonly marked: Readonly<Record<Hand, Figure & Traced>>;
  readonly times: Times;
  readonly groups: Groups;
  /** Left, right. */
  readonly pace: readonly Pace[];
  /** Left, right; working, holding, idle, unmarked each. They add up to the cycle. */
  readonly states: readonly (CyclePart & { readonly hand: Hand; readonly state: HandState })[];
  /** All ten, in the order of `TogetherCode`. They add up to the cycle. */
  readonly together: readonly Together[];
  readonly overlap: Overlap;
  readonly balance: Balance;
  readonly beginEnd: BeginEnd;
  readonly sameMotion: SameMotion;
}
