import type { SingleEdit } from '../../../ground/edit/index.ts';
import { type Hand, itemAt, type Method, type Motion } from '../../../ground/study/index.ts';

/** A motion without an identity yet: what a copy or a proposal wants to stand at a start. */
export type MotionDraft = Omit<Motion, 'id'>;

/**
 * The edits that put `drafts` between two boundaries of a row and leave everything outside as it was: what reached into
 * the span from the left ends there, what reached out of it to the right goes on from its end.
 * @param drafts in order of their starts, the first at `from`, all before `to`
 */
export function replaceSpan(
  method: Method,
  hand: Hand,
  from: number,
  to: number,
  drafts: readonly MotionDraft[],
  newId: () => string,
): SingleEdit[] {
  const row = method[hand];
  const where = { method: method.id, hand };
  const edits: SingleEdit[] = [];
  const after = to < row.end ? itemAt(row, to) : undefined;
  for (const motion of row.items) {
    if (motion.start >= from && motion.start < to) edits.push({ type: 'motion.remove', ...where, motion });
  }
  for (const draft of drafts)
    edits.push({ type: 'motion.mark', ...where, motion: { ...draft, id: newId() } });
  if (after !== undefined && after.start < to) {
    edits.push({ type: 'motion.mark', ...where, motion: { ...after.item, id: newId(), start: to } });
  }
  return edits;
}
