import { type Random, seededRandom } from '../../../ground/numerics/index.ts';
import { type CycleKind, compose, type Schedule, shorterThan } from '../compose/index.ts';
import type { Work } from '../work/index.ts';
import type { BenchWish } from './bench-method.ts';
import type { LayoutSpace } from './bench-spots.ts';
import { bestAssignment } from './best-assignment.ts';
import { problemOf } from './best-places.ts';
import type { LayoutTravel } from './layout-travel.ts';
import { tripsOfSchedule } from './trips.ts';

type Take = (spotOf: readonly number[], schedule: Schedule) => void;
type Wish = Pick<BenchWish, 'seed' | 'starts' | 'stop'> & { readonly kind: CycleKind };

interface Found {
  readonly spotOf: readonly number[];
  readonly schedule: Schedule;
}

/** Turns of method and layout from one start. */
const turns = 4;

/**
 * A good layout with a method: from the layout as it is and from some drawn by chance, method and layout are improved in turn;
 * the best of them is then changed place by place with the composer as judge. One method is found however short the time is.
 */
export function goodLayout(
  work: Work,
  space: LayoutSpace,
  travel: LayoutTravel,
  wish: Wish,
  take: Take,
): void {
  const random = seededRandom(wish.seed);
  let best: Found | undefined;
  const keep = (found: Found) => {
    if (best !== undefined && best.schedule.period <= found.schedule.period) return false;
    best = found;
    take(found.spotOf, found.schedule);
    return true;
  };
  const tried = new Set<string>();
  for (let start = 0; start < (wish.starts ?? 5); start += 1) {
    if (best !== undefined && wish.stop?.() === true) break;
    const from = start === 0 ? asItIs(space) : drawnLayout(space, random);
    if (from !== undefined) alternate(work, space, travel, wish, from, tried, keep);
  }
  if (best !== undefined) exchange(space, travel, wish, best, keep);
}

function asItIs(space: LayoutSpace): readonly number[] | undefined {
  const now = [...space.now];
  return now.every((spot, item) => spot >= 0 && space.allowed(item, spot)) && clear(space, now)
    ? now
    : undefined;
}

function clear(space: LayoutSpace, spotOf: readonly number[]): boolean {
  return spotOf.every((spot, item) =>
    spotOf.every(
      (otherSpot, other) =>
        other <= item || (spot !== otherSpot && !space.conflict(item, spot, other, otherSpot)),
    ),
  );
}

/** Items in their order onto spots drawn from those that are left; undefined when a few draws come to nothing. */
function drawnLayout(space: LayoutSpace, random: Random): readonly number[] | undefined {
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const made: number[] = [];
    for (let item = 0; item < space.items.length; item += 1) {
      const open = space.spots.flatMap((_, spot) =>
        space.allowed(item, spot) &&
        made.every((its, other) => its !== spot && !space.conflict(item, spot, other, its))
          ? [spot]
          : [],
      );
      const chosen = open[Math.floor(random() * open.length)];
      if (chosen === undefined) break;
      made.push(chosen);
    }
    if (made.length === space.items.length) return made;
  }
  return undefined;
}

function alternate(
  work: Work,
  space: LayoutSpace,
  travel: LayoutTravel,
  { kind, seed, stop }: Wish,
  from: readonly number[],
  tried: Set<string>,
  keep: (found: Found) => boolean,
): void {
  let [spotOf, before] = [from, Number.POSITIVE_INFINITY];
  for (let turn = 0; turn < turns && (turn === 0 || stop?.() !== true); turn += 1) {
    const name = spotOf.join();
    if (tried.has(name)) return;
    tried.add(name);
    const instance = travel.instanceFor(spotOf.map((spot) => [spot]));
    if (instance === undefined) return;
    const made = compose(instance, { kind, seed, rounds: 8, states: 0, stop });
    if (!made.ok) return;
    const { schedule } = made.value;
    keep({ spotOf, schedule });
    if (schedule.period >= before) return;
    before = schedule.period;
    const problem = problemOf(space, space.moved(spotOf), tripsOfSchedule(work, instance, schedule));
    const next = bestAssignment(problem, { seed, starts: 2, moves: 100, nodes: 2000, known: spotOf, stop });
    if (next.spotOf === undefined) return;
    spotOf = [...next.spotOf];
  }
}

/** Moves one place or exchanges two, as long as that gives a shorter method. */
function exchange(
  space: LayoutSpace,
  travel: LayoutTravel,
  { kind, stop }: Wish,
  from: Found,
  keep: (found: Found) => boolean,
): void {
  let best = from;
  let better = true;
  while (better && stop?.() !== true) {
    better = false;
    for (const spotOf of neighbours(space, best.spotOf)) {
      if (stop?.() === true) return;
      const instance = travel.instanceFor(spotOf.map((spot) => [spot]));
      if (instance === undefined) continue;
      const { schedule } = shorterThan(instance, { kind, below: best.schedule.period, states: 0, stop });
      if (schedule === undefined) continue;
      best = { spotOf, schedule };
      keep(best);
      better = true;
      break;
    }
  }
}

function* neighbours(space: LayoutSpace, spotOf: readonly number[]): Generator<readonly number[]> {
  for (let item = 0; item < spotOf.length; item += 1) {
    for (let spot = 0; spot < space.spots.length; spot += 1) {
      const from = spotOf[item] ?? 0;
      const other = spotOf.indexOf(spot);
      if (spot === from || (other >= 0 && other < item)) continue;
      const made = spotOf.map((its, index) => (index === item ? spot : index === other ? from : its));
      if (made.every((its, index) => space.allowed(index, its)) && clear(space, made)) yield made;
    }
  }
}
