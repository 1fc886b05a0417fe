import { fail, ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import { checkKeptWork, type KeptWork, type Study, type Work, type WorkStep } from '../study/index.ts';
import { addTo, changeFields, refuse, removeFrom, withoutPlace } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { sameData, withFields } from './fields.ts';
import type { WorkEdit } from './work-edits.ts';

type Of<Type extends WorkEdit['type']> = Extract<WorkEdit, { readonly type: Type }>;
type Inner = Exclude<WorkEdit, { readonly type: 'work.add' | 'work.remove' }>;
type Edited<Item> = Result<{ readonly item: Item; readonly inverse: SingleEdit }, Finding>;

/** Works that are kept. The list is taken away when its last work is. */
export function applyToWorks(study: Study, edit: WorkEdit): ApplyResult {
  const list = study.works ?? [];
  if (edit.type === 'work.add') {
    const { work } = edit;
    const fault = faultOf(study, work);
    if (fault !== undefined) return fail(fault);
    const added = addTo(list, work, edit.index);
    return added.ok ? done(study, added.value, { type: 'work.remove', work }) : added;
  }
  if (edit.type === 'work.remove') {
    const { work } = edit;
    const removed = removeFrom(list, work, refuse('edit/no-work', {}, { work: work.work.title }));
    if (!removed.ok) return removed;
    const { index } = removed.value;
    return done(study, removed.value.list, { type: 'work.add', work, index });
  }
  const index = list.findIndex(({ id }) => id === edit.work);
  const known = list[index];
  if (known === undefined) return refuse('edit/no-work', {}, { work: edit.work });
  const edited = applyInside(known, edit);
  if (!edited.ok) return edited;
  const fault = faultOf(study, edited.value.item);
  if (fault !== undefined) return fail(fault);
  return done(study, list.with(index, edited.value.item), edited.value.inverse);
}

function done(study: Study, list: readonly KeptWork[], inverse: SingleEdit): ApplyResult {
  return ok({ study: withFields(study, { works: list.length === 0 ? null : list }), inverse });
}

function faultOf(study: Study, kept: KeptWork): Finding | undefined {
  const fault = checkKeptWork(study, kept, '')[0];
  return fault === undefined ? undefined : withoutPlace(fault);
}

function applyInside(kept: KeptWork, edit: Inner): Edited<KeptWork> {
  if (edit.type === 'work.change') return changeHead(kept, edit);
  if (edit.type === 'work-change.set') return settle(kept, edit);
  const edited = edit.type.startsWith('work-place.')
    ? applyToPlace(kept, edit as Extract<Inner, { type: `work-place.${string}` }>)
    : applyToStep(kept, edit as Extract<Inner, { type: `work-step.${string}` }>);
  if (!edited.ok) return edited;
  return ok({ item: { ...kept, work: edited.value.item }, inverse: edited.value.inverse });
}

/** Heading of the work, and the currency that stands beside it. */
function changeHead(kept: KeptWork, edit: Of<'work.change'>): Edited<KeptWork> {
  const { work, currency } = kept;
  const changed = changeFields(
    { ...work, ...(currency === undefined ? {} : { currency }) },
    edit.to,
    edit.was,
  );
  if (!changed.ok) return changed;
  const { currency: now, ...rest } = changed.value as Work & { readonly currency?: string };
  const item = withFields({ ...kept, work: rest }, { currency: now ?? null });
  return ok({ item, inverse: { ...edit, to: edit.was, was: edit.to } });
}

function settle(kept: KeptWork, edit: Of<'work-change.set'>): Edited<KeptWork> {
  const { to, was } = edit;
  const name = to?.change ?? was?.change;
  if (name === undefined || (was !== null && was.change !== name)) return refuse('edit/work-change-name');
  const list = kept.changes ?? [];
  const known = list.find(({ change }) => change === name);
  if (!sameData(known ?? null, was)) return refuse('edit/changed-meanwhile', {}, { field: name });
  const before = list.filter(({ change }) => change < name);
  const after = list.filter(({ change }) => change > name);
  const changes = [...before, ...(to === null ? [] : [to]), ...after];
  const item = withFields(kept, { changes: changes.length === 0 ? null : changes });
  return ok({ item, inverse: { ...edit, to: was, was: to } });
}

function applyToPlace(
  { id: work, work: rest }: KeptWork,
  edit: Of<'work-place.add' | 'work-place.remove' | 'work-place.change'>,
): Edited<Work> {
  const { places } = rest;
  if (edit.type === 'work-place.add') {
    const added = addTo(places, edit.place, edit.index);
    if (!added.ok) return added;
    const inverse: SingleEdit = { type: 'work-place.remove', work, place: edit.place };
    return ok({ item: { ...rest, places: added.value }, inverse });
  }
  if (edit.type === 'work-place.remove') {
    const { place } = edit;
    const removed = removeFrom(places, place, refuse('edit/no-work-place', {}, { place: place.name }));
    if (!removed.ok) return removed;
    if (removed.value.list.length === 0)
      return refuse('edit/last-of-work', {}, { item: `The place ${place.name}` });
    const inverse: SingleEdit = { type: 'work-place.add', work, place, index: removed.value.index };
    return ok({ item: { ...rest, places: removed.value.list }, inverse });
  }
  const index = places.findIndex(({ id }) => id === edit.place);
  const known = places[index];
  if (known === undefined) return refuse('edit/no-work-place', {}, { place: edit.place });
  const changed = changeFields(known, edit.to, edit.was);
  if (!changed.ok) return changed;
  const inverse: SingleEdit = { ...edit, to: edit.was, was: edit.to };
  return ok({ item: { ...rest, places: places.with(index, changed.value) }, inverse });
}

function applyToStep(
  { id: work, work: rest }: KeptWork,
  edit: Extract<Inner, { type: `work-step.${string}` }>,
): Edited<Work> {
  const { steps } = rest;
  if (edit.type === 'work-step.add') {
    const added = addTo(steps, edit.step, edit.index);
    if (!added.ok) return added;
    const inverse: SingleEdit = { type: 'work-step.remove', work, step: edit.step };
    return ok({ item: { ...rest, steps: added.value }, inverse });
  }
  if (edit.type === 'work-step.remove') {
    const { step } = edit;
    const removed = removeFrom(steps, step, refuse('edit/no-work-step', {}, { step: step.name }));
    if (!removed.ok) return removed;
    if (removed.value.list.length === 0)
      return refuse('edit/last-of-work', {}, { item: `The step ${step.name}` });
    const inverse: SingleEdit = { type: 'work-step.add', work, step, index: removed.value.index };
    return ok({ item: { ...rest, steps: removed.value.list }, inverse });
  }
  const index = steps.findIndex(({ id }) => id === edit.step);
  const known = steps[index];
  if (known === undefined) return refuse('edit/no-work-step', {}, { step: edit.step });
  const changed =
    edit.type === 'work-step.move'
      ? moveStep(steps, index, edit)
      : withStep(steps, index, changeFields(known, edit.to, edit.was));
  if (!changed.ok) return changed;
  const inverse = { ...edit, to: edit.was, was: edit.to } as SingleEdit;
  return ok({ item: { ...rest, steps: changed.value }, inverse });
}

type Steps = readonly WorkStep[];

function withStep(steps: Steps, index: number, changed: Result<WorkStep, Finding>): Result<Steps, Finding> {
  return changed.ok ? ok(steps.with(index, changed.value)) : changed;
}

function moveStep(steps: Steps, index: number, { to, was }: Of<'work-step.move'>): Result<Steps, Finding> {
  const known = steps[index] as WorkStep;
  if ((steps[index - 1]?.id ?? null) !== was)
    return refuse('edit/changed-meanwhile', {}, { field: known.name });
  const others = steps.toSpliced(index, 1);
  const after = others.findIndex(({ id }) => id === to);
  if (to !== null && after < 0) return refuse('edit/no-work-step', {}, { step: to });
  return ok(others.toSpliced(after + 1, 0, known));
}
