import { type Finding, finding } from '../findings/index.ts';
import type { Examination, ExaminationSubject, Method, Study } from './schema.ts';

/** Two subjects are the same thing when their keys are equal. */
export function subjectKey(subject: ExaminationSubject): string {
  switch (subject.kind) {
    case 'operation':
      return JSON.stringify([subject.kind, subject.method]);
    case 'motion':
      return JSON.stringify([subject.kind, subject.method, subject.hand, subject.motion]);
    case 'element':
      return JSON.stringify([subject.kind, subject.method, subject.element]);
    default:
      return JSON.stringify([subject.kind, subject.method, subject.lead]);
  }
}

/** Elements begin inside the film, and no two of one hand at the same boundary. `last` is the number of frames. */
export function checkElements(method: Method, pointer: string, last: number | undefined): Finding[] {
  const found: Finding[] = [];
  const taken = new Set<string>();
  (method.elements ?? []).forEach(({ name, hand, at }, index) => {
    const where = { pointer: `${pointer}/elements/${index}/at` };
    if (last !== undefined && at >= last) {
      found.push(finding('study/element-outside-film', where, { element: name, at, frames: last }));
    }
    const key = `${hand} ${at}`;
    if (taken.has(key)) found.push(finding('study/element-twice', where, { hand, at }));
    taken.add(key);
  });
  return found;
}

/** Its method is in the study, and each question is answered once. What else it is about may be gone. */
export function checkExamination(study: Study, examination: Examination, pointer: string): Finding[] {
  const found: Finding[] = [];
  const { method } = examination.subject;
  if (!study.methods.some((item) => item.id === method)) {
    found.push(finding('study/unknown-method', { pointer: `${pointer}/subject/method` }, { method }));
  }
  const answered = new Set<string>();
  (examination.answers ?? []).forEach(({ question }, index) => {
    if (answered.has(question)) {
      const where = { pointer: `${pointer}/answers/${index}/question` };
      found.push(finding('study/answered-twice', where, { question }));
    }
    answered.add(question);
  });
  return found;
}

export function checkExaminations(study: Study): Finding[] {
  const bySubject = new Map<string, string>();
  return (study.examinations ?? []).flatMap((examination, index) => {
    const pointer = `/examinations/${index}`;
    const found = checkExamination(study, examination, pointer);
    const key = subjectKey(examination.subject);
    const first = bySubject.get(key);
    if (first === undefined) {
      bySubject.set(key, examination.id);
      return found;
    }
    const words = { first, second: examination.id };
    return [...found, finding('study/examined-twice', { pointer: `${pointer}/subject` }, words)];
  });
}
