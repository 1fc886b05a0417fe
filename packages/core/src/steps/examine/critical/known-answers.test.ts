import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import type { ExaminationSubject, Study } from '../../../ground/study/index.ts';
import { examinationQuestions } from '../../../ground/tables/index.ts';
import { knownAnswers, openQuestions } from './index.ts';
import { couplings, onFilm, row, withMethod } from './testing/coupling-record.ts';

const grasp: ExaminationSubject = { kind: 'motion', method: 'm', hand: 'right', motion: 'r1' };
const fetch: ExaminationSubject = { kind: 'element', method: 'm', element: 'e1' };
const holding: ExaminationSubject = { kind: 'lead', method: 'm', lead: 'hold:left:body' };
const operation: ExaminationSubject = { kind: 'operation', method: 'm' };

function answers(study: Study, subject: ExaminationSubject): Record<string, string> {
  return Object.fromEntries(knownAnswers(study, subject).map(({ question, text }) => [question, text]));
}

// Every figure below is a sum done by hand on the invented record: see its comment.
describe('what the record answers by itself', () => {
  it('of a motion: its end, where the hand was taken, its neighbours, the hand, its time in all cycles', () => {
    expect(answers(couplings, grasp)).toEqual({
      'purpose-1': 'Grasp ring: done when the hand controls it.',
      'place-1': 'Place: “rings, right”.',
      'sequence-1':
        '1.00 s after the start of cycle 1, after “reach to rings, right”, before “carry ring to fixture”, while the left hand does “hold body”.',
      'person-1': 'The right hand.',
      // (0.5 + 1) s ÷ 2 cycles; 1.5 s of 10 s.
      'means-1': 'Grasp (G), 0.75 s a cycle on average over cycles 1, 2, 15.0 % of the time.',
    });
  });

  it('of the first and the last motion of a cycle: no neighbour from another cycle', () => {
    const first = answers(couplings, { ...grasp, motion: 'r4' });
    expect(first['sequence-1']).toBe(
      '0.00 s after the start of cycle 2, before “grasp ring”, while the left hand does “grasp body”, “hold body”.',
    );
    const last = answers(couplings, { ...grasp, motion: 'r3' });
    expect(last['sequence-1']).toBe(
      '3.00 s after the start of cycle 1, after “carry ring to fixture”, while the left hand does “hold body”.',
    );
  });

  it('of an element: its motions, their places, and its share of the cycle in which it is named', () => {
    expect(answers(couplings, fetch)).toEqual({
      'purpose-1': '“fetch the ring”: “reach to rings, right”, “grasp ring”.',
      'place-1': 'Place: “rings, right”.',
      'sequence-1':
        '0.00 s after the start of cycle 1, before “carry ring to fixture”, while the left hand does “grasp body”, “hold body”.',
      'person-1': 'The right hand.',
      // 1.5 s of 4 s.
      'means-1': 'Transport empty (TE), grasp (G), 1.50 s in cycle 1, 37.5 % of it.',
    });
    // The last element lasts to the end of its cycle: 2.5 s of 4 s.
    expect(answers(couplings, { ...fetch, element: 'e2' })['means-1']).toContain('2.50 s in cycle 1, 62.5 %');
  });

  it('of a lead: what its frames show, over the cycles that were read', () => {
    expect(answers(couplings, holding)).toMatchObject({
      'purpose-1': 'Hold body: done when the next motion with that thing starts.',
      'person-1': 'The left hand.',
      // (3.5 + 5.5) s ÷ 2; 9 s of 10 s.
      'means-1': 'Hold (H), 4.50 s a cycle on average over cycles 1, 2, 90.0 % of the time.',
    });
    expect(answers(couplings, holding)['place-1']).toBeUndefined();
  });

  it('of the operation: its name, all places, its time; not when it is done, nor by whom without a code', () => {
    expect(answers(couplings, operation)).toEqual({
      'purpose-1': 'Put hose couplings together; the part is: hose coupling.',
      'place-1': 'Places: “rings, right”, “fixture”.',
      'means-1':
        '5.00 s a cycle on average over cycles 1, 2 for 1 unit; motions a cycle, rounded: 2 of the left hand, 4 of the right hand.',
    });
    expect(answers(onFilm('K7'), operation)['person-1']).toBe('Both hands; code of the person filmed: K7.');
  });

  it('on a film: the same times, and the code of the person', () => {
    expect(answers(onFilm('K7'), grasp)).toEqual({
      ...answers(couplings, grasp),
      'person-1': 'The right hand; code of the person filmed: K7.',
    });
    expect(answers(onFilm(), grasp)['person-1']).toBe('The right hand.');
  });

  it('a motion in a cycle that is set aside is not averaged with the others', () => {
    const study = withMethod(({ cycles }) => ({
      cycles: {
        ...cycles,
        items: cycles.items.map((cycle, at) => (at === 0 ? { ...cycle, setAside: 'a fall' } : cycle)),
      },
    }));
    expect(answers(study, grasp)['means-1']).toBe('Grasp (G), 0.50 s in cycle 1, 12.5 % of it.');
    expect(answers(study, { ...grasp, motion: 'r5' })['means-1']).toBe(
      'Grasp (G), 1.00 s in cycle 2, 16.7 % of the time.',
    );
  });

  it('outside the cycles and without any', () => {
    const late = withMethod(({ cycles }) => ({ cycles: { ...cycles, items: cycles.items.slice(1) } }));
    expect(answers(late, grasp)).toMatchObject({
      'means-1': 'Grasp (G), 0.50 s.',
      'sequence-1': expect.stringMatching(/^At 1\.00 s, outside the cycles, after/),
    });
    const none = withMethod(() => ({ cycles: { items: [], end: 10e6 } }));
    expect(answers(none, grasp)['sequence-1']).toMatch(/^At 1\.00 s, after/);
    expect(answers(none, grasp)['means-1']).toBe(
      'Grasp (G), 1.50 s in the whole record, 15.0 % of the time.',
    );
  });

  it('a place is not guessed once the hand has moved on to somewhere that is not said', () => {
    const study = withMethod(() => ({
      right: row('r', 10, [
        [0, 'TE', { to: 'rings' }],
        [1, 'TE'],
        [2, 'G'],
      ]),
    }));
    expect(answers(study, { ...grasp, motion: 'r2' })['place-1']).toBeUndefined();
  });

  it('a hand that stands idle is said to stand idle', () => {
    const study = withMethod(() => ({ right: row('r', 10, [[0, 'UD', { object: 'press' }]]) }));
    expect(answers(study, { ...grasp, motion: 'r0' })['purpose-1']).toBe(
      'Wait for press: the hand stands idle until it takes up work again.',
    );
  });

  it.each<[string, ExaminationSubject]>([
    ['motion', { ...grasp, motion: 'gone' }],
    ['element', { ...fetch, element: 'gone' }],
    ['lead', { ...holding, lead: 'hold:right:ring' }],
    ['method', { ...operation, method: 'gone' }],
  ])('nothing of a %s that is gone, and all twenty questions are open', (_, subject) => {
    expect(knownAnswers(couplings, subject)).toEqual([]);
    expect(openQuestions(couplings, { subject }).length).toBe(20);
  });
});

describe('the questions that are open', () => {
  it('are those that neither the record nor the analyst answers, in their order', () => {
    const open = openQuestions(couplings, {
      subject: grasp,
      answers: [{ question: 'place-2', text: 'The bin was there.' }],
    });
    expect(open.length).toBe(20 - 5 - 1);
    expect(open.slice(0, 4)).toEqual(['purpose-2', 'purpose-3', 'purpose-4', 'place-3']);
  });
});

describe('laws of what is known', () => {
  it('on any study every answer is a sentence, and known and open together with written ones are the twenty', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(studyArb, (study) => {
        for (const method of study.methods) {
          const subjects: ExaminationSubject[] = [
            { kind: 'operation', method: method.id },
            ...(['left', 'right'] as const).flatMap((hand) =>
              method[hand].items.map(({ id }) => ({
                kind: 'motion' as const,
                method: method.id,
                hand,
                motion: id,
              })),
            ),
            ...(method.elements ?? []).map(({ id }) => ({
              kind: 'element' as const,
              method: method.id,
              element: id,
            })),
          ];
          for (const subject of subjects) {
            const known = knownAnswers(study, subject);
            for (const { question, text } of known) {
              expect(text).toMatch(/^\S[\s\S]*[.!?]$/);
              expect(text.replaceAll(study.title, '')).not.toMatch(/NaN|undefined|Infinity/);
              seen.add(`${subject.kind} ${question}`);
            }
            const ids = known.map(({ question }) => question);
            const open = openQuestions(study, { subject });
            expect([...ids, ...open].sort()).toEqual(examinationQuestions.map(({ id }) => id).sort());
          }
        }
      }),
      { seed: 20_261_201, numRuns: 120 },
    );
    expect(seen.size).toBe(5 + 5 + 4);
  });
});
