import { applyAll, applyEdit, type Edit } from '@evenhand/core/ground/edit';
import type { Study } from '@evenhand/core/ground/study';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editFrom, pickArb } from '../../../tests/helpers/edit-picks.ts';
import { studyArb } from '../../../tests/helpers/study-arbitraries.ts';
import type { EditBatch } from './study-store.ts';
import { adapters, memoryAdapter, sent, tickingClock } from './testing/stores-under-test.ts';

/** Batches of edits, some made for a state of the study that is gone by the time they come. */
function batchesFor(
  study: Study,
  picks: readonly (typeof pickArb extends fc.Arbitrary<infer P> ? P : never)[],
): EditBatch[] {
  const states = [study];
  const edits: Edit[] = [];
  picks.forEach((pick, index) => {
    const seen = states[Math.max(0, states.length - 1 - (pick.which % 3))] ?? study;
    const edit = editFrom(seen, pick, `n${index}`);
    if (edit === undefined) return;
    edits.push(edit);
    const applied = applyEdit(states.at(-1) ?? study, edit);
    if (applied.ok) states.push(applied.value.study);
  });
  const batches: EditBatch[] = [];
  for (let at = 0; at < edits.length; at += 3) {
    const part = edits.slice(at, at + 3).map((edit, index) => sent(`e${at + index}`, edit));
    batches.push({ client: `w${at % 2}`, baseRev: 0, edits: part });
  }
  return batches;
}

describe.each(adapters.filter((adapter) => adapter !== memoryAdapter))('$name', (adapter) => {
  it('says what plain maps say, edit by edit, and rebuilds every revision as a replay does', async () => {
    await fc.assert(
      fc.asyncProperty(studyArb, fc.array(pickArb, { maxLength: 20 }), async (study, picks) => {
        let opened = await adapter.open(tickingClock());
        const reference = (await memoryAdapter.open(tickingClock())).studies;
        expect(await opened.studies.create(study)).toEqual(await reference.create(study));
        for (const batch of batchesFor(study, picks)) {
          expect(await opened.studies.edit(study.id, batch)).toEqual(await reference.edit(study.id, batch));
          expect(await opened.studies.load(study.id)).toEqual(await reference.load(study.id));
        }
        expect(await opened.studies.list()).toEqual(await reference.list());
        opened = await opened.reopen();
        const kept = await opened.studies.editsSince(study.id, 0);
        expect(kept).toEqual(await reference.editsSince(study.id, 0));
        const edits = kept.ok ? kept.value.edits.map((item) => item.edit) : [];
        for (let rev = 0; rev <= edits.length; rev += 1) {
          const replayed = applyAll(study, edits.slice(0, rev));
          const loaded = await opened.studies.load(study.id, rev);
          expect(loaded.ok && replayed.ok && loaded.value.study).toEqual(replayed.ok && replayed.value);
        }
      }),
      { numRuns: 40, seed: 20260301 },
    );
  });
});
