import type { Hand } from '../../../ground/study/index.ts';
import type { Track } from '../tracks/track.ts';
import { type BoundaryWeights, boundaryWeights, type PlacedStart, placeStarts } from './boundaries.ts';
import type { ConfirmedCycle, Stretch } from './confirmed.ts';
import { type FoundCycle, findCycles, likenessShare, type PathWeights, pathWeights } from './cycle-path.ts';
import { type HandPathWeights, handPathWeights } from './hand-path.ts';
import { signalsOf } from './signals.ts';

export interface ProposedRows {
  readonly cycles: readonly FoundCycle[];
  /** For each cycle its difference as a share of that of a wrong order; 0 where a person gave its bounds. */
  readonly shares: readonly number[];
  readonly left: readonly PlacedStart[];
  readonly right: readonly PlacedStart[];
}

export interface ProposeWeights {
  readonly path: PathWeights;
  readonly hand: HandPathWeights;
  readonly boundary: BoundaryWeights;
}

export const proposeWeights: ProposeWeights = {
  path: pathWeights,
  hand: handPathWeights,
  boundary: boundaryWeights,
};

/** Points a second for finding cycles and for placing boundaries. */
const coarse = 15;
const fine = 30;

/**
 * Finds the other cycles in the free stretches of a film and places their boundaries.
 * @param seconds time of each frame, growing
 */
export function proposeRows(
  track: Track,
  seconds: ArrayLike<number>,
  confirmed: readonly ConfirmedCycle[],
  free: readonly Stretch[],
  given: readonly Stretch[] = [],
  weights: ProposeWeights = proposeWeights,
): ProposedRows {
  const rough = signalsOf(track, seconds, 1 / coarse);
  const exact = signalsOf(track, seconds, 1 / fine);
  const rows: { cycles: FoundCycle[]; shares: number[]; left: PlacedStart[]; right: PlacedStart[] } = {
    cycles: [],
    shares: [],
    left: [],
    right: [],
  };
  // Where a person has marked the bounds of a cycle already, one cycle fills them.
  const filled: PathWeights = { ...weights.path, outside: 20, enter: 60 };
  const stretches = [
    ...free.map((stretch) => ({ stretch, path: weights.path, sure: false })),
    ...given.map((stretch) => ({ stretch, path: filled, sure: true })),
  ];
  for (const { stretch, path, sure } of stretches.sort((a, b) => a.stretch.start - b.stretch.start)) {
    const seen = findCycles(rough, confirmed, stretch, path);
    rows.shares.push(
      ...seen.map((cycle) => (sure ? 0 : likenessShare(rough, confirmed, cycle, weights.path))),
    );
    const found = seen.map((cycle) => finer(cycle, rough.step, exact.step));
    const before = rows.cycles.length;
    for (const hand of ['left', 'right'] as const satisfies readonly Hand[])
      for (const start of placeStarts(exact, hand, confirmed, found, weights.boundary, weights.hand))
        rows[hand].push({ ...start, cycle: start.cycle + before });
    rows.cycles.push(...found);
  }
  return rows;
}

/** The times of a found cycle for each point of a finer grid. */
function finer(cycle: FoundCycle, from: number, to: number): FoundCycle {
  const { times } = cycle;
  const count = Math.round(((times.length - 1) * from) / to) + 1;
  const finerTimes = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    const place = Math.min(times.length - 1, (at * to) / from);
    const low = Math.floor(place);
    const high = Math.min(times.length - 1, low + 1);
    finerTimes[at] = (times[low] as number) * (1 - (place - low)) + (times[high] as number) * (place - low);
  }
  return { ...cycle, times: finerTimes };
}
