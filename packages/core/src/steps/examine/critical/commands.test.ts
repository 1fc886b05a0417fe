import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../../tests/helpers/edit-laws.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { applyEdit, type Edit, sameData } from '../../../ground/edit/index.ts';
import type { ExaminationSubject, Study } from '../../../ground/study/index.ts';
import { decisionChoices, examinationQuestions } from '../../../ground/tables/index.ts';
import { answerQuestion, clearDecision, decide, findExamination, longestNote, type Noted } from './index.ts';
import { couplings } from './testing/coupling-record.ts';

const subject: ExaminationSubject = { kind: 'lead', method: 'm', lead: 'hold:left:body' };
const newId = () => 'x1';

function done(study: Study, edit: Edit | undefined): Study {
  if (edit === undefined) return study;
  const applied = expectEditLaws(study, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

function noted(study: Study, note: Noted): Study {
  if (!note.ok) throw new Error(note.error.message);
  return done(study, note.value);
}

const answer = (study: Study, question: Parameters<typeof answerQuestion>[2], text: string) =>
  noted(study, answerQuestion(study, subject, question, text, newId));

describe('answering a question', () => {
  it('notes the examination with the first answer and keeps the answers in the order of the questions', () => {
    const one = answer(couplings, 'means-3', ' A fixture. ');
    expect(findExamination(one, subject)).toEqual({
      id: 'x1',
      subject,
      answers: [{ question: 'means-3', text: 'A fixture.' }],
    });
    const two = answer(one, 'purpose-2', 'It would roll away.');
    expect(findExamination(two, subject)?.answers?.map(({ question }) => question)).toEqual([
      'purpose-2',
      'means-3',
    ]);
  });

  it('twice replaces; the same again changes nothing', () => {
    const two = answer(answer(couplings, 'place-2', 'first'), 'place-2', 'second');
    expect(findExamination(two, subject)?.answers).toEqual([{ question: 'place-2', text: 'second' }]);
    expect(answerQuestion(two, subject, 'place-2', ' second ', newId)).toEqual({
      ok: true,
      value: undefined,
    });
  });

  it('with nothing takes the answer away, and with the last one the examination', () => {
    const one = answer(couplings, 'place-2', 'first');
    expect(sameData(answer(one, 'place-2', ' \n'), couplings)).toBe(true);
    expect('examinations' in answer(one, 'place-2', '')).toBe(false);
    expect(answerQuestion(couplings, subject, 'place-2', '', newId)).toEqual({ ok: true, value: undefined });
  });

  it('too long to be kept is refused with both lengths', () => {
    const note = answerQuestion(couplings, subject, 'place-2', 'x'.repeat(longestNote + 1), newId);
    expect(note.ok ? '' : note.error.message).toContain('20001 characters; at most 20000');
    answer(couplings, 'place-2', 'x'.repeat(longestNote));
  });
});

describe('deciding', () => {
  it('without a reason is refused in words', () => {
    const note = decide(couplings, subject, 'eliminate', '  ', newId);
    expect(note.ok ? '' : note.error).toMatchObject({
      code: 'examine/decision-reason',
      message: 'A decision needs a reason, so that it can be understood later. Write why it is “eliminate”.',
    });
  });

  it('again replaces; the same again changes nothing; taken back, the answers stay', () => {
    const first = noted(couplings, decide(couplings, subject, 'keep', 'for now', newId));
    const both = answer(first, 'means-3', 'A fixture.');
    const second = noted(both, decide(both, subject, 'eliminate', 'a fixture is cheap', newId));
    expect(findExamination(second, subject)?.decision).toEqual({
      choice: 'eliminate',
      reason: 'a fixture is cheap',
    });
    expect(decide(second, subject, 'eliminate', 'a fixture is cheap ', newId)).toEqual({
      ok: true,
      value: undefined,
    });
    const back = done(second, clearDecision(second, subject));
    expect(findExamination(back, subject)).toEqual({
      id: 'x1',
      subject,
      answers: [{ question: 'means-3', text: 'A fixture.' }],
    });
    expect(clearDecision(back, subject)).toBeUndefined();
  });

  it('taken back when nothing else was noted, the examination goes', () => {
    const first = noted(couplings, decide(couplings, subject, 'keep', 'for now', newId));
    expect(sameData(done(first, clearDecision(first, subject)), couplings)).toBe(true);
  });
});

const commandArb = fc.record({
  what: fc.constantFrom('answer', 'decide', 'clear' as const),
  question: fc.constantFrom(...examinationQuestions.slice(0, 3).map(({ id }) => id)),
  choice: fc.constantFrom(...decisionChoices),
  text: fc.constantFrom('', ' ', 'because', 'it rolls away', '\u{1f9e4} ß'),
  which: fc.nat(3),
});

describe('laws of noting', () => {
  it('every edit keeps the laws of edits; what is left is what was last said; clearing all gives the start back', () => {
    const types = new Set<string>();
    fc.assert(
      fc.property(studyArb, fc.array(commandArb, { maxLength: 14 }), (start, commands) => {
        const first: Study = { ...start, examinations: undefined } as Study;
        const subjects: readonly ExaminationSubject[] = [
          { kind: 'operation', method: 'filmed' },
          { kind: 'motion', method: 'plain', hand: 'left', motion: 'l0' },
          { kind: 'element', method: 'filmed', element: 'gone' },
          { kind: 'lead', method: 'plain', lead: 'hold:left:body' },
        ];
        // The slow second way: a plain table of what was last said.
        const said = new Map<string, string>();
        let study = first;
        commands.forEach(({ what, question, choice, text, which }, index) => {
          const chosen = subjects[which] as ExaminationSubject;
          const id = () => `n${index}`;
          const note: Noted =
            what === 'answer'
              ? answerQuestion(study, chosen, question, text, id)
              : what === 'decide'
                ? decide(study, chosen, choice, text, id)
                : { ok: true, value: clearDecision(study, chosen) };
          if (!note.ok) {
            expect([what, text.trim()]).toEqual(['decide', '']);
            return;
          }
          if (note.value !== undefined) types.add(note.value.type);
          study = done(study, note.value);
          const key = `${which} ${what === 'answer' ? question : 'decision'}`;
          const value =
            what === 'answer' ? text.trim() : what === 'decide' ? `${choice}: ${text.trim()}` : '';
          if (value === '') said.delete(key);
          else said.set(key, value);
        });
        const kept = subjects.flatMap((chosen, which) => {
          const { answers = [], decision } = findExamination(study, chosen) ?? {};
          const rows = answers.map(({ question, text }): [string, string] => [`${which} ${question}`, text]);
          const last: [string, string][] =
            decision === undefined ? [] : [[`${which} decision`, `${decision.choice}: ${decision.reason}`]];
          return [...rows, ...last];
        });
        expect(new Map(kept)).toEqual(said);
        for (const chosen of subjects) {
          study = done(study, clearDecision(study, chosen));
          for (const { question } of findExamination(study, chosen)?.answers ?? []) {
            study = noted(study, answerQuestion(study, chosen, question, '', newId));
          }
        }
        expect(sameData(study, first)).toBe(true);
      }),
      { seed: 20_261_202, numRuns: 80 },
    );
    expect([...types].sort()).toEqual(['examination.add', 'examination.change', 'examination.remove']);
  });

  it('two windows that note the same thing: the second is refused and nothing is doubled', () => {
    const mine = answerQuestion(couplings, subject, 'means-2', 'a', () => 'a');
    const theirs = answerQuestion(couplings, subject, 'means-2', 'b', () => 'b');
    if (!mine.ok || !theirs.ok || mine.value === undefined || theirs.value === undefined) {
      throw new Error('no edit');
    }
    const head = done(couplings, mine.value);
    const applied = applyEdit(head, theirs.value);
    expect(applied.ok ? '' : applied.error.code).toBe('study/examined-twice');
  });
});
