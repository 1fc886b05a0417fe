import { fail, ok } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import { type Comparison, checkComparison, type Study } from '../study/index.ts';
import { addTo, changeFields, refuse, removeFrom, withoutPlace } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { withFields } from './fields.ts';
import type { TimeEdit } from './time-edits.ts';

type ComparisonEdit = Extract<TimeEdit, { readonly type: `comparison.${string}` }>;

/** Comparisons of two methods. The list is taken away when its last comparison is. */
export function applyToComparisons(study: Study, edit: ComparisonEdit): ApplyResult {
  const list = study.comparisons ?? [];
  if (edit.type === 'comparison.add') {
    const { comparison } = edit;
    const fault = faultOf(study, comparison);
    if (fault !== undefined) return fail(fault);
    const added = addTo(list, comparison, edit.index);
    return added.ok ? done(study, added.value, { type: 'comparison.remove', comparison }) : added;
  }
  if (edit.type === 'comparison.remove') {
    const { comparison } = edit;
    const missing = refuse('edit/no-comparison', {}, { comparison: comparison.name ?? comparison.id });
    const removed = removeFrom(list, comparison, missing);
    if (!removed.ok) return removed;
    const { index } = removed.value;
    return done(study, removed.value.list, { type: 'comparison.add', comparison, index });
  }
  const index = list.findIndex(({ id }) => id === edit.comparison);
  const known = list[index];
  if (known === undefined) return refuse('edit/no-comparison', {}, { comparison: edit.comparison });
  const changed = changeFields(known, edit.to, edit.was);
  if (!changed.ok) return changed;
  const fault = faultOf(study, changed.value);
  if (fault !== undefined) return fail(fault);
  return done(study, list.with(index, changed.value), { ...edit, to: edit.was, was: edit.to });
}

function done(study: Study, list: readonly Comparison[], inverse: SingleEdit): ApplyResult {
  return ok({ study: withFields(study, { comparisons: list.length === 0 ? null : list }), inverse });
}

function faultOf(study: Study, comparison: Comparison): Finding | undefined {
  const fault = checkComparison(study, comparison, '')[0];
  return fault === undefined ? undefined : withoutPlace(fault);
}
