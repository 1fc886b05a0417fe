import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Edit, ExaminationFields } from '../../../ground/edit/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Answer, Examination, ExaminationSubject, Study } from '../../../ground/study/index.ts';
import {
  type DecisionChoice,
  type ExaminationQuestion,
  examinationQuestions,
} from '../../../ground/tables/index.ts';
import { findExamination } from './subjects.ts';

/** The edit to perform, undefined when nothing changes; or why the note cannot be kept. */
export type Noted = Result<Edit | undefined, Finding>;

/** Characters that an answer or a reason may have, as the study file allows. */
export const longestNote = 20_000;

/** Notes an answer, replaces the one that is there, or, with an empty text, takes it away. Blanks around it are dropped. */
export function answerQuestion(
  study: Study,
  subject: ExaminationSubject,
  question: ExaminationQuestion,
  text: string,
  newId: () => string,
): Noted {
  const words = text.trim();
  const fault = tooLong(words);
  if (fault !== undefined) return fail(fault);
  const known = findExamination(study, subject);
  const before = known?.answers ?? [];
  if ((before.find((answer) => answer.question === question)?.text ?? '') === words) return ok(undefined);
  const others = before.filter((answer) => answer.question !== question);
  const answers = inOrder(words === '' ? others : [...others, { question, text: words }]);
  return ok(noteEdit(known, subject, { answers: answers.length === 0 ? null : answers }, newId));
}

/** Decides with a reason; replaces the decision that is there. */
export function decide(
  study: Study,
  subject: ExaminationSubject,
  choice: DecisionChoice,
  reason: string,
  newId: () => string,
): Noted {
  const words = reason.trim();
  if (words === '') return fail(finding('examine/decision-reason', {}, { choice }));
  const fault = tooLong(words);
  if (fault !== undefined) return fail(fault);
  const known = findExamination(study, subject);
  const { decision } = known ?? {};
  if (decision?.choice === choice && decision.reason === words) return ok(undefined);
  return ok(noteEdit(known, subject, { decision: { choice, reason: words } }, newId));
}

/** Takes the decision back; the answers stay. Undefined when there is none. */
export function clearDecision(study: Study, subject: ExaminationSubject): Edit | undefined {
  const known = findExamination(study, subject);
  if (known?.decision === undefined) return undefined;
  return noteEdit(known, subject, { decision: null }, () => known.id);
}

/** Adds the examination when there is none, and removes it when nothing would be left in it. */
function noteEdit(
  known: Examination | undefined,
  subject: ExaminationSubject,
  to: ExaminationFields,
  newId: () => string,
): Edit {
  if (known === undefined) {
    const { answers, decision } = to;
    const noted = { ...(answers ? { answers } : {}), ...(decision ? { decision } : {}) };
    return { type: 'examination.add', examination: { id: newId(), subject, ...noted } };
  }
  const left = { answers: known.answers ?? null, decision: known.decision ?? null, ...to };
  if (left.answers === null && left.decision === null) {
    return { type: 'examination.remove', examination: known };
  }
  const was = {
    ...('answers' in to ? { answers: known.answers ?? null } : {}),
    ...('decision' in to ? { decision: known.decision ?? null } : {}),
  };
  return { type: 'examination.change', examination: known.id, to, was };
}

const rank = new Map(examinationQuestions.map(({ id }, index) => [id, index]));

function inOrder(answers: readonly Answer[]): readonly Answer[] {
  return [...answers].sort((a, b) => (rank.get(a.question) ?? 0) - (rank.get(b.question) ?? 0));
}

function tooLong(text: string): Finding | undefined {
  return text.length > longestNote
    ? finding('examine/text-too-long', {}, { length: text.length, limit: longestNote })
    : undefined;
}
