import type { Hand } from '../../../ground/study/index.ts';

/** A motion of a confirmed cycle; `label` says which motions are alike (kind, object and places). */
export interface LabelledStart {
  /** Seconds of the film. */
  readonly at: number;
  readonly label: number;
}

/** A cycle that a person has marked or confirmed. Each hand’s first motion begins at or before the start of the cycle. */
export interface ConfirmedCycle {
  readonly start: number;
  readonly end: number;
  readonly left: readonly LabelledStart[];
  readonly right: readonly LabelledStart[];
}

/** A stretch of the film in which cycles may be proposed, in seconds. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** A boundary that a cycle is expected to have. */
export interface ExpectedStart {
  /** Seconds from the start of the confirmed cycle. */
  readonly at: number;
  readonly label: number;
  /** Label of the motion before it in the same hand. */
  readonly before: number;
}

/** Boundaries of a hand within a cycle. A motion that already runs when the cycle starts has no boundary in it. */
export function startsWithin(cycle: ConfirmedCycle, hand: Hand, tolerance: number): ExpectedStart[] {
  const motions = cycle[hand];
  return motions.flatMap(({ at, label }, index) => {
    const inside = at > cycle.start - tolerance && at < cycle.end - tolerance / 2;
    const before = motions[index - 1]?.label ?? motions.at(-1)?.label ?? label;
    return inside ? [{ at: Math.max(0, at - cycle.start), label, before }] : [];
  });
}
