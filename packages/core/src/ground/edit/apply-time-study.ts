import { fail, ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import {
  checkTimeStudy,
  type Study,
  type TimeStudy,
  type TimeStudyElement,
  type TimeStudyReading,
} from '../study/index.ts';
import { addTo, changeFields, refuse, removeFrom, withoutPlace } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { sameData, withFields } from './fields.ts';
import type { TimeEdit } from './time-edits.ts';

type Of<Type extends TimeEdit['type']> = Extract<TimeEdit, { readonly type: Type }>;
type Inner = Of<
  'time-study.change' | 'timed-element.add' | 'timed-element.remove' | 'timed-element.change' | 'reading.set'
>;
type Edited<Item> = Result<{ readonly item: Item; readonly inverse: SingleEdit }, Finding>;

/** Time studies. The list is taken away when its last time study is. */
export function applyToTimeStudies(
  study: Study,
  edit: Of<'time-study.add' | 'time-study.remove'> | Inner,
): ApplyResult {
  const list = study.timeStudies ?? [];
  if (edit.type === 'time-study.add') {
    const { timeStudy } = edit;
    const fault = faultOf(study, timeStudy);
    if (fault !== undefined) return fail(fault);
    const added = addTo(list, timeStudy, edit.index);
    return added.ok ? done(study, added.value, { type: 'time-study.remove', timeStudy }) : added;
  }
  if (edit.type === 'time-study.remove') {
    const { timeStudy } = edit;
    const removed = removeFrom(
      list,
      timeStudy,
      refuse('edit/no-time-study', {}, { timeStudy: timeStudy.name }),
    );
    if (!removed.ok) return removed;
    const { index } = removed.value;
    return done(study, removed.value.list, { type: 'time-study.add', timeStudy, index });
  }
  const index = list.findIndex(({ id }) => id === edit.timeStudy);
  const known = list[index];
  if (known === undefined) return refuse('edit/no-time-study', {}, { timeStudy: edit.timeStudy });
  const edited = applyInside(known, edit);
  if (!edited.ok) return edited;
  const fault = faultOf(study, edited.value.item);
  if (fault !== undefined) return fail(fault);
  return done(study, list.with(index, edited.value.item), edited.value.inverse);
}

function done(study: Study, list: readonly TimeStudy[], inverse: SingleEdit): ApplyResult {
  return ok({ study: withFields(study, { timeStudies: list.length === 0 ? null : list }), inverse });
}

function faultOf(study: Study, timeStudy: TimeStudy): Finding | undefined {
  const fault = checkTimeStudy(study, timeStudy, '')[0];
  return fault === undefined ? undefined : withoutPlace(fault);
}

function applyInside(timeStudy: TimeStudy, edit: Inner): Edited<TimeStudy> {
  if (edit.type === 'time-study.change') {
    const changed = changeFields(timeStudy, edit.to, edit.was);
    if (!changed.ok) return changed;
    return ok({ item: changed.value, inverse: { ...edit, to: edit.was, was: edit.to } });
  }
  const { elements, id } = timeStudy;
  if (edit.type === 'timed-element.add') {
    const added = addTo(elements, edit.element, edit.index);
    if (!added.ok) return added;
    const inverse: SingleEdit = { type: 'timed-element.remove', timeStudy: id, element: edit.element };
    return ok({ item: { ...timeStudy, elements: added.value }, inverse });
  }
  if (edit.type === 'timed-element.remove') {
    const { element } = edit;
    const missing = refuse('edit/no-timed-element', {}, { element: element.name });
    const removed = removeFrom(elements, element, missing);
    if (!removed.ok) return removed;
    const { index } = removed.value;
    const inverse: SingleEdit = { type: 'timed-element.add', timeStudy: id, element, index };
    return ok({ item: { ...timeStudy, elements: removed.value.list }, inverse });
  }
  const index = elements.findIndex((element) => element.id === edit.element);
  const element = elements[index];
  if (element === undefined) return refuse('edit/no-timed-element', {}, { element: edit.element });
  const changed =
    edit.type === 'reading.set' ? setReading(element, edit) : changeFields(element, edit.to, edit.was);
  if (!changed.ok) return changed;
  const inverse = { ...edit, to: edit.was, was: edit.to } as SingleEdit;
  return ok({ item: { ...timeStudy, elements: elements.with(index, changed.value) }, inverse });
}

function setReading(
  element: TimeStudyElement,
  { to, was }: Of<'reading.set'>,
): Result<TimeStudyElement, Finding> {
  const cycle = to?.cycle ?? was?.cycle;
  if (cycle === undefined || (was !== null && was.cycle !== cycle)) return refuse('edit/reading-cycle');
  const { readings } = element;
  const index = placeOf(readings, cycle);
  const known = readings[index]?.cycle === cycle ? readings[index] : undefined;
  if (!sameData(known ?? null, was)) {
    return refuse('edit/changed-meanwhile', {}, { field: `${element.name}, cycle ${cycle}` });
  }
  const changed = readings.toSpliced(index, known === undefined ? 0 : 1, ...(to === null ? [] : [to]));
  return ok({ ...element, readings: changed });
}

/** Position of the first reading of this cycle or a later one. */
function placeOf(readings: readonly TimeStudyReading[], cycle: number): number {
  let [low, high] = [0, readings.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.cycle ?? 0) < cycle) low = middle + 1;
    else high = middle;
  }
  return low;
}
