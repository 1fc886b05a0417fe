import { benchSize } from '@evenhand/core/develop';
import type { Edit, SingleEdit, WorkPlaceFields } from '@evenhand/core/ground/edit';
import type { KeptWork, Work, WorkBench, WorkPlace } from '@evenhand/core/ground/study';
import { changePlace, changeWork, freeId } from '../work/work-edits.ts';

/** The bench that a work names, else the one that its places ask for. */
export function benchOf(work: Work): WorkBench {
  return work.bench ?? benchSize(work);
}

export type BenchFields = { readonly [Field in keyof WorkBench]?: WorkBench[Field] | null };

/** Undefined where nothing would change. */
export function changeBench(kept: KeptWork, to: BenchFields): Edit | undefined {
  const fields = { ...benchOf(kept.work), ...to };
  const bench = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null)) as WorkBench;
  return changeWork(kept, { bench });
}

/** A place where there is room for it, of the kind of the one that is chosen. */
export function newPlace({ work }: KeptWork, like: WorkPlace | undefined): WorkPlace {
  const { width, depth } = benchOf(work);
  const taken = work.places.flatMap(({ at }) => (at === undefined ? [] : [at]));
  const spots = [200, 300, 400, 100]
    .filter((y) => y < depth)
    .flatMap((y) => [0, 100, -100, 200, -200, 300, -300].map((x) => ({ x, y })))
    .filter(({ x }) => Math.abs(x) < width / 2);
  const free = spots.find((spot) => taken.every(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) >= 100));
  return {
    id: freeId('place', work.places),
    name: `Place ${work.places.length + 1}`,
    kind: like?.kind ?? 'bin',
    at: free ?? { x: 0, y: Math.round(depth / 2) },
    ...(like?.size === undefined ? {} : { size: like.size }),
  };
}

export function addPlace(kept: KeptWork, place: WorkPlace): SingleEdit {
  return { type: 'work-place.add', work: kept.id, place };
}

/** Why a place cannot be taken away: what names it. */
export function usersOf({ work }: KeptWork, id: string): readonly string[] {
  const steps = work.steps.filter(
    ({ place, rightPlace, held }) => place === id || rightPlace === id || held?.place === id,
  );
  const home = work.home !== 'free' && (work.home.left === id || work.home.right === id);
  return [...steps.map(({ name }) => `“${name}”`), ...(home ? ['where the hands begin'] : [])];
}

/** Without the place, and without the name of it at the place that mirrors it and at the spots that stand there. */
export function removePlace(kept: KeptWork, place: WorkPlace): Edit {
  const { places, spots = [] } = kept.work;
  const mirrored = places
    .filter(({ id, mirror }) => id !== place.id && mirror === place.id)
    .flatMap((other) => changePlace(kept, other, { mirror: null }) ?? []);
  const left = spots.map((spot) => {
    if (spot.place !== place.id) return spot;
    const { place: _, ...rest } = spot;
    return rest;
  });
  const freed = changeWork(kept, spots.length === 0 ? {} : { spots: left });
  return {
    type: 'group',
    name: `remove the place ${place.name}`,
    edits: [
      ...mirrored,
      ...(freed === undefined ? [] : [freed]),
      { type: 'work-place.remove', work: kept.id, place },
    ],
  };
}

export function setPlace(kept: KeptWork, place: WorkPlace, to: WorkPlaceFields): Edit | undefined {
  return changePlace(kept, place, to);
}

/** Degrees from −180 (not itself) to 180. */
export function turned(angle: number): number {
  const rest = (((angle % 360) + 360) % 360) as number;
  return rest > 180 ? rest - 360 : rest;
}
