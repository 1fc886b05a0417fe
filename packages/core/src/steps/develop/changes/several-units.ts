import { otherHand } from '../../../ground/study/index.ts';
import type { Work, WorkPlace, WorkStep } from '../work/index.ts';
import { type BenchPoint, benchSize, leastGap, reachOfBench, roomOf } from '../workplace/index.ts';
import type { ChangeRule } from './change.ts';
import { freeSpotOnLeft, inMirror, type SpotLimits, type Taken, takenBy } from './free-spot.ts';
import { freshId, workedAt } from './work-parts.ts';

/** Places in the middle move aside by this much at least to make room for their twins, millimetres. Ours. */
const leastAside = 60;
/** The second pair of nests stands so far outside the first where that is free, millimetres. Ours. */
const room = 80;

/** Two units a cycle, each on its own side, so that both hands can do the same. */
export const twoUnits: ChangeRule = {
  code: 'two-units',
  name: 'Two units at once',
  what: 'The places of one unit stand twice, mirrored, so that both hands can do the same at the same time.',
  principle: 1,
  excludes: ['four-units'],
  apply: (work) => (work.unitsPerCycle > 1 || !handsFree(work) ? undefined : mirrored(work)),
};

/** Four units a cycle: two on each side, from the same bins. */
export const fourUnits: ChangeRule = {
  code: 'four-units',
  name: 'Four units at once',
  what: 'Each side has two nests: what one hand does for one unit it does for the next before it goes on.',
  principle: 1,
  excludes: ['two-units'],
  apply: (work) => {
    if (work.unitsPerCycle > 2 || !handsFree(work)) return undefined;
    return doubled(work.unitsPerCycle === 2 ? work : mirrored(work));
  },
};

/** Hands that hold, or that do a step together, cannot both work on a unit of their own. */
function handsFree({ steps }: Work): boolean {
  return !steps.some((step) => step.held?.by === 'hand' || step.hand === 'both');
}

/** The work of one unit on the left and of one on the right, each with places of its own. */
function mirrored(work: Work): Work {
  const taken = new Set(work.places.map(({ id }) => id));
  const twins = new Map<string, string>();
  for (const { id } of work.places) {
    const twin = freshId(taken, `${id}-2`);
    taken.add(twin);
    twins.set(id, twin);
  }
  const places = onTwoSides(work, (id) => twins.get(id) ?? id);
  return withUnits(work, places, (place) => twins.get(place) ?? place, true);
}

/**
 * The unit of the left hand has what stood on the right on the left as well, and each place its twin in the mirror, all of
 * them clear of each other. What stays takes its room first, then the nests, for which the ways of the hands are shortest.
 */
function onTwoSides(work: Work, twinOf: (id: string) => string): readonly WorkPlace[] {
  const side = Math.max(
    leastAside,
    ...work.places.filter(({ kind }) => kind === 'fixture').map(({ at }) => Math.abs(at?.x ?? 0)),
  );
  const [bench, reach] = [benchSize(work), reachOfBench(work.bench)];
  const taken: Taken[] = [];
  const spots = new Map<string, { readonly own: BenchPoint; readonly twin: BenchPoint }>();
  for (const place of bySettling(work.places)) {
    const { id, at } = place;
    if (at === undefined) continue;
    const wish = { x: -Math.max(Math.abs(at.x), Math.abs(at.x) < side ? side : 0), y: at.y };
    // What stays in the middle serves the left hand from there.
    const middle = place.stays === true && Math.abs(at.x) < roomOf(place).x / 2 + leastGap / 2;
    if (middle) taken.push(takenBy(place, at), takenBy(place, inMirror(at)));
    const stands = place.stays === true && !middle;
    const spot = stands
      ? { x: -Math.abs(at.x), y: at.y }
      : freeSpotOnLeft(place, wish, { bench, reach, taken });
    taken.push(takenBy(place, spot));
    spots.set(id, { own: middle ? at : spot, twin: inMirror(spot) });
  }
  return work.places.flatMap((place): WorkPlace[] => {
    const { id, name, angle } = place;
    const twin = twinOf(id);
    const turned = angle === undefined ? {} : { angle: angle === 0 ? 0 : -angle };
    const found = spots.get(id);
    return [
      { ...place, ...(found === undefined ? {} : { at: found.own }), mirror: twin },
      {
        ...place,
        ...turned,
        ...(found === undefined ? {} : { at: found.twin }),
        id: twin,
        name: second(name),
        mirror: id,
      },
    ];
  });
}

function bySettling(places: readonly WorkPlace[]): readonly WorkPlace[] {
  const rank = ({ stays, kind }: WorkPlace) => (stays === true ? 0 : kind === 'fixture' ? 1 : 2);
  return [...places].sort((a, b) => rank(a) - rank(b));
}

/** Every unit once more on its own side: the nests stand twice, bins, tools and exits serve both. */
function doubled(work: Work): Work {
  const nests = workedAt(work);
  const known = new Set(work.places.map(({ id }) => id));
  const twins = new Map<string, string>();
  const [bench, reach] = [benchSize(work), reachOfBench(work.bench)];
  const taken = work.places.flatMap((place) => (place.at === undefined ? [] : [takenBy(place, place.at)]));
  const places = work.places.flatMap((place): WorkPlace[] => {
    if (!nests.has(place.id) || place.kind === 'bin' || place.kind === 'tool' || place.kind === 'exit')
      return [place];
    const id = freshId(known, `${place.id}-b`);
    known.add(id);
    twins.set(place.id, id);
    const { at, mirror: _, ...rest } = place;
    if (at === undefined) return [place, { ...rest, id, name: second(place.name) }];
    const spot = outside(place, at, { bench, reach, taken });
    taken.push(takenBy(place, spot));
    return [place, { ...rest, at: spot, id, name: second(place.name) }];
  });
  return withUnits(work, places, (place) => twins.get(place) ?? place, false);
}

/** The free spot nearest to one just outside of a nest, on its own side. */
function outside(place: WorkPlace, at: BenchPoint, limits: SpotLimits): BenchPoint {
  const wish = { x: -Math.abs(at.x) - room, y: at.y };
  if (at.x < 0) return freeSpotOnLeft(place, wish, limits);
  const taken = limits.taken.map((item) => ({ ...item, at: inMirror(item.at) }));
  return inMirror(freeSpotOnLeft(place, wish, { ...limits, taken }));
}

function second(name: string): string {
  return `${name}, second`.slice(0, 200);
}

/** All steps once more, for further units, at other places; a step that is bound to a hand is bound to the other one. */
function withUnits(
  work: Work,
  places: readonly WorkPlace[],
  placeOf: (place: string) => string,
  swapped: boolean,
): Work {
  const taken = new Set(work.steps.map(({ id }) => id));
  const twins = new Map<string, string>();
  for (const { id } of work.steps) {
    const twin = freshId(taken, `${id}-2`);
    taken.add(twin);
    twins.set(id, twin);
  }
  const twinOf = (id: string) => twins.get(id) ?? id;
  const copied = work.steps.map((step): WorkStep => {
    const { hand, held, follows } = step;
    return {
      ...step,
      id: twinOf(step.id),
      unit: step.unit + work.unitsPerCycle,
      hand: swapped && (hand === 'left' || hand === 'right') ? otherHand(hand) : hand,
      place: placeOf(step.place),
      ...(held === undefined ? {} : { held: { ...held, place: placeOf(held.place) } }),
      ...(follows === undefined
        ? {}
        : { follows: follows.map((link) => ({ ...link, step: twinOf(link.step) })) }),
    };
  });
  const spots = work.spots?.map((spot) => ({
    ...spot,
    name: second(spot.name),
    ...(spot.place === undefined ? {} : { place: placeOf(spot.place) }),
    claimedBy: twinOf(spot.claimedBy),
    releasedBy: twinOf(spot.releasedBy),
  }));
  return {
    ...work,
    unitsPerCycle: 2 * work.unitsPerCycle,
    places: [...places],
    steps: [...work.steps, ...copied],
    ...(work.spots === undefined ? {} : { spots: [...work.spots, ...(spots ?? [])] }),
  };
}
