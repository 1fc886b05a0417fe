import {
  type Decision,
  type Examination,
  type ExaminationSubject,
  findItem,
  type Study,
} from '../../../ground/study/index.ts';
import {
  type ExaminationQuestion,
  type ExaminationQuestionFacts,
  examinationQuestions,
} from '../../../ground/tables/index.ts';
import { knownAnswers, openQuestions } from './known-answers.ts';
import { elementOf, isStillThere, subjectWords } from './subjects.ts';

/** One thing that was examined, as it stands in a report. */
export interface ExaminationRow {
  readonly examination: Examination;
  /** Name of the method. */
  readonly method: string;
  /** What was examined, in words. */
  readonly subject: string;
  /** False: the motion, the element or the lead is not in the record any more. */
  readonly there: boolean;
  /** In the order of the questions; what the record says comes before what the analyst wrote. */
  readonly answers: readonly ReportedAnswer[];
  readonly open: readonly ExaminationQuestion[];
  readonly decision: Decision | undefined;
}

export interface ReportedAnswer {
  readonly question: ExaminationQuestionFacts;
  readonly text: string;
  readonly by: 'record' | 'analyst';
}

/** All that was examined: by method as they stand in the study, the operation first, then leads, elements and motions. */
export function notedExaminations(study: Study): readonly ExaminationRow[] {
  const list = study.examinations ?? [];
  const keyed = list.map((examination) => ({ examination, key: orderOf(study, examination.subject) }));
  return keyed
    .sort((a, b) => compareKeys(a.key, b.key) || compareText(a.examination.id, b.examination.id))
    .map(({ examination }) => rowOf(study, examination));
}

function rowOf(study: Study, examination: Examination): ExaminationRow {
  const { subject, decision } = examination;
  const method = study.methods.find((item) => item.id === subject.method);
  return {
    examination,
    method: method?.name ?? subject.method,
    subject: subjectWords(study, subject),
    there: isStillThere(study, subject),
    answers: answersOf(study, examination),
    open: openQuestions(study, examination),
    decision,
  };
}

function answersOf(study: Study, { subject, answers = [] }: Examination): readonly ReportedAnswer[] {
  const known = knownAnswers(study, subject);
  const given = (question: ExaminationQuestionFacts, by: ReportedAnswer['by']) =>
    (by === 'record' ? known : answers)
      .filter((answer) => answer.question === question.id)
      .map(({ text }): ReportedAnswer => ({ question, text, by }));
  return examinationQuestions.flatMap((question) => [
    ...given(question, 'record'),
    ...given(question, 'analyst'),
  ]);
}

type Key = readonly [method: number, kind: number, at: number, name: string];

const kindOrder = ['operation', 'lead', 'element', 'motion'] as const;

/** What is not there any more comes last among its kind. */
function orderOf(study: Study, subject: ExaminationSubject): Key {
  const position = study.methods.findIndex((item) => item.id === subject.method);
  const method = study.methods[position];
  const kind = kindOrder.indexOf(subject.kind);
  const gone = Number.MAX_SAFE_INTEGER;
  if (method === undefined) return [gone, kind, 0, ''];
  switch (subject.kind) {
    case 'operation':
      return [position, kind, 0, ''];
    case 'lead':
      return [position, kind, 0, subject.lead];
    case 'element':
      return [position, kind, elementOf(method, subject)?.at ?? gone, subject.element];
    default: {
      const found = findItem(method[subject.hand], subject.motion);
      return [position, kind, found?.start ?? gone, `${subject.hand} ${subject.motion}`];
    }
  }
}

function compareKeys(a: Key, b: Key): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || compareText(a[3], b[3]);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
