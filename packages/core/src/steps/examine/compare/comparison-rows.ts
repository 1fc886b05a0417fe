import { type Hand, hands } from '../../../ground/study/index.ts';
import { type MotionKind, motionFactsOf, motionKinds } from '../../../ground/tables/index.ts';
import type { CycleReading } from '../reading/index.ts';
import type { Comparison } from './comparison.ts';

/** Time of one kind of motion of one hand in both cycles, for one unit; microseconds. */
export interface ComparisonRow {
  readonly hand: Hand;
  readonly kind: MotionKind;
  readonly name: string;
  readonly upper: number;
  readonly lower: number;
  /** Lower less upper. */
  readonly change: number;
}

/** What each hand does in both cycles, motion by motion, for one unit; the largest changes first. */
export function comparisonRows({ upper, lower }: Comparison): readonly ComparisonRow[] {
  const rows = hands.flatMap((hand) =>
    motionKinds.map((kind): ComparisonRow => {
      const above = timeOf(upper.cycle, hand, kind) / upper.units;
      const below = timeOf(lower.cycle, hand, kind) / lower.units;
      const name = motionFactsOf(kind).name;
      return { hand, kind, name, upper: above, lower: below, change: below - above };
    }),
  );
  return rows
    .filter((row) => row.upper > 0 || row.lower > 0)
    .sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
}

function timeOf(cycle: CycleReading, hand: Hand, kind: MotionKind): number {
  return cycle[hand].reduce((sum, piece) => sum + (piece.kind === kind ? piece.duration : 0), 0);
}
