import { type ChangeWorth, methodFromSchedule, type Work } from '@evenhand/core/develop';
import type { Result } from '@evenhand/core/ground/base';
import { applyEdit } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import { emptyStudy, type KeptWork, type Study, writeStudy } from '@evenhand/core/ground/study';
import { writeResult } from '../files.ts';
import type { Io } from '../io.ts';
import type { Source, Told } from './develop.ts';
import type { TriedChanges } from './develop-changes.ts';
import { movedWork } from './develop-layout.ts';

/** The changes that were named, or the shortest that were found together; undefined where there are none. */
export function bestOf({ chosen, combinations }: TriedChanges): ChangeWorth | undefined {
  return chosen ?? combinations?.front.slice(1).at(-1)?.worth;
}

/**
 * The best of what was tried becomes a composed method of the study. The work stands in the study with it: with the changes
 * that were taken, and with its places where the layout puts them.
 */
export async function writeComposed(
  io: Io,
  source: Source,
  told: Told,
  output: string,
): Promise<Result<undefined, Finding>> {
  const { base, layout } = told;
  const best = bestOf(told);
  const { work, times, instance, composed } = best?.method ?? base;
  const shown = layout ?? { work, times, instance, schedule: composed.schedule, words: composed.words };
  const study = withPlaces(source.study ?? studyOf(io, source.work), shown.work);
  const kept = applyEdit(study, { type: 'work.add', work: keptOf(io, source, told) });
  if (!kept.ok) return kept;
  const made = [...(best === undefined ? [] : [best.name]), ...(layout === undefined ? [] : ['best places'])];
  const name = made.length === 0 ? 'Composed method' : `Composed: ${made.join(' + ')}`;
  const method = methodFromSchedule(shown.work, shown.times, shown.instance, shown.schedule, {
    id: io.newId(),
    name: name.slice(0, 200),
    note: shown.words,
  });
  const added = applyEdit(kept.value.study, { type: 'method.add', method });
  return added.ok ? writeResult(io, output, writeStudy(added.value.study)) : added;
}

function keptOf(io: Io, { work, drawnFrom }: Source, told: Told): KeptWork {
  const { layout } = told;
  const taken = [...(bestOf(told)?.changes ?? [])].sort();
  return {
    id: io.newId(),
    ...(drawnFrom === undefined ? {} : { drawnFrom }),
    work: layout === undefined ? work : movedWork(work, layout),
    ...(taken.length === 0 ? {} : { changes: taken.map((change) => ({ change, taken: true })) }),
  };
}

/** Places that came with a change are places of the study, too. */
function withPlaces(study: Study, work: Work): Study {
  const places = work.places.flatMap(({ id, name, at, mirror }) =>
    study.places.some((place) => place.id === id)
      ? []
      : [{ id, name, ...(at === undefined ? {} : { at }), ...(mirror === undefined ? {} : { mirror }) }],
  );
  return { ...study, places: [...study.places, ...places] };
}

/** A study of the work alone, for a method that no record stands beside. */
function studyOf(io: Io, work: Work): Study {
  const study = emptyStudy(io.newId(), work.title);
  return work.demo === true ? { ...study, demo: true } : study;
}
