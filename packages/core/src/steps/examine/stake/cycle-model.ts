import { type CycleReading, type Piece, type Segment, segmentsOf } from '../reading/index.ts';
import { type Chain, chainsOf } from './chain.ts';
import { individualsOf } from './individuals.ts';

/** What the stakes of all leads need of a cycle, made once. */
export interface CycleModel {
  readonly cycle: CycleReading;
  readonly segments: readonly Segment[];
  /** The motions made with each particular thing, in order of time. */
  readonly individuals: readonly (readonly Piece[])[];
  readonly chains: readonly Chain[];
}

export function cycleModel(cycle: CycleReading, segments = segmentsOf(cycle)): CycleModel {
  const individuals = individualsOf(cycle);
  return { cycle, segments, individuals, chains: chainsOf(individuals) };
}
