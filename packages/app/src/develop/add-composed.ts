import type { Edit, SingleEdit } from '@evenhand/core/ground/edit';
import type { Study } from '@evenhand/core/ground/study';
import type { PlainMethod } from './developed-plain.ts';

/** The composed method with the places that it needs, as one step. */
export function addComposed(study: Study, { method, work }: PlainMethod, id: string): Edit {
  const known = new Set(study.places.map((place) => place.id));
  const fresh = work.places.filter((place) => !known.has(place.id));
  const places = fresh.map(
    ({ id: place, name, at, mirror }): SingleEdit => ({
      type: 'place.add',
      place: {
        id: place,
        name,
        ...(at === undefined ? {} : { at }),
        ...(mirror !== undefined && known.has(mirror) ? { mirror } : {}),
      },
    }),
  );
  return {
    type: 'group',
    name: 'add a composed method',
    edits: [...places, { type: 'method.add', method: { ...method, id, name: freeName(method.name, study) } }],
  };
}

/** “Composed method (2)”, with the first number that is free. */
function freeName(wanted: string, { methods }: Study): string {
  const used = new Set(methods.map(({ name }) => name));
  const stem = wanted.slice(0, 190);
  let [name, count] = [stem, 2];
  while (used.has(name)) {
    name = `${stem} (${count})`;
    count += 1;
  }
  return name;
}
