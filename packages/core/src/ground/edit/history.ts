import { ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Study } from '../study/index.ts';
import { applyEdit } from './apply.ts';
import { type Edit, editName } from './edit.ts';

/** What can be undone and redone in one window, newest last. Unlimited. Undo itself is an ordinary edit. */
export interface History {
  readonly undo: readonly Edit[];
  readonly redo: readonly Edit[];
}

export const emptyHistory: History = { undo: [], redo: [] };

export interface Step {
  readonly study: Study;
  readonly history: History;
  /** The edit that was applied, to be sent and kept. */
  readonly edit: Edit;
}

type StepResult = Result<Step, Finding>;

export function perform(study: Study, history: History, edit: Edit): StepResult {
  const applied = applyEdit(study, edit);
  if (!applied.ok) return applied;
  return ok({
    study: applied.value.study,
    edit,
    history: { undo: [...history.undo, applied.value.inverse], redo: [] },
  });
}

/** Undoes the newest edit; undefined when there is none. When it no longer holds, it says why and is dropped by `dropUndo`. */
export function undo(study: Study, history: History): StepResult | undefined {
  const edit = history.undo.at(-1);
  if (edit === undefined) return undefined;
  const applied = applyEdit(study, edit);
  if (!applied.ok) return applied;
  return ok({
    study: applied.value.study,
    edit,
    history: { undo: history.undo.slice(0, -1), redo: [...history.redo, applied.value.inverse] },
  });
}

export function redo(study: Study, history: History): StepResult | undefined {
  const edit = history.redo.at(-1);
  if (edit === undefined) return undefined;
  const applied = applyEdit(study, edit);
  if (!applied.ok) return applied;
  return ok({
    study: applied.value.study,
    edit,
    history: { undo: [...history.undo, applied.value.inverse], redo: history.redo.slice(0, -1) },
  });
}

export function dropUndo(history: History): History {
  return { ...history, undo: history.undo.slice(0, -1) };
}

export function dropRedo(history: History): History {
  return { ...history, redo: history.redo.slice(0, -1) };
}

export function undoName(history: History): string | undefined {
  const edit = history.undo.at(-1);
  return edit === undefined ? undefined : editName(edit);
}

export function redoName(history: History): string | undefined {
  const edit = history.redo.at(-1);
  return edit === undefined ? undefined : editName(edit);
}
