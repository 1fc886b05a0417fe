import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Examination, Study } from '../../../ground/study/index.ts';
import { readStudy } from '../../../ground/study/index.ts';
import { findExamination, isStillThere, notedExaminations, sameSubject, subjectWords } from './index.ts';
import { couplings } from './testing/coupling-record.ts';

const decision = { choice: 'eliminate', reason: 'A fixture can hold it.' } as const;
const examinations: readonly Examination[] = [
  { id: 'a', subject: { kind: 'motion', method: 'm', hand: 'right', motion: 'gone' }, decision },
  { id: 'b', subject: { kind: 'motion', method: 'm', hand: 'right', motion: 'r1' }, decision },
  { id: 'c', subject: { kind: 'element', method: 'm', element: 'e2' }, decision },
  { id: 'd', subject: { kind: 'element', method: 'm', element: 'e1' }, decision },
  {
    id: 'e',
    subject: { kind: 'lead', method: 'm', lead: 'hold:left:body' },
    answers: [
      { question: 'means-1', text: 'Only with the fingertips.' },
      { question: 'purpose-2', text: 'It would roll away.' },
    ],
    decision,
  },
  { id: 'f', subject: { kind: 'operation', method: 'm' }, decision },
  { id: 'g', subject: { kind: 'lead', method: 'm', lead: 'hold:right:cap: blue' }, decision },
];

const study: Study = { ...couplings, examinations };

describe('the report of the critical examination', () => {
  it('names each thing in words, in an order that the list in the file does not change', () => {
    expect(readStudy(structuredClone(study)).ok).toBe(true);
    const wanted = [
      ['f', 'the whole operation', true],
      ['e', 'Holding in one hand: left hand, body', true],
      ['g', 'Holding in one hand: right hand, cap: blue', false],
      ['d', 'element “fetch the ring”', true],
      ['c', 'element “put it on”', true],
      ['b', 'right hand: grasp ring, 1.00 s after the start of cycle 1', true],
      ['a', 'right hand: a motion that is not there any more', false],
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray([...examinations], { minLength: 7, maxLength: 7 }), (list) => {
        const rows = notedExaminations({ ...study, examinations: list });
        expect(rows.map((row) => [row.examination.id, row.subject, row.there])).toEqual(wanted);
        expect(new Set(rows.map(({ method }) => method))).toEqual(new Set(['Present method']));
      }),
      { seed: 20_261_203, numRuns: 30 },
    );
  });

  it('puts what the record says before what the analyst wrote, by the order of the questions', () => {
    const row = notedExaminations(study).find(({ examination }) => examination.id === 'e');
    expect(row?.answers.map(({ question, by }) => [question.id, by])).toEqual([
      ['purpose-1', 'record'],
      ['purpose-2', 'analyst'],
      ['sequence-1', 'record'],
      ['person-1', 'record'],
      ['means-1', 'record'],
      ['means-1', 'analyst'],
    ]);
    expect(row?.decision).toEqual(decision);
    expect(row?.open).not.toContain('purpose-2');
    expect(row?.open).toContain('place-1');
  });

  it('is empty when nothing was examined', () => expect(notedExaminations(couplings)).toEqual([]));
});

describe('subjects', () => {
  it('are found by what they are about', () => {
    expect(findExamination(study, { kind: 'element', method: 'm', element: 'e1' })?.id).toBe('d');
    expect(findExamination(couplings, { kind: 'element', method: 'm', element: 'e1' })).toBeUndefined();
    expect(
      sameSubject(
        { kind: 'motion', method: 'm', hand: 'left', motion: 'r1' },
        { kind: 'motion', method: 'm', hand: 'right', motion: 'r1' },
      ),
    ).toBe(false);
  });

  it('a lead whose kind is not known is said by its name; a method that is gone has nothing in it', () => {
    expect(subjectWords(study, { kind: 'lead', method: 'm', lead: 'something:else' })).toBe('something:else');
    expect(isStillThere(study, { kind: 'operation', method: 'gone' })).toBe(false);
    expect(subjectWords(study, { kind: 'element', method: 'gone', element: 'e1' })).toBe(
      'an element that is not there any more',
    );
  });

  it('what was noted before an edit is read anew after it', () => {
    const before = isStillThere(study, { kind: 'lead', method: 'm', lead: 'hold:left:body' });
    const [method] = study.methods;
    if (method === undefined) throw new Error('no method');
    const left = { ...method.left, items: method.left.items.slice(0, 1) };
    const after: Study = { ...study, methods: [{ ...method, left }] };
    expect([before, isStillThere(after, { kind: 'lead', method: 'm', lead: 'hold:left:body' })]).toEqual([
      true,
      false,
    ]);
  });
});
