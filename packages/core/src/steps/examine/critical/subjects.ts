import {
  type Examination,
  type ExaminationSubject,
  findItem,
  itemAt,
  type Method,
  methodClock,
  type Study,
  subjectKey,
} from '../../../ground/study/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import { describeMotion } from '../../record/index.ts';
import { leadRules } from '../leads/index.ts';
import { cycleWords } from '../reading/index.ts';
import { methodRecord } from './method-record.ts';

export type SubjectOf<Kind extends ExaminationSubject['kind']> = Extract<
  ExaminationSubject,
  { readonly kind: Kind }
>;

export function sameSubject(a: ExaminationSubject, b: ExaminationSubject): boolean {
  return subjectKey(a) === subjectKey(b);
}

/** What was noted about a subject; undefined when nothing was. */
export function findExamination(study: Study, subject: ExaminationSubject): Examination | undefined {
  return study.examinations?.find((examination) => sameSubject(examination.subject, subject));
}

/** The operation, the motion, the element or the lead is in the record as it is now. */
export function isStillThere(study: Study, subject: ExaminationSubject): boolean {
  const record = methodRecord(study, subject.method);
  if (record === undefined) return false;
  switch (subject.kind) {
    case 'operation':
      return true;
    case 'motion':
      return findItem(record.method[subject.hand], subject.motion) !== undefined;
    case 'element':
      return elementOf(record.method, subject) !== undefined;
    default:
      return record.leads().some((lead) => lead.id === subject.lead);
  }
}

export function elementOf(method: Method, { element }: SubjectOf<'element'>) {
  return method.elements?.find((item) => item.id === element);
}

/** A subject without its method: "right hand: grasp ring, 1.00 s after the start of cycle 2". What is gone meanwhile says so. */
export function subjectWords(study: Study, subject: ExaminationSubject): string {
  const method = study.methods.find((item) => item.id === subject.method);
  switch (subject.kind) {
    case 'operation':
      return 'the whole operation';
    case 'motion':
      return `${subject.hand} hand: ${motionWords(study, method, subject)}`;
    case 'element': {
      const element = method === undefined ? undefined : elementOf(method, subject);
      return element === undefined ? 'an element that is not there any more' : `element “${element.name}”`;
    }
    default:
      return leadWords(subject.lead);
  }
}

function motionWords(
  study: Study,
  method: Method | undefined,
  { hand, motion: id }: SubjectOf<'motion'>,
): string {
  const found = method === undefined ? undefined : findItem(method[hand], id);
  if (method === undefined || found === undefined) return 'a motion that is not there any more';
  return `${wordsOf(study, found.item)}, ${momentWords(study, method, found.start)}`;
}

/** "1.00 s after the start of cycle 2". */
export function momentWords(study: Study, method: Method, at: number): string {
  const clock = methodClock(study, method);
  const cycle = itemAt(method.cycles, at);
  if (cycle === undefined) {
    const outside = method.cycles.items.length === 0 ? '' : ', outside the cycles';
    return `at ${timeText(clock.timeOf(at), 'seconds')}${outside}`;
  }
  return `${timeText(clock.span(cycle.start, at), 'seconds')} after the start of ${cycleWords([cycle.index + 1])}`;
}

/** A motion with the names of its places. */
export function wordsOf(study: Study, { kind, object, from, to }: Method['left']['items'][number]): string {
  const place = (id: string | undefined) => study.places.find((item) => item.id === id)?.name ?? id;
  return describeMotion({ kind, object, from: place(from), to: place(to) });
}

/** "Holding in one hand: left hand, body", from the name of a lead, so that it can be said when the lead is gone. */
function leadWords(id: string): string {
  const [code, hand, ...rest] = id.split(':');
  const rule = leadRules.find((item) => item.code === code);
  if (rule === undefined) return id;
  const about = rest.join(':');
  const who = hand === 'left' || hand === 'right' ? `${hand} hand` : hand === 'both' ? 'both hands' : hand;
  const parts = [who, about].filter((part) => part !== undefined && part !== '');
  return parts.length === 0 ? rule.name : `${rule.name}: ${parts.join(', ')}`;
}
