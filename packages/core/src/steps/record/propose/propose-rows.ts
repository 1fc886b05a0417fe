import { hands } from '../../../ground/study/index.ts';
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

/** Told now and then how much of the work is done: a share from 0 to 1 that never falls. */
export type OnProgress = (share: number) => void;

/** About what share of the time each part takes, of the whole and of each stretch; measured on films of 10 to 20 minutes. */
const parts = { signals: 0.2, path: 0.08, likeness: 0.27, hand: 0.325 } as const;

/**
 * Finds the other cycles in the free stretches of a film and places their boundaries.
 * @param seconds time of each frame, growing
 * @param onProgress told after each part of the work
 */
export function proposeRows(
  track: Track,
  seconds: ArrayLike<number>,
  confirmed: readonly ConfirmedCycle[],
  free: readonly Stretch[],
  given: readonly Stretch[] = [],
  weights: ProposeWeights = proposeWeights,
  onProgress: OnProgress = () => {},
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
  onProgress(parts.signals);
  const whole = stretches.reduce((sum, { stretch }) => sum + stretch.end - stretch.start, 0);
  let done = 0;
  for (const { stretch, path, sure } of stretches.sort((a, b) => a.stretch.start - b.stretch.start)) {
    const length = stretch.end - stretch.start;
    const told = (share: number) =>
      onProgress(parts.signals + ((1 - parts.signals) * (done + share * length)) / whole);
    const seen = findCycles(rough, confirmed, stretch, path);
    told(parts.path);
    for (const [index, cycle] of seen.entries()) {
      rows.shares.push(sure ? 0 : likenessShare(rough, confirmed, cycle, weights.path));
      told(parts.path + (parts.likeness * (index + 1)) / seen.length);
    }
    const found = seen.map((cycle) => finer(cycle, rough.step, exact.step));
    const before = rows.cycles.length;
    for (const [index, hand] of hands.entries()) {
      for (const start of placeStarts(exact, hand, confirmed, found, weights.boundary, weights.hand))
        rows[hand].push({ ...start, cycle: start.cycle + before });
      told(parts.path + parts.likeness + parts.hand * (index + 1));
    }
    rows.cycles.push(...found);
    done += length;
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
