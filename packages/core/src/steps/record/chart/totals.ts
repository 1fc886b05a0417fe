import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import {
  type GroupingId,
  groupOf,
  type MotionGroup,
  type MotionKind,
  motionKinds,
} from '../../../ground/tables/index.ts';
import type { ChartFacts, ChartMotion } from './facts.ts';

export interface HandTotal {
  readonly count: number;
  readonly time: Micros;
}

/** What one kind of motion takes in each hand, over the charted span. */
export interface KindTotal extends Readonly<Record<Hand, HandTotal>> {
  readonly kind: MotionKind;
}

/** The kinds that occur, in the order of the table of motions, with `unmarked` last. */
export function kindTotals(facts: Pick<ChartFacts, Hand>): readonly KindTotal[] {
  return motionKinds
    .map((kind) => ({ kind, left: handTotal(facts.left, kind), right: handTotal(facts.right, kind) }))
    .filter((total) => total.left.count + total.right.count > 0);
}

function handTotal(motions: readonly ChartMotion[], kind: MotionKind): HandTotal {
  const those = motions.filter((motion) => motion.kind === kind);
  return { count: those.length, time: micros(those.reduce((sum, motion) => sum + motion.duration, 0)) };
}

export type GroupTimes = Readonly<Record<MotionGroup, Micros>> & {
  /** Effective time as a share of the hand's marked time, 0 to 1; undefined when nothing is marked. */
  readonly effectiveShare: number | undefined;
};

/**
 * Effective and ineffective time of each hand after a named author. What nobody marked counts nowhere; what the author
 * does not list (find) counts as marked time and in neither group.
 */
export function groupTimes(
  facts: Pick<ChartFacts, Hand>,
  grouping: GroupingId,
): Readonly<Record<Hand, GroupTimes>> {
  const [left, right] = hands.map((hand) => timesOfHand(facts[hand], grouping)) as [GroupTimes, GroupTimes];
  return { left, right };
}

function timesOfHand(motions: readonly ChartMotion[], grouping: GroupingId): GroupTimes {
  const sums: Record<MotionGroup, number> = { effective: 0, ineffective: 0, unlisted: 0 };
  for (const motion of motions) {
    if (motion.kind !== 'unmarked') sums[groupOf(motion.kind, grouping)] += motion.duration;
  }
  const marked = sums.effective + sums.ineffective + sums.unlisted;
  return {
    effective: micros(sums.effective),
    ineffective: micros(sums.ineffective),
    unlisted: micros(sums.unlisted),
    effectiveShare: marked === 0 ? undefined : sums.effective / marked,
  };
}
