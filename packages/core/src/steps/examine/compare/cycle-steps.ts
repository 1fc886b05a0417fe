import type { Micros } from '../../../ground/base/index.ts';
import { describeMotion } from '../../record/index.ts';
import { type Piece, segmentsOf } from '../reading/index.ts';
import type { ComparedCycle } from './comparison.ts';

/** A stretch of a cycle in which neither hand changes what it does. */
export interface CycleStep {
  /** Since the start of the cycle. */
  readonly start: Micros;
  readonly duration: Micros;
  /** "carry ring from ring bin to fixture"; a motion that goes on from the step before begins with "…". */
  readonly left: string;
  readonly right: string;
}

/** What the picture of a cycle shows, in words, in order of time; the steps fill the cycle without a gap. */
export function cycleSteps({
  cycle,
  reading,
}: Pick<ComparedCycle, 'cycle' | 'reading'>): readonly CycleStep[] {
  const words = ({ kind, object, motion }: Piece) => {
    const place = (id: string | undefined) => (id === undefined ? undefined : reading.placeName(id));
    return describeMotion({ kind, object, from: place(motion?.from), to: place(motion?.to) });
  };
  let [left, right]: [Piece | undefined, Piece | undefined] = [undefined, undefined];
  return segmentsOf(cycle).map((segment): CycleStep => {
    const say = (piece: Piece, before: Piece | undefined) =>
      piece === before ? `… ${words(piece)}` : words(piece);
    const { start, duration } = segment;
    const step = { start, duration, left: say(segment.left, left), right: say(segment.right, right) };
    [left, right] = [segment.left, segment.right];
    return step;
  });
}
