import { fail, ok, type Result } from '../base/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import { checkFilm, type Film, hands, type Place, type Study } from '../study/index.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { firstDifference, sameData, sameFields, withFields } from './fields.ts';

type Of<Type extends SingleEdit['type']> = Extract<SingleEdit, { readonly type: Type }>;
type Part = { readonly id: string };
type Refused = { readonly ok: false; readonly error: Finding };

export function refuse(...of: Parameters<typeof finding>): Refused {
  return fail(finding(...of));
}

/** The pointer of a check is that of a file; an edit has none. */
export function withoutPlace(fault: Finding): Finding {
  return { ...fault, where: {} };
}

/** Changes fields of one thing after checking that they still are what the edit expects. */
export function changeFields<T extends object>(target: T, to: object, was: object): Result<T, Finding> {
  if (!sameFields(to, was))
    return refuse('edit/shape', {}, { reason: '“to” and “was” must name the same fields' });
  const field = firstDifference(target, was);
  if (field !== undefined) return refuse('edit/changed-meanwhile', {}, { field });
  return ok(withFields(target, to));
}

export function changeStudy(study: Study, edit: Of<'study.change'>): ApplyResult {
  const changed = changeFields(study, edit.to, edit.was);
  if (!changed.ok) return changed;
  return ok({ study: changed.value, inverse: { type: 'study.change', to: edit.was, was: edit.to } });
}

/** Puts a thing into a list at its index, or at the end. */
export function addTo<T extends Part>(
  list: readonly T[],
  item: T,
  index: number | undefined,
): Result<readonly T[], Finding> {
  if (list.some((known) => known.id === item.id)) return refuse('edit/taken', {}, { item: item.id });
  return ok(list.toSpliced(Math.min(index ?? list.length, list.length), 0, item));
}

/** Takes a thing out of a list if it still is what the edit expects; tells where it stood. */
export function removeFrom<T extends Part>(
  list: readonly T[],
  item: T,
  missing: Refused,
): Result<{ readonly list: readonly T[]; readonly index: number }, Finding> {
  const index = list.findIndex((known) => known.id === item.id);
  const known = list[index];
  if (known === undefined) return missing;
  if (!sameData(known, item)) return refuse('edit/changed-meanwhile', {}, { field: item.id });
  return ok({ list: list.toSpliced(index, 1), index });
}

export function applyToFilms(
  study: Study,
  edit: Of<'film.add' | 'film.remove' | 'film.change'>,
): ApplyResult {
  if (edit.type === 'film.add') {
    const fault = checkFilm(edit.film, '')[0];
    if (fault !== undefined) return fail(fault);
    const added = addTo(study.films, edit.film, edit.index);
    if (!added.ok) return added;
    return ok({ study: { ...study, films: added.value }, inverse: { type: 'film.remove', film: edit.film } });
  }
  if (edit.type === 'film.remove') return removeFilm(study, edit.film);
  const index = study.films.findIndex((film) => film.id === edit.film);
  const film = study.films[index];
  if (film === undefined) return refuse('edit/no-film', {}, { film: edit.film });
  const changed = changeFields(film, edit.to, edit.was);
  if (!changed.ok) return changed;
  const fault = checkFilm(changed.value, '')[0];
  if (fault !== undefined) return fail(fault);
  return ok({
    study: { ...study, films: study.films.with(index, changed.value) },
    inverse: { type: 'film.change', film: edit.film, to: edit.was, was: edit.to },
  });
}

function removeFilm(study: Study, film: Film): ApplyResult {
  const user = study.methods.find((method) => method.base.kind === 'frames' && method.base.film === film.id);
  if (user !== undefined)
    return refuse('edit/in-use', {}, { item: `The film ${film.name}`, user: `the method ${user.name}` });
  const removed = removeFrom(study.films, film, refuse('edit/no-film', {}, { film: film.id }));
  if (!removed.ok) return removed;
  return ok({
    study: { ...study, films: removed.value.list },
    inverse: { type: 'film.add', film, index: removed.value.index },
  });
}

export function applyToPlaces(
  study: Study,
  edit: Of<'place.add' | 'place.remove' | 'place.change'>,
): ApplyResult {
  if (edit.type === 'place.add') {
    const fault = mirrorFault(study, edit.place);
    if (fault !== undefined) return fault;
    const added = addTo(study.places, edit.place, edit.index);
    if (!added.ok) return added;
    return ok({
      study: { ...study, places: added.value },
      inverse: { type: 'place.remove', place: edit.place },
    });
  }
  if (edit.type === 'place.remove') return removePlace(study, edit.place);
  const index = study.places.findIndex((place) => place.id === edit.place);
  const place = study.places[index];
  if (place === undefined) return refuse('edit/no-place', {}, { place: edit.place });
  const changed = changeFields(place, edit.to, edit.was);
  if (!changed.ok) return changed;
  const fault = mirrorFault(study, changed.value);
  if (fault !== undefined) return fault;
  return ok({
    study: { ...study, places: study.places.with(index, changed.value) },
    inverse: { type: 'place.change', place: edit.place, to: edit.was, was: edit.to },
  });
}

function mirrorFault(study: Study, place: Place): Refused | undefined {
  const known =
    place.mirror === undefined ||
    place.mirror === place.id ||
    study.places.some((item) => item.id === place.mirror);
  return known ? undefined : refuse('edit/no-place', {}, { place: place.mirror ?? '' });
}

function removePlace(study: Study, place: Place): ApplyResult {
  const user = placeUser(study, place.id);
  if (user !== undefined) return refuse('edit/in-use', {}, { item: `The place ${place.name}`, user });
  const removed = removeFrom(study.places, place, refuse('edit/no-place', {}, { place: place.id }));
  if (!removed.ok) return removed;
  return ok({
    study: { ...study, places: removed.value.list },
    inverse: { type: 'place.add', place, index: removed.value.index },
  });
}

function placeUser(study: Study, id: string): string | undefined {
  const mirror = study.places.find((place) => place.mirror === id && place.id !== id);
  if (mirror !== undefined) return `the place ${mirror.name}`;
  for (const method of study.methods) {
    for (const hand of hands) {
      if (method[hand].items.some((motion) => motion.from === id || motion.to === id)) {
        return `a motion of the ${hand} hand in ${method.name}`;
      }
    }
  }
  return undefined;
}
