import { micros } from '../../../ground/base/index.ts';
import {
  type Examination,
  type ExaminationSubject,
  filmOf,
  hands,
  itemAt,
  methodClock,
  otherHand,
  type Study,
} from '../../../ground/study/index.ts';
import {
  type ExaminationQuestion,
  examinationQuestions,
  type MotionKind,
  motionFactsOf,
} from '../../../ground/tables/index.ts';
import { countText, percentText, timeText } from '../../../ground/units/index.ts';
import { cycleWords, type MethodReading } from '../reading/index.ts';
import { type MethodRecord, methodRecord } from './method-record.ts';
import {
  coveredTime,
  motionsIn,
  neighbours,
  placesOf,
  type Stretch,
  type SubjectStretches,
  stretchesOf,
} from './stretches.ts';
import { elementOf, momentWords, wordsOf } from './subjects.ts';

/** Something that the record answers by itself. It is worked out anew each time and never stored. */
export interface KnownAnswer {
  readonly question: ExaminationQuestion;
  /** A whole sentence. */
  readonly text: string;
}

/** A subject that is in the record, with all that the sentences are made of. */
interface Facts {
  readonly record: MethodRecord;
  readonly subject: ExaminationSubject;
  readonly stretches: SubjectStretches;
}

/**
 * What the record says to the first question of each head, in the order of the heads. A question is left out when the
 * record does not answer it; all are when the subject is not there any more.
 */
export function knownAnswers(study: Study, subject: ExaminationSubject): readonly KnownAnswer[] {
  const record = methodRecord(study, subject.method);
  if (record === undefined) return [];
  const texts = subject.kind === 'operation' ? operationTexts(record) : subjectTexts(record, subject);
  const questions = ['purpose-1', 'place-1', 'sequence-1', 'person-1', 'means-1'] as const;
  return questions.flatMap((question, index) => {
    const text = texts[index];
    return text === undefined ? [] : [{ question, text }];
  });
}

/** The questions to which neither the record nor the analyst has given an answer yet, in their order. */
export function openQuestions(
  study: Study,
  examination: Pick<Examination, 'subject' | 'answers'>,
): readonly ExaminationQuestion[] {
  const answered = new Set<ExaminationQuestion>([
    ...knownAnswers(study, examination.subject).map(({ question }) => question),
    ...(examination.answers ?? []).map(({ question }) => question),
  ]);
  return examinationQuestions.map(({ id }) => id).filter((id) => !answered.has(id));
}

type Texts = readonly (string | undefined)[];

function subjectTexts(record: MethodRecord, subject: ExaminationSubject): Texts {
  const stretches = stretchesOf(record, subject);
  if (stretches === undefined) return [];
  const facts = { record, subject, stretches };
  return [achieved(facts), where(facts), when(facts), who(facts), how(facts)];
}

/** Purpose: the motions by their words; for a single one also the state in which it ends. */
function achieved({ record, subject, stretches }: Facts): string | undefined {
  const { study, method } = record;
  const motions = stretches.own.flatMap((stretch) => motionsIn(method, stretch));
  const words = distinct(motions.map((motion) => wordsOf(study, motion)));
  const [first] = motions;
  if (first === undefined) return undefined;
  const name = subject.kind === 'element' ? `“${elementOf(method, subject)?.name}”: ` : '';
  if (words.length > 1) return sentence(`${name}${quoted(words)}`);
  const end = idleKinds.includes(first.kind)
    ? 'the hand stands idle until it takes up work again'
    : `done when ${motionFactsOf(first.kind).ends}`;
  return sentence(`${name}${words[0]}: ${end}`);
}

const idleKinds: readonly MotionKind[] = ['UD', 'AD', 'R'];

function where({ record, stretches }: Facts): string | undefined {
  const { study, method } = record;
  const ids = stretches.own.flatMap((stretch) =>
    motionsIn(method, stretch).flatMap((motion) => placesOf(method, stretch.hand, motion)),
  );
  return placeSentence(study, ids);
}

function placeSentence(study: Study, ids: readonly string[]): string | undefined {
  const names = distinct(ids).map((id) => study.places.find((place) => place.id === id)?.name ?? id);
  if (names.length === 0) return undefined;
  return sentence(`${names.length === 1 ? 'place' : 'places'}: ${quoted(names)}`);
}

/** Sequence: cycle and time of the first stretch, the neighbours of that hand, and what the other hand does meanwhile. */
function when({ record, stretches }: Facts): string | undefined {
  const [first] = stretches.own;
  if (first === undefined) return undefined;
  const { study, method } = record;
  const { before, after } = neighbours(method, first);
  const other = otherHand(first.hand);
  const meanwhile = distinct(
    motionsIn(method, { ...first, hand: other }).map((motion) => wordsOf(study, motion)),
  );
  const parts = [
    momentWords(study, method, first.from),
    before === undefined ? undefined : `after “${wordsOf(study, before)}”`,
    after === undefined ? undefined : `before “${wordsOf(study, after)}”`,
    meanwhile.length === 0 ? undefined : `while the ${other} hand does ${quoted(meanwhile)}`,
  ];
  return sentence(parts.filter((part) => part !== undefined).join(', '));
}

function who({ record, stretches }: Facts): string {
  const involved = hands.filter((hand) => stretches.own.some((stretch) => stretch.hand === hand));
  const which = involved.length === 2 ? 'both hands' : `the ${involved[0]} hand`;
  const code = filmOf(record.study, record.method)?.operatorCode;
  return sentence(code === undefined ? which : `${which}; code of the person filmed: ${code}`);
}

/** Means: the kinds of motion, the time it takes, and its share of the cycle. */
function how({ record, stretches }: Facts): string | undefined {
  const { method, reading, study } = record;
  const kinds = kindWords(stretches.own.flatMap((stretch) => motionsIn(method, stretch)).map((m) => m.kind));
  if (kinds === undefined) return undefined;
  const clock = methodClock(study, method);
  const [first] = stretches.own;
  if (reading !== undefined && stretches.timed !== undefined) {
    return sentence(`${kinds}, ${meanWords(reading, stretches.timed)}`);
  }
  if (first === undefined) return undefined;
  const time = clock.span(first.from, first.to);
  const cycle = itemAt(method.cycles, first.from);
  if (cycle === undefined) return sentence(`${kinds}, ${timeText(time, 'seconds')}`);
  const share = time / Math.max(1, clock.span(cycle.start, cycle.end));
  return sentence(
    `${kinds}, ${timeText(time, 'seconds')} in ${cycleWords([cycle.index + 1])}, ${percentText(share)} of it`,
  );
}

/** Time a cycle over the cycles read. Where both hands are at it at once, that time counts once. */
function meanWords(reading: MethodReading, stretches: readonly Stretch[]): string {
  const { cycles, clock } = reading;
  const total = coveredTime(stretches, clock);
  const whole = cycles.reduce((sum, { duration }) => sum + duration, 0);
  const mean = micros(Math.round(total / cycles.length));
  const numbers = cycleWords(cycles.map(({ number }) => number));
  const over = cycles.length === 1 ? `in ${numbers}` : `a cycle on average over ${numbers}`;
  return `${timeText(mean, 'seconds')} ${over}, ${percentText(total / Math.max(1, whole))} of the time`;
}

/** The operation as a whole: when it is done lies outside a record, and so does who does it without a code. */
function operationTexts(record: MethodRecord): Texts {
  const { study, method, reading } = record;
  const { name, part } = study.operation;
  const code = filmOf(study, method)?.operatorCode;
  const pieces = (reading?.cycles ?? []).flatMap((cycle) => hands.flatMap((hand) => cycle[hand]));
  const places = pieces.flatMap(({ motion }) => [motion?.from, motion?.to]).filter((id) => id !== undefined);
  const what = part === undefined ? name : `${name}; the part is: ${part}`;
  return [
    name.trim() === '' ? undefined : sentence(what),
    placeSentence(study, places),
    undefined,
    code === undefined ? undefined : sentence(`both hands; code of the person filmed: ${code}`),
    reading === undefined ? undefined : operationMeans(reading),
  ];
}

function operationMeans({ cycles, method }: MethodReading): string {
  const mean = micros(Math.round(cycles.reduce((sum, { duration }) => sum + duration, 0) / cycles.length));
  const counts = hands.map((hand) => {
    const count = cycles.reduce(
      (sum, cycle) => sum + cycle[hand].filter(({ kind }) => kind !== 'unmarked').length,
      0,
    );
    return `${Math.round(count / cycles.length)} of the ${hand} hand`;
  });
  const numbers = cycleWords(cycles.map(({ number }) => number));
  const time =
    cycles.length === 1
      ? `${timeText(mean, 'seconds')} in ${numbers}`
      : `${timeText(mean, 'seconds')} a cycle on average over ${numbers}`;
  const units = countText(method.unitsPerCycle, 'unit');
  return sentence(`${time} for ${units}; motions a cycle, rounded: ${counts.join(', ')}`);
}

/** "grasp (G), hold (H)", in the order in which they first come. */
function kindWords(kinds: readonly MotionKind[]): string | undefined {
  const words = distinct(kinds).map((kind) => `${motionFactsOf(kind).name} (${motionFactsOf(kind).code})`);
  return words.length === 0 ? undefined : words.join(', ');
}

function distinct<T>(items: readonly T[]): readonly T[] {
  return [...new Set(items)];
}

/** At most five, each in quotation marks because names of places hold commas, then how many more. */
function quoted(words: readonly string[]): string {
  const rest = words.length - 5;
  const named = words.slice(0, 5).map((word) => `“${word}”`);
  return `${named.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

function sentence(text: string): string {
  const words = text.trim();
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
}
