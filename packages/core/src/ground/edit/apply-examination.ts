import { fail, ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import {
  checkElements,
  checkExamination,
  type Examination,
  filmOf,
  frameCount,
  type Method,
  type Study,
  subjectKey,
} from '../study/index.ts';
import { withMethod } from './apply-method.ts';
import { addTo, changeFields, refuse, removeFrom, withoutPlace } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { withFields } from './fields.ts';

type Of<Type extends SingleEdit['type']> = Extract<SingleEdit, { readonly type: Type }>;
type ElementEdit = Of<'element.add' | 'element.remove' | 'element.change'>;
type ExaminationEdit = Of<'examination.add' | 'examination.remove' | 'examination.change'>;

interface Changed<Of> {
  readonly list: readonly Of[];
  readonly inverse: SingleEdit;
}

/** The named break points of a method. The list is taken away when its last element is. */
export function applyToElements(study: Study, edit: ElementEdit): ApplyResult {
  return withMethod(study, edit.method, (method) => {
    const changed = changeElements(method, edit);
    if (!changed.ok) return changed;
    const { list, inverse } = changed.value;
    const next: Method = withFields(method, { elements: list.length === 0 ? null : list });
    const film = filmOf(study, method);
    const last = film === undefined ? undefined : frameCount(film.frameTimes);
    const fault = checkElements(next, '', last)[0];
    return fault === undefined ? ok({ method: next, inverse }) : fail(withoutPlace(fault));
  });
}

type Elements = Result<Changed<NonNullable<Method['elements']>[number]>, Finding>;

function changeElements(method: Method, edit: ElementEdit): Elements {
  const list = method.elements ?? [];
  if (edit.type === 'element.add') {
    const added = addTo(list, edit.element, edit.index);
    if (!added.ok) return added;
    const { element } = edit;
    return ok({ list: added.value, inverse: { type: 'element.remove', method: method.id, element } });
  }
  if (edit.type === 'element.remove') {
    const { element } = edit;
    const removed = removeFrom(list, element, refuse('edit/no-element', {}, { element: element.name }));
    if (!removed.ok) return removed;
    const { index } = removed.value;
    const inverse: SingleEdit = { type: 'element.add', method: method.id, element, index };
    return ok({ list: removed.value.list, inverse });
  }
  const index = list.findIndex((known) => known.id === edit.element);
  const element = list[index];
  if (element === undefined) return refuse('edit/no-element', {}, { element: edit.element });
  const changed = changeFields(element, edit.to, edit.was);
  if (!changed.ok) return changed;
  return ok({ list: list.with(index, changed.value), inverse: { ...edit, to: edit.was, was: edit.to } });
}

/** What was noted in the critical examination. The list is taken away when its last examination is. */
export function applyToExaminations(study: Study, edit: ExaminationEdit): ApplyResult {
  const changed = changeExaminations(study, edit);
  if (!changed.ok) return changed;
  const { list, inverse } = changed.value;
  return ok({ study: withFields(study, { examinations: list.length === 0 ? null : list }), inverse });
}

function changeExaminations(study: Study, edit: ExaminationEdit): Result<Changed<Examination>, Finding> {
  const list = study.examinations ?? [];
  if (edit.type === 'examination.add') return addExamination(study, list, edit);
  if (edit.type === 'examination.remove') {
    const { examination } = edit;
    const missing = refuse('edit/no-examination', {}, { examination: examination.id });
    const removed = removeFrom(list, examination, missing);
    if (!removed.ok) return removed;
    const { index } = removed.value;
    return ok({ list: removed.value.list, inverse: { type: 'examination.add', examination, index } });
  }
  const index = list.findIndex((known) => known.id === edit.examination);
  const examination = list[index];
  if (examination === undefined) {
    return refuse('edit/no-examination', {}, { examination: edit.examination });
  }
  const changed = changeFields(examination, edit.to, edit.was);
  if (!changed.ok) return changed;
  const fault = checkExamination(study, changed.value, '')[0];
  if (fault !== undefined) return fail(withoutPlace(fault));
  return ok({ list: list.with(index, changed.value), inverse: { ...edit, to: edit.was, was: edit.to } });
}

function addExamination(
  study: Study,
  list: readonly Examination[],
  { examination, index }: Of<'examination.add'>,
): Result<Changed<Examination>, Finding> {
  const { method } = examination.subject;
  if (!study.methods.some((item) => item.id === method)) return refuse('edit/no-method', {}, { method });
  const fault = checkExamination(study, examination, '')[0];
  if (fault !== undefined) return fail(withoutPlace(fault));
  const key = subjectKey(examination.subject);
  const twin = list.find((known) => subjectKey(known.subject) === key);
  if (twin !== undefined && twin.id !== examination.id) {
    return refuse('study/examined-twice', {}, { first: twin.id, second: examination.id });
  }
  const added = addTo(list, examination, index);
  return added.ok ? ok({ list: added.value, inverse: { type: 'examination.remove', examination } }) : added;
}
