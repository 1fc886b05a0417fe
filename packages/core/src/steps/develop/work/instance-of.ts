import { roundMicros } from '../../../ground/base/index.ts';
import type { Instance, Mode, Role, Task } from '../compose/index.ts';
import type { DrawnTimes, WorkTimes } from '../predict/index.ts';
import type { Work, WorkStep } from './work-schema.ts';

/** Sight where the work says nothing: what lies nearer is seen together, and how long a look to elsewhere takes. Ours. */
const usualSight = { field: 150, change: 150_000 } as const;

/** Names of what stays in a hand through the whole cycle, such as a tool or a supply: no step takes it up or lays it down. */
function keptInHand({ steps }: Work): ReadonlySet<string> {
  const known = new Set(
    steps.flatMap(({ before, after, held }) => [
      before,
      after,
      held?.by === 'hand' ? held.object : undefined,
    ]),
  );
  const changing = steps.flatMap(({ before, after, held }) => [
    ...(before === after ? [] : [before, after]),
    ...(held?.becomes === undefined || held.becomes === held.object ? [] : [held.object, held.becomes]),
  ]);
  for (const object of changing) known.delete(object);
  return new Set([...known].filter((object) => object !== undefined));
}

/** The work with its times as the problem that the composer solves. */
export function instanceOf(work: Work, times: WorkTimes | DrawnTimes): Instance {
  const placeAt = new Map(work.places.map(({ id }, index) => [id, index]));
  const stepAt = new Map(work.steps.map(({ id }, index) => [id, index]));
  const loads = [''];
  const objects: (string | undefined)[] = [undefined];
  const kept = keptInHand(work);
  const loadOf = (object: string | undefined, unit: number): number => {
    // A part of one unit never ends up in another; what stays in the hand serves all units.
    const name = object === undefined ? '' : kept.has(object) ? object : `${object} (unit ${unit})`;
    const known = loads.indexOf(name);
    if (known >= 0) return known;
    objects.push(object);
    return loads.push(name) - 1;
  };
  const place = (id: string) => placeAt.get(id) ?? 0;
  const timeOf = ({ id }: WorkStep) =>
    roundMicros('step' in times ? times.step(id) : (times.steps.get(id)?.us ?? 0));
  const tasks = work.steps.map((step): Task => {
    const follows = step.follows ?? [];
    return {
      name: step.name,
      modes: modesOf(step, timeOf(step), place, (object) => loadOf(object, step.unit)),
      after: follows.map(({ step: before, lag }) => ({ task: stepAt.get(before) ?? 0, lag: lag ?? 0 })),
      ...(step.eyes ? { eyes: place(step.place) } : {}),
    };
  });
  const { field, change } = work.sight ?? usualSight;
  return {
    tasks,
    places: work.places.map(({ name }) => name),
    loads: loads.map((name) => name || 'nothing'),
    travel: travelOf(work, times, objects),
    apart: (one, other) => one !== other && distance(work, one, other) > field,
    gazeGap: change,
    spots: (work.spots ?? []).map(({ name, claimedBy, releasedBy }) => ({
      name,
      claimedBy: stepAt.get(claimedBy) ?? 0,
      releasedBy: stepAt.get(releasedBy) ?? 0,
    })),
    home: work.home === 'free' ? 'free' : { left: place(work.home.left), right: place(work.home.right) },
  };
}

function modesOf(
  { hand, place, rightPlace, before, after, held }: WorkStep,
  time: number,
  placeAt: (id: string) => number,
  loadOf: (object: string | undefined) => number,
): Mode[] {
  const role = (at: string): Role => ({ place: placeAt(at), before: loadOf(before), after: loadOf(after) });
  if (hand === 'both') return [{ left: role(place), right: role(rightPlace ?? place), time }];
  const holding: Role | undefined =
    held?.by === 'hand'
      ? {
          place: placeAt(held.place),
          before: loadOf(held.object),
          after: loadOf(held.becomes ?? held.object),
        }
      : undefined;
  const left: Mode = { left: role(place), ...(holding === undefined ? {} : { right: holding }), time };
  const right: Mode = { right: role(place), ...(holding === undefined ? {} : { left: holding }), time };
  return hand === 'left' ? [left] : hand === 'right' ? [right] : [left, right];
}

function travelOf(
  work: Work,
  times: WorkTimes | DrawnTimes,
  objects: readonly (string | undefined)[],
): Instance['travel'] {
  const known = new Map<string, number>();
  return (hand, from, to, load) => {
    const key = `${hand} ${from} ${to} ${load}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const [start, end] = [work.places[from]?.id ?? '', work.places[to]?.id ?? ''];
    // A loaded hand that stays where it is has nothing to move.
    const stays = from === to && load !== 0;
    const time = stays ? 0 : times.travel(hand, start, end, objects[load]);
    const us = roundMicros(typeof time === 'number' ? time : time.us);
    known.set(key, us);
    return us;
  };
}

function distance({ places }: Work, one: number, other: number): number {
  const [a, b] = [places[one]?.at, places[other]?.at];
  return a === undefined || b === undefined ? Number.POSITIVE_INFINITY : Math.hypot(a.x - b.x, a.y - b.y);
}
