import type { Finding } from '../../../ground/findings/index.ts';
import type { Motion } from '../../../ground/study/index.ts';

/** A motion that the program proposes; it lasts until the next one of its row, or to the end of its stretch. */
export interface ProposedMotion extends Pick<Motion, 'start' | 'kind' | 'object' | 'from' | 'to'> {
  /** Chance that the motion is right and its start within a fifth of a second of where a person would put it. */
  readonly confidence: number;
}

/** A cycle that the program proposes, in boundaries of the method. */
export interface ProposedCycle {
  readonly start: number;
  readonly end: number;
  /** Chance that a cycle begins within a fifth of a second of here. */
  readonly confidence: number;
}

/** A stretch of the method that the proposal fills, in its boundaries. */
export interface ProposedSpan {
  readonly from: number;
  readonly to: number;
}

export interface Proposal {
  readonly cycles: readonly ProposedCycle[];
  readonly left: readonly ProposedMotion[];
  readonly right: readonly ProposedMotion[];
  /** In order and apart from each other; outside of them nothing is proposed. */
  readonly spans: readonly ProposedSpan[];
  /** Cycles of which a person has confirmed a part: what was proposed there before stays. */
  readonly kept?: readonly ProposedSpan[];
  readonly findings: readonly Finding[];
}
