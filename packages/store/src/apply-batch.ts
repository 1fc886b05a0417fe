import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import type { EditBatch, EditOutcome, KeptEdit, LoadedStudy, SentEdit } from './study-store.ts';

export interface AppliedEdit extends KeptEdit {
  readonly inverse: Edit;
}

export interface RefusedEdit extends SentEdit {
  readonly finding: Finding;
}

export interface AppliedBatch {
  readonly head: LoadedStudy;
  readonly results: readonly EditOutcome[];
  readonly applied: readonly AppliedEdit[];
  readonly refused: readonly RefusedEdit[];
}

/**
 * What a batch does to the head, without touching any store: every adapter writes down what this says.
 * @param answered answers given before to ids of this batch; they are given again and nothing is applied twice
 */
export function applyBatch(
  head: LoadedStudy,
  batch: EditBatch,
  answered: ReadonlyMap<string, EditOutcome>,
): AppliedBatch {
  const answers = new Map(answered);
  const applied: AppliedEdit[] = [];
  const refused: RefusedEdit[] = [];
  const results: EditOutcome[] = [];
  let study: Study = head.study;
  let rev = head.rev;
  for (const sent of batch.edits) {
    const known = answers.get(sent.id);
    if (known !== undefined) {
      results.push(known);
      continue;
    }
    const result = applyEdit(study, sent.edit);
    let outcome: EditOutcome;
    if (result.ok) {
      rev += 1;
      study = result.value.study;
      applied.push({ ...sent, rev, client: batch.client, inverse: result.value.inverse });
      outcome = { id: sent.id, status: 'applied', rev };
    } else {
      refused.push({ ...sent, finding: result.error });
      outcome = { id: sent.id, status: 'refused', finding: result.error };
    }
    answers.set(sent.id, outcome);
    results.push(outcome);
  }
  return { head: { study, rev }, results, applied, refused };
}

export function keptEdit({ inverse: _inverse, ...kept }: AppliedEdit): KeptEdit {
  return kept;
}
