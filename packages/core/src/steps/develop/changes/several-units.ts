import { otherHand } from '../../../ground/study/index.ts';
import type { Work, WorkPlace, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { freshId, workedAt } from './work-parts.ts';

/** Places in the middle move aside by this much at least to make room for their twins, millimetres. Ours. */
const leastAside = 60;
/** Two places nearer than this stand in each other's way; the second pair of nests stands as far outside the first. Ours. */
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
  const side = Math.max(
    leastAside,
    ...work.places.filter(({ kind }) => kind === 'fixture').map(({ at }) => Math.abs(at?.x ?? 0)),
  );
  const places: WorkPlace[] = [];
  for (const place of work.places) {
    const { id, at, name } = place;
    const twin = { ...place, id: twins.get(id) ?? id, name: second(name), mirror: id };
    if (at === undefined) {
      places.push({ ...place, mirror: twin.id }, twin);
      continue;
    }
    // The unit of the left hand has what stood on the right on the left as well.
    const spot = clearOf(places, { x: -Math.max(Math.abs(at.x), Math.abs(at.x) < side ? side : 0), y: at.y });
    places.push({ ...place, at: spot, mirror: twin.id }, { ...twin, at: { x: -spot.x, y: spot.y } });
  }
  return withUnits(work, places, (place) => twins.get(place) ?? place, true);
}

/** Farther out on the same side until nothing stands in the way. */
function clearOf(
  places: readonly WorkPlace[],
  wish: { readonly x: number; readonly y: number },
): { readonly x: number; readonly y: number } {
  let spot = wish;
  const blocked = () =>
    places.some(({ at }) => at !== undefined && Math.hypot(at.x - spot.x, at.y - spot.y) < room);
  for (let step = 1; step <= 12 && blocked(); step += 1) spot = { x: wish.x - step * 20, y: wish.y };
  return spot;
}

/** Every unit once more on its own side: the nests stand twice, bins, tools and exits serve both. */
function doubled(work: Work): Work {
  const nests = workedAt(work);
  const taken = new Set(work.places.map(({ id }) => id));
  const twins = new Map<string, string>();
  const places = work.places.flatMap((place): WorkPlace[] => {
    if (!nests.has(place.id) || place.kind === 'bin' || place.kind === 'tool' || place.kind === 'exit')
      return [place];
    const id = freshId(taken, `${place.id}-b`);
    taken.add(id);
    twins.set(place.id, id);
    const { at, mirror: _, ...rest } = place;
    const out = at === undefined ? {} : { at: { x: at.x + (at.x < 0 ? -room : room), y: at.y } };
    return [place, { ...rest, ...out, id, name: second(place.name) }];
  });
  return withUnits(work, places, (place) => twins.get(place) ?? place, false);
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
