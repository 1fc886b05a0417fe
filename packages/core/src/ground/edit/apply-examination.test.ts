import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../tests/helpers/edit-laws.ts';
import { type Examination, emptyStudy, type Method, type Study } from '../study/index.ts';
import { applyEdit, type Edit, editName } from './index.ts';

const row = { items: [], end: 9 };
const method: Method = {
  id: 'm',
  name: 'Present',
  kind: 'composed',
  base: { kind: 'micros' },
  unitsPerCycle: 1,
  left: row,
  right: row,
  cycles: row,
};
const empty: Study = { ...emptyStudy('s', 'Couplings'), methods: [method] };
const element = { id: 'e', name: 'fetch the ring', hand: 'right', at: 4 } as const;
const examination: Examination = {
  id: 'x',
  subject: { kind: 'lead', method: 'm', lead: 'hold:left:body' },
  answers: [{ question: 'purpose-2', text: 'The body would slip.' }],
};
const addElement: Edit = { type: 'element.add', method: 'm', element };
const addExamination: Edit = { type: 'examination.add', examination };

/** The study after an edit that must hold, and that keeps every law of edits. */
function after(study: Study, edit: Edit): Study {
  const applied = expectEditLaws(study, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

function refusal(study: Study, edit: Edit): string | undefined {
  const applied = expectEditLaws(study, edit);
  return applied.ok ? undefined : applied.error.code;
}

describe('edits of elements', () => {
  it('the list comes with the first element and goes with the last', () => {
    const one = after(empty, addElement);
    expect(one.methods[0]?.elements).toEqual([element]);
    const none = after(one, { type: 'element.remove', method: 'm', element });
    expect('elements' in (none.methods[0] ?? {})).toBe(false);
  });

  it('change what they name and nothing else', () => {
    const one = after(empty, addElement);
    const edit: Edit = {
      type: 'element.change',
      method: 'm',
      element: 'e',
      to: { name: 'take the ring', at: 5 },
      was: { name: 'fetch the ring', at: 4 },
    };
    expect(after(one, edit).methods[0]?.elements).toEqual([{ ...element, name: 'take the ring', at: 5 }]);
  });

  it.each<[string, Edit, string]>([
    ['a method that is gone', { ...addElement, method: 'gone' } as Edit, 'edit/no-method'],
    ['an id that is taken', { ...addElement, element: { ...element, at: 7 } } as Edit, 'edit/taken'],
    [
      'a boundary that is taken',
      { ...addElement, element: { ...element, id: 'e2' } } as Edit,
      'study/element-twice',
    ],
    [
      'an element that is gone',
      { type: 'element.remove', method: 'm', element: { ...element, id: 'e2' } },
      'edit/no-element',
    ],
    [
      'an element that somebody renamed',
      { type: 'element.remove', method: 'm', element: { ...element, name: 'other' } },
      'edit/changed-meanwhile',
    ],
  ])('refuse %s', (_, edit, code) => {
    expect(refusal(after(empty, addElement), edit)).toBe(code);
  });
});

describe('edits of examinations', () => {
  it('the list comes with the first examination and goes with the last', () => {
    const one = after(empty, addExamination);
    expect(one.examinations).toEqual([examination]);
    expect('examinations' in after(one, { type: 'examination.remove', examination })).toBe(false);
  });

  it('answers and decision are set and taken away', () => {
    const one = after(empty, addExamination);
    const decision = { choice: 'eliminate', reason: 'A fixture can hold it.' } as const;
    const change = { type: 'examination.change', examination: 'x' } as const;
    const answers = examination.answers ?? null;
    const both = after(one, { ...change, to: { decision }, was: { decision: null } });
    expect(both.examinations?.[0]).toEqual({ ...examination, decision });
    const bare = after(both, {
      ...change,
      to: { answers: null, decision: null },
      was: { answers, decision },
    });
    expect(bare.examinations).toEqual([{ id: 'x', subject: examination.subject }]);
  });

  it.each<[string, Edit, string]>([
    [
      'the same subject',
      { ...addExamination, examination: { ...examination, id: 'y' } } as Edit,
      'study/examined-twice',
    ],
    ['an id that is taken', addExamination, 'edit/taken'],
    [
      'a method that is gone',
      { type: 'examination.add', examination: { id: 'y', subject: { kind: 'operation', method: 'gone' } } },
      'edit/no-method',
    ],
    [
      'two answers to one question',
      {
        type: 'examination.change',
        examination: 'x',
        to: {
          answers: [
            { question: 'means-2', text: 'a' },
            { question: 'means-2', text: 'b' },
          ],
        },
        was: { answers: examination.answers ?? null },
      },
      'study/answered-twice',
    ],
    [
      'an examination that is gone',
      { type: 'examination.change', examination: 'y', to: {}, was: {} },
      'edit/no-examination',
    ],
    [
      'an answer that somebody changed',
      { type: 'examination.change', examination: 'x', to: { answers: null }, was: { answers: null } },
      'edit/changed-meanwhile',
    ],
  ])('refuse %s', (_, edit, code) => {
    expect(refusal(after(empty, addExamination), edit)).toBe(code);
  });

  it('a method is not removed while something in it is examined, so that undo can bring everything back', () => {
    const one = after(empty, addExamination);
    const remove: Edit = { type: 'method.remove', method };
    const applied = applyEdit(one, remove);
    expect(applied.ok ? '' : applied.error.message).toBe(
      'The method Present is still used by a critical examination. Change or remove that first.',
    );
    const group: Edit = {
      type: 'group',
      name: 'remove a method',
      edits: [{ type: 'examination.remove', examination }, remove],
    };
    expect(after(one, group)).toEqual({ ...empty, methods: [] });
  });

  it('a method is added beside one that is examined', () => {
    const one = after(empty, addExamination);
    expect(after(one, { type: 'method.add', method: { ...method, id: 'm2' } }).methods.length).toBe(2);
  });

  it('have a name for the undo command', () => {
    expect([addElement, addExamination].map(editName)).toEqual(['name an element', 'note an examination']);
  });
});
