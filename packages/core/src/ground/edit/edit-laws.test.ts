import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectEditLaws, expectFileRoundTrip, expectSame } from '../../../../../tests/helpers/edit-laws.ts';
import { editFrom, editTypes, type Pick, pickArb } from '../../../../../tests/helpers/edit-picks.ts';
import { studyArb } from '../../../../../tests/helpers/study-arbitraries.ts';
import { checkStudy, type Study } from '../study/index.ts';
import { applyAll, applyEdit, type Edit } from './index.ts';

const runs = { seed: 20_261_125, numRuns: 200 };
const streamArb = fc.array(pickArb, { minLength: 1, maxLength: 12 });

/** One window at work: every pick becomes an edit of what the window shows; refused ones leave it as it was. */
function work(study: Study, picks: readonly Pick[], name: string): { edits: Edit[]; study: Study } {
  let current = study;
  const edits: Edit[] = [];
  for (const [index, pick] of picks.entries()) {
    const edit = editFrom(current, pick, `${name}${index}`);
    const applied = edit === undefined ? undefined : applyEdit(current, edit);
    if (edit !== undefined && applied?.ok) {
      edits.push(edit);
      current = applied.value.study;
    }
  }
  return { edits, study: current };
}

describe('laws of edits', () => {
  it('hold for streams of every type of edit, groups too: identity of undo, JSON, file, invariants', () => {
    const applied = new Set<string>();
    fc.assert(
      fc.property(studyArb, streamArb, (start, picks) => {
        let study = start;
        for (const [index, pick] of picks.entries()) {
          const edit = editFrom(study, pick, `n${index}`);
          if (edit === undefined) continue;
          const result = expectEditLaws(study, edit);
          if (!result.ok) continue;
          study = result.value.study;
          applied.add(edit.type);
        }
      }),
      runs,
    );
    expect(
      [...editTypes, 'group'].filter((type) => !applied.has(type)),
      'types that never held',
    ).toEqual([]);
  }, 240_000);

  it('replay of the recorded edits gives the state, and their inverses in reverse give the start', () => {
    fc.assert(
      fc.property(studyArb, streamArb, (start, picks) => {
        const { edits, study } = work(start, picks, 'n');
        const replayed = applyAll(start, edits);
        expect(replayed.ok).toBe(true);
        if (replayed.ok) expectSame(replayed.value, study, 'replay is state');
        let current = start;
        const inverses: Edit[] = [];
        for (const edit of edits) {
          const applied = applyEdit(current, edit);
          if (!applied.ok) throw new Error(applied.error.message);
          current = applied.value.study;
          inverses.unshift(applied.value.inverse);
        }
        const back = applyAll(current, inverses);
        expect(back.ok).toBe(true);
        if (back.ok) expectSame(back.value, start, 'all undone is the start');
      }),
      runs,
    );
  });

  it('two windows merged in any order never break an invariant; what does not hold is refused with a reason', () => {
    let refused = 0;
    let held = 0;
    fc.assert(
      fc.property(
        studyArb,
        streamArb,
        streamArb,
        fc.infiniteStream(fc.boolean()),
        (start, mine, theirs, order) => {
          // Every other edit of the second window is of a kind that the first one uses, so that they meet.
          const meeting = theirs.map((pick, index) =>
            index % 2 === 0 ? { ...pick, type: mine[index % mine.length]?.type ?? pick.type } : pick,
          );
          const queues = [work(start, mine, 'a').edits, work(start, meeting, 'b').edits];
          let head = start;
          while (queues.some((queue) => queue.length > 0)) {
            const turn = order.next().value ? 0 : 1;
            const edit = (queues[turn]?.shift() ?? queues[1 - turn]?.shift()) as Edit;
            const applied = expectEditLaws(head, edit);
            if (applied.ok) head = applied.value.study;
            if (applied.ok) held += 1;
            else refused += 1;
            expect(checkStudy(head)).toEqual([]);
          }
        },
      ),
      runs,
    );
    // Both must occur, or the property says nothing.
    expect(held).toBeGreaterThan(100);
    expect(refused).toBeGreaterThan(100);
  }, 240_000);

  it('every study survives its file', () => {
    fc.assert(
      fc.property(studyArb, (study) => {
        expect(checkStudy(study)).toEqual([]);
        expectFileRoundTrip(study);
      }),
      runs,
    );
  });
});
