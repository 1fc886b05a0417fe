import { ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Study } from '../study/index.ts';
import { applyToComparisons } from './apply-comparison.ts';
import { applyToElements, applyToExaminations } from './apply-examination.ts';
import { applyToMethods, applyToRow } from './apply-method.ts';
import { applyToFilms, applyToPlaces, changeStudy } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import { applyToTimeStudies } from './apply-time-study.ts';
import { applyToWorks } from './apply-work.ts';
import type { Edit, SingleEdit } from './edit.ts';

/**
 * The one way in which a study changes. Checks that what the edit expects is there and that the study it leaves keeps
 * every invariant of the study; a group holds as a whole or not at all.
 */
export function applyEdit(study: Study, edit: Edit): ApplyResult {
  if (edit.type !== 'group') return applySingle(study, edit);
  let current = study;
  const inverses: SingleEdit[] = [];
  for (const part of edit.edits) {
    const result = applySingle(current, part);
    if (!result.ok) return result;
    current = result.value.study;
    inverses.push(result.value.inverse as SingleEdit);
  }
  return ok({ study: current, inverse: { type: 'group', name: edit.name, edits: inverses.reverse() } });
}

function applySingle(study: Study, edit: SingleEdit): ApplyResult {
  switch (edit.type) {
    case 'study.change':
      return changeStudy(study, edit);
    case 'film.add':
    case 'film.remove':
    case 'film.change':
      return applyToFilms(study, edit);
    case 'place.add':
    case 'place.remove':
    case 'place.change':
      return applyToPlaces(study, edit);
    case 'method.add':
    case 'method.remove':
    case 'method.change':
      return applyToMethods(study, edit);
    case 'element.add':
    case 'element.remove':
    case 'element.change':
      return applyToElements(study, edit);
    case 'examination.add':
    case 'examination.remove':
    case 'examination.change':
      return applyToExaminations(study, edit);
    case 'time-study.add':
    case 'time-study.remove':
    case 'time-study.change':
    case 'timed-element.add':
    case 'timed-element.remove':
    case 'timed-element.change':
    case 'reading.set':
      return applyToTimeStudies(study, edit);
    case 'comparison.add':
    case 'comparison.remove':
    case 'comparison.change':
      return applyToComparisons(study, edit);
    case 'work.add':
    case 'work.remove':
    case 'work.change':
    case 'work-step.add':
    case 'work-step.remove':
    case 'work-step.change':
    case 'work-step.move':
    case 'work-place.add':
    case 'work-place.remove':
    case 'work-place.change':
    case 'work-change.set':
      return applyToWorks(study, edit);
    default:
      return applyToRow(study, edit);
  }
}

/** Applies edits one after another; stops at the first that does not hold. For replay and for tests. */
export function applyAll(study: Study, edits: readonly Edit[]): Result<Study, Finding> {
  let current = study;
  for (const edit of edits) {
    const result = applyEdit(current, edit);
    if (!result.ok) return result;
    current = result.value.study;
  }
  return ok(current);
}
