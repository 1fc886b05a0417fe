import { fail, lastAtOrBefore, ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import {
  checkStudy,
  filmOf,
  frameCount,
  type Method,
  type Motion,
  type Row,
  type Study,
} from '../study/index.ts';
import { addTo, changeFields, refuse, removeFrom } from './apply-parts.ts';
import type { ApplyResult } from './apply-result.ts';
import type { SingleEdit } from './edit.ts';
import { sameData } from './fields.ts';
import type { TimeEdit } from './time-edits.ts';
import type { WorkEdit } from './work-edits.ts';

type Of<Type extends SingleEdit['type']> = Extract<SingleEdit, { readonly type: Type }>;
type MethodEdit = Of<'method.add' | 'method.remove' | 'method.change'>;
type RowEdit = Exclude<
  SingleEdit,
  {
    readonly type:
      | 'study.change'
      | TimeEdit['type']
      | WorkEdit['type']
      | `${'film' | 'place' | 'method' | 'element' | 'examination'}.${string}`;
  }
>;
type Started = { readonly id: string; readonly start: number };

export function applyToMethods(study: Study, edit: MethodEdit): ApplyResult {
  if (edit.type === 'method.add') {
    const added = addTo(study.methods, edit.method, edit.index);
    if (!added.ok) return added;
    const next = { ...study, methods: added.value };
    const alone = {
      ...next,
      methods: [edit.method],
      examinations: undefined,
      timeStudies: undefined,
      comparisons: undefined,
      works: undefined,
    };
    const fault = checkStudy(alone).find((item) => item.severity === 'error');
    if (fault !== undefined) return fail(fault);
    return ok({ study: next, inverse: { type: 'method.remove', method: edit.method } });
  }
  if (edit.type === 'method.remove') {
    const { id, name } = edit.method;
    const user = methodUser(study, id);
    if (user !== undefined) return refuse('edit/in-use', {}, { item: `The method ${name}`, user });
    const removed = removeFrom(
      study.methods,
      edit.method,
      refuse('edit/no-method', {}, { method: edit.method.id }),
    );
    if (!removed.ok) return removed;
    return ok({
      study: { ...study, methods: removed.value.list },
      inverse: { type: 'method.add', method: edit.method, index: removed.value.index },
    });
  }
  return withMethod(study, edit.method, (method) => {
    const changed = changeFields(method, edit.to, edit.was);
    if (!changed.ok) return changed;
    return ok({ method: changed.value, inverse: { ...edit, to: edit.was, was: edit.to } });
  });
}

function methodUser(study: Study, id: string): string | undefined {
  if (study.examinations?.some(({ subject }) => subject.method === id)) return 'a critical examination';
  const timed = study.timeStudies?.find(({ source }) => source.method === id);
  if (timed !== undefined) return `the time study ${timed.name}`;
  const compared = study.comparisons?.some(
    ({ before, after }) => before.method === id || after.method === id,
  );
  if (compared === true) return 'a comparison';
  const drawn = study.works?.find(({ drawnFrom }) => drawnFrom?.method === id);
  return drawn === undefined ? undefined : `the work ${drawn.work.title}`;
}

type MethodResult = Result<{ readonly method: Method; readonly inverse: SingleEdit }, Finding>;

/** Changes one method in its place; refused when it is not there. */
export function withMethod(study: Study, id: string, change: (method: Method) => MethodResult): ApplyResult {
  const index = study.methods.findIndex((method) => method.id === id);
  const method = study.methods[index];
  if (method === undefined) return refuse('edit/no-method', {}, { method: id });
  const changed = change(method);
  if (!changed.ok) return changed;
  return ok({
    study: { ...study, methods: study.methods.with(index, changed.value.method) },
    inverse: changed.value.inverse,
  });
}

/** Edits of the two hand rows and of the row of cycles: the same five moves on the same kind of row. */
export function applyToRow(study: Study, edit: RowEdit): ApplyResult {
  return withMethod(study, edit.method, (method) => {
    const film = filmOf(study, method);
    const last = film === undefined ? Number.MAX_SAFE_INTEGER : frameCount(film.frameTimes);
    if ('hand' in edit) {
      const fault = placeFault(study, edit);
      if (fault !== undefined) return fault;
      const row = changeRow(method[edit.hand], toRowMove(edit), last);
      if (!row.ok) return row;
      return ok({ method: { ...method, [edit.hand]: row.value }, inverse: invertRow(edit) });
    }
    const row = changeRow(method.cycles, toRowMove(edit), last);
    if (!row.ok) return row;
    return ok({ method: { ...method, cycles: row.value as Method['cycles'] }, inverse: invertRow(edit) });
  });
}

function placeFault(study: Study, edit: Extract<RowEdit, { readonly hand: unknown }>) {
  const ends: Pick<Motion, 'from' | 'to'> | undefined =
    edit.type === 'motion.mark'
      ? edit.motion
      : edit.type === 'motion.change'
        ? (edit.to as Motion)
        : undefined;
  for (const end of ['from', 'to'] as const) {
    const place = ends?.[end] ?? undefined;
    if (place !== undefined && !study.places.some((item) => item.id === place))
      return refuse('edit/no-place', {}, { place });
  }
  return undefined;
}

type RowMove =
  | { readonly move: 'insert'; readonly item: Started }
  | { readonly move: 'remove'; readonly item: Started }
  | { readonly move: 'change'; readonly id: string; readonly to: object; readonly was: object }
  | { readonly move: 'shift'; readonly id: string; readonly to: number; readonly was: number }
  | { readonly move: 'end'; readonly to: number; readonly was: number };

function toRowMove(edit: RowEdit): RowMove {
  switch (edit.type) {
    case 'motion.mark':
      return { move: 'insert', item: edit.motion };
    case 'cycle.mark':
      return { move: 'insert', item: edit.cycle };
    case 'motion.remove':
      return { move: 'remove', item: edit.motion };
    case 'cycle.remove':
      return { move: 'remove', item: edit.cycle };
    case 'motion.change':
      return { move: 'change', id: edit.motion, to: edit.to, was: edit.was };
    case 'cycle.change':
      return { move: 'change', id: edit.cycle, to: edit.to, was: edit.was };
    case 'motion.move':
      return { move: 'shift', id: edit.motion, to: edit.to, was: edit.was };
    case 'cycle.move':
      return { move: 'shift', id: edit.cycle, to: edit.to, was: edit.was };
    default:
      return { move: 'end', to: edit.to, was: edit.was };
  }
}

function invertRow(edit: RowEdit): SingleEdit {
  switch (edit.type) {
    case 'motion.mark':
      return { ...edit, type: 'motion.remove' };
    case 'motion.remove':
      return { ...edit, type: 'motion.mark' };
    case 'cycle.mark':
      return { ...edit, type: 'cycle.remove' };
    case 'cycle.remove':
      return { ...edit, type: 'cycle.mark' };
    default:
      return { ...edit, to: edit.was, was: edit.to } as SingleEdit;
  }
}

function changeRow<Item extends Started>(
  row: Row<Item>,
  move: RowMove,
  last: number,
): Result<Row<Item>, Finding> {
  if (move.move === 'insert') return insert(row, move.item as Item);
  if (move.move === 'end') return moveEnd(row, move, last);
  const id = move.move === 'remove' ? move.item.id : move.id;
  const index = row.items.findIndex((item) => item.id === id);
  const item = row.items[index];
  if (item === undefined) return refuse('edit/no-item', {}, { item: id });
  if (move.move === 'shift') return shift(row, index, item, move);
  if (move.move === 'remove') {
    if (!sameData(item, move.item)) return refuse('edit/changed-meanwhile', {}, { field: 'motion or cycle' });
    return ok({ ...row, items: row.items.toSpliced(index, 1) });
  }
  const changed = changeFields(item, move.to, move.was);
  return changed.ok ? ok({ ...row, items: row.items.with(index, changed.value) }) : changed;
}

function insert<Item extends Started>(row: Row<Item>, item: Item): Result<Row<Item>, Finding> {
  if (row.items.some((known) => known.id === item.id)) return refuse('edit/taken', {}, { item: item.id });
  const before = lastAtOrBefore(row.items, item.start, (known) => known.start);
  if (row.items[before]?.start === item.start) return refuse('edit/boundary-taken', {}, { at: item.start });
  if (item.start >= row.end) {
    return refuse(
      'edit/out-of-order',
      {},
      { at: item.start, after: row.items.at(-1)?.start ?? 0, before: row.end },
    );
  }
  return ok({ ...row, items: row.items.toSpliced(before + 1, 0, item) });
}

function shift<Item extends Started>(
  row: Row<Item>,
  index: number,
  item: Item,
  move: { readonly to: number; readonly was: number },
): Result<Row<Item>, Finding> {
  if (item.start !== move.was) return refuse('edit/changed-meanwhile', {}, { field: 'start' });
  const after = row.items[index - 1]?.start ?? -1;
  const before = row.items[index + 1]?.start ?? row.end;
  if (move.to <= after || move.to >= before)
    return refuse('edit/out-of-order', {}, { at: move.to, after, before });
  return ok({ ...row, items: row.items.with(index, { ...item, start: move.to }) });
}

function moveEnd<Item extends Started>(
  row: Row<Item>,
  move: { readonly to: number; readonly was: number },
  last: number,
): Result<Row<Item>, Finding> {
  if (row.end !== move.was) return refuse('edit/changed-meanwhile', {}, { field: 'end of the row' });
  if (move.to > last) return refuse('edit/outside-film', {}, { at: move.to, frames: last });
  const start = row.items.at(-1)?.start;
  if (start !== undefined && move.to <= start) {
    return refuse('edit/out-of-order', {}, { at: move.to, after: start, before: 'the end of the film' });
  }
  return ok({ ...row, end: move.to });
}
