import { type Finding, finding } from '../findings/index.ts';
import { checkElements, checkExaminations } from './check-examination.ts';
import { checkKeptWorks } from './check-kept-work.ts';
import { checkTimes } from './check-time-study.ts';
import { frameCount, frameTimesFault } from './frame-times.ts';
import { clockFault } from './scene-clock.ts';
import type { Film, Method, Row, Study } from './schema.ts';
import { hands } from './schema.ts';

/** The invariants that a shape alone cannot say. Sorted by where they stand in the document. */
export function checkStudy(study: Study): Finding[] {
  const found: Finding[] = [...checkIds(study)];
  study.films.forEach((film, index) => {
    found.push(...checkFilm(film, `/films/${index}`));
  });
  study.methods.forEach((method, index) => {
    found.push(...checkMethod(study, method, `/methods/${index}`));
  });
  const places = new Set(study.places.map((place) => place.id));
  study.places.forEach((place, index) => {
    if (place.mirror !== undefined && !places.has(place.mirror)) {
      found.push(
        finding('study/unknown-place', { pointer: `/places/${index}/mirror` }, { place: place.mirror }),
      );
    }
  });
  found.push(...checkExaminations(study), ...checkTimes(study), ...checkKeptWorks(study));
  return found;
}

function checkIds(study: Study): Finding[] {
  const found: Finding[] = [];
  const once = (list: string, ids: readonly string[]) => {
    const seen = new Set<string>();
    ids.forEach((id, index) => {
      if (seen.has(id)) found.push(finding('study/duplicate-id', { pointer: `${list}/${index}/id` }, { id }));
      seen.add(id);
    });
  };
  for (const list of ['films', 'places', 'methods'] as const) {
    once(
      `/${list}`,
      study[list].map((item) => item.id),
    );
  }
  study.methods.forEach((method, index) => {
    for (const row of [...hands, 'cycles'] as const) {
      once(
        `/methods/${index}/${row}/items`,
        method[row].items.map((item) => item.id),
      );
    }
    once(
      `/methods/${index}/elements`,
      (method.elements ?? []).map((item) => item.id),
    );
  });
  once(
    '/examinations',
    (study.examinations ?? []).map((item) => item.id),
  );
  once(
    '/timeStudies',
    (study.timeStudies ?? []).map((item) => item.id),
  );
  once(
    '/comparisons',
    (study.comparisons ?? []).map((item) => item.id),
  );
  once(
    '/works',
    (study.works ?? []).map((item) => item.id),
  );
  return found;
}

export function checkFilm(film: Film, pointer: string): Finding[] {
  const timesFault = frameTimesFault(film.frameTimes);
  if (timesFault !== undefined) {
    return [finding('study/frame-times', { pointer: `${pointer}/frameTimes` }, { reason: timesFault })];
  }
  const fault = clockFault(film, frameCount(film.frameTimes));
  return fault === undefined
    ? []
    : [finding('study/clock', { pointer: `${pointer}/clock` }, { reason: fault })];
}

function checkMethod(study: Study, method: Method, pointer: string): Finding[] {
  const found: Finding[] = [];
  const { base } = method;
  const film = base.kind === 'frames' ? study.films.find((item) => item.id === base.film) : undefined;
  if (base.kind === 'frames' && film === undefined) {
    found.push(
      finding(
        'study/unknown-film',
        { pointer: `${pointer}/base/film` },
        { method: method.name, film: base.film },
      ),
    );
  }
  const last = film === undefined ? undefined : frameCount(film.frameTimes);
  for (const name of [...hands, 'cycles'] as const)
    found.push(...checkRow(method[name], `${pointer}/${name}`, last));
  found.push(...checkElements(method, pointer, last));
  const places = new Set(study.places.map((place) => place.id));
  for (const hand of hands) {
    method[hand].items.forEach((motion, index) => {
      for (const end of ['from', 'to'] as const) {
        const place = motion[end];
        if (place !== undefined && !places.has(place)) {
          found.push(
            finding(
              'study/unknown-place',
              { pointer: `${pointer}/${hand}/items/${index}/${end}` },
              { place },
            ),
          );
        }
      }
    });
  }
  return found;
}

/** Starts grow, the end comes after the last of them, and nothing reaches beyond the film. */
export function checkRow(
  row: Row<{ readonly id: string; readonly start: number }>,
  pointer: string,
  last: number | undefined,
): Finding[] {
  const found: Finding[] = [];
  row.items.forEach((item, index) => {
    const before = row.items[index - 1];
    if (before !== undefined && item.start <= before.start) {
      found.push(
        finding(
          'study/row-order',
          { pointer: `${pointer}/items/${index}/start` },
          { start: item.start, before: before.start },
        ),
      );
    }
  });
  const start = row.items.at(-1)?.start;
  if (start !== undefined && row.end <= start) {
    found.push(finding('study/row-end', { pointer: `${pointer}/end` }, { end: row.end, start }));
  }
  if (last !== undefined && row.end > last) {
    found.push(
      finding('study/row-outside-film', { pointer: `${pointer}/end` }, { end: row.end, frames: last }),
    );
  }
  return found;
}
