import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { numberText, percentText } from '../../../ground/units/index.ts';
import type { Work } from '../work/index.ts';
import { type LayoutLimits, type LayoutSpace, layoutSpace, movablePlaces } from './bench-spots.ts';
import { bestAssignment } from './best-assignment.ts';
import { assignmentCost, type QuadraticAssignment } from './quadratic-assignment.ts';
import { handTravel, positionsOf, type Trips } from './trips.ts';
import { areaOf, type BenchPoint } from './working-areas.ts';

export interface PlacesWish {
  readonly seed: number;
  readonly starts?: number | undefined;
  readonly moves?: number | undefined;
  readonly nodes?: number | undefined;
  readonly stop?: (() => boolean) | undefined;
}

export interface BestPlaces {
  /** The work with its places where they are best. */
  readonly work: Work;
  readonly moved: readonly {
    readonly place: string;
    readonly from: BenchPoint | undefined;
    readonly to: BenchPoint;
  }[];
  /** Travel of both hands a cycle, millimetres; now is undefined where a movable place has no position. */
  readonly now: number | undefined;
  readonly travel: number;
  /** No layout of these limits has less. */
  readonly bound: number;
  readonly proven: boolean;
  /** The layout as it is breaks a limit: reach, side, room or gap. */
  readonly nowBroken: boolean;
  readonly words: string;
}

/**
 * Puts bins, tools and exits where both hands travel least for the trips given, within reach of everybody of the choice, and
 * within side, room and gap. Distances are straight and rounded to whole millimetres.
 */
export function bestPlaces(
  work: Work,
  trips: Trips,
  limits: LayoutLimits,
  wish: PlacesWish,
): Result<BestPlaces, Finding> {
  const users = usersOf(trips);
  const space = layoutSpace(work, limits, ({ id, name }, at) =>
    [...(users.get(id) ?? [])].every((hand) => areaOf({ name, at }, hand, limits.reach).reached),
  );
  const refused = whyNone(space, work, limits);
  if (refused !== undefined) return fail(refused);
  const problem = problemOf(space, work, trips);
  const known = space.now.every((spot) => spot >= 0) ? space.now : undefined;
  const found = bestAssignment(problem, { ...wish, known });
  if (found.spotOf === undefined) return fail(noLayout(space, found.proven));
  return ok(placesFrom(space, work, trips, problem, found.spotOf, found.bound, found.proven));
}

function placesFrom(
  space: LayoutSpace,
  work: Work,
  trips: Trips,
  problem: QuadraticAssignment,
  spotOf: Int32Array,
  bound: number,
  proven: boolean,
): BestPlaces {
  const better = space.moved(spotOf);
  const cost = assignmentCost(problem, spotOf);
  const known = space.now.every((spot) => spot >= 0);
  const broken = !known || assignmentCost(problem, space.now) === Number.POSITIVE_INFINITY;
  const straight = handTravel(trips, positionsOf(work));
  return {
    work: better,
    moved: space.items.flatMap(({ id, at }, item) => {
      const to = space.spots[spotOf[item] ?? -1]?.at;
      return to === undefined || (at?.x === to.x && at.y === to.y) ? [] : [{ place: id, from: at, to }];
    }),
    now: known ? Math.round(straight.left + straight.right) : undefined,
    travel: cost,
    bound,
    proven,
    nowBroken: broken,
    words: proven
      ? 'On these spots no layout has less hand travel for these trips.'
      : `On these spots no layout has less hand travel for these trips than ${numberText(bound, 0)} mm a cycle; this one has ${percentText(cost / Math.max(1, bound) - 1)} more.`,
  };
}

function usersOf({ list }: Trips): ReadonlyMap<string, ReadonlySet<Hand>> {
  const users = new Map<string, Set<Hand>>();
  for (const { hand, from, to } of list) {
    for (const place of [from, to]) {
      const known = users.get(place) ?? new Set<Hand>();
      users.set(place, known.add(hand));
    }
  }
  return users;
}

/** Trips between movable places are flows; trips to places that stay cost by the spot alone. */
export function problemOf(space: LayoutSpace, work: Work, { list }: Trips): QuadraticAssignment {
  const [items, spots] = [space.items.length, space.spots.length];
  const itemAt = new Map(space.items.map(({ id }, item) => [id, item]));
  const at = positionsOf(work);
  const far = (one: BenchPoint, other: BenchPoint) =>
    Math.round(Math.hypot(one.x - other.x, one.y - other.y));
  const flow = new Float64Array(items * items);
  const linear = new Float64Array(items * spots);
  const spotAt = (spot: number) => space.spots[spot]?.at ?? { x: 0, y: 0 };
  let kept = 0;
  for (const { from, to, perCycle } of list) {
    const [one, other] = [itemAt.get(from), itemAt.get(to)];
    if (one !== undefined && other !== undefined) {
      flow[one * items + other] = (flow[one * items + other] ?? 0) + perCycle;
      continue;
    }
    const item = one ?? other;
    const stays = at(item === one ? to : from);
    if (stays === undefined) continue;
    if (item === undefined) {
      const start = at(from);
      if (start !== undefined) kept += perCycle * far(start, stays);
      continue;
    }
    for (let spot = 0; spot < spots; spot += 1)
      linear[item * spots + spot] = (linear[item * spots + spot] ?? 0) + perCycle * far(spotAt(spot), stays);
  }
  for (let item = 0; item < items; item += 1) {
    for (let spot = 0; spot < spots; spot += 1) {
      // Trips between places that stay belong to the travel of every layout; the first item carries them.
      if (item === 0) linear[spot] = (linear[spot] ?? 0) + kept;
      if (!space.allowed(item, spot)) linear[item * spots + spot] = Number.POSITIVE_INFINITY;
    }
  }
  const distance = Float64Array.from({ length: spots * spots }, (_, index) =>
    far(spotAt(Math.floor(index / spots)), spotAt(index % spots)),
  );
  return { items, spots, flow, distance, linear, conflict: space.conflict };
}

/** What makes every layout impossible, as far as one place alone shows it. */
export function whyNone(space: LayoutSpace, work: Work, limits: LayoutLimits): Finding | undefined {
  if (movablePlaces(work, limits).length === 0) return finding('develop/nothing-movable');
  const stuck = space.items.filter((_, item) => !space.spots.some((__, spot) => space.allowed(item, spot)));
  if (stuck.length > 0)
    return finding('develop/no-spot', {}, { places: stuck.map(({ name }) => name).join(', ') });
  if (space.items.length > space.spots.length)
    return finding('develop/few-spots', {}, { places: space.items.length, spots: space.spots.length });
  return undefined;
}

export function noLayout({ items }: LayoutSpace, proven: boolean): Finding {
  return finding(
    proven ? 'develop/no-layout' : 'develop/layout-not-found',
    {},
    {
      places: items.map(({ name }) => name).join(', '),
    },
  );
}
