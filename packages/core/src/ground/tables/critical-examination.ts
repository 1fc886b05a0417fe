import type { SourceId } from './sources.ts';

/** The five heads of the critical examination, in the order in which they are asked. */
export type ExaminationHead = 'purpose' | 'place' | 'sequence' | 'person' | 'means';

/** One of the twenty questions: its head and its number from 1 to 4. */
export type ExaminationQuestion = `${ExaminationHead}-${1 | 2 | 3 | 4}`;

/** What can be decided, in the order in which it should be tried; `keep` leaves the work as it is. */
export type DecisionChoice = 'eliminate' | 'combine' | 'rearrange' | 'simplify' | 'keep';

export interface ExaminationQuestionFacts {
  readonly id: ExaminationQuestion;
  readonly head: ExaminationHead;
  readonly number: 1 | 2 | 3 | 4;
  /** Primary: what is done now, and why. Secondary: what else could be, and what should be. */
  readonly stage: 'primary' | 'secondary';
  /** Asks for a reason or for an opinion; only the first of each head asks for a fact that a record may hold. */
  readonly asks: 'fact' | 'reason' | 'alternative' | 'proposal';
  readonly text: string;
  readonly source: SourceId;
}

export interface ExaminationHeadFacts {
  readonly head: ExaminationHead;
  readonly name: string;
  /** The changes that the answers under this head lead to. */
  readonly leadsTo: readonly DecisionChoice[];
  readonly leadsToSource: SourceId;
  readonly questions: readonly ExaminationQuestionFacts[];
  readonly source: SourceId;
}

export const decisionChoices: readonly DecisionChoice[] = [
  'eliminate',
  'combine',
  'rearrange',
  'simplify',
  'keep',
];

type Texts = readonly [string, string, string, string];

const rows: readonly (readonly [ExaminationHead, string, readonly DecisionChoice[], Texts])[] = [
  [
    'purpose',
    'Purpose',
    ['eliminate'],
    ['What is achieved?', 'Is it necessary, and why?', 'What else could be done?', 'What should be done?'],
  ],
  [
    'place',
    'Place',
    ['combine', 'rearrange'],
    ['Where is it done?', 'Why there?', 'Where else could it be done?', 'Where should it be done?'],
  ],
  [
    'sequence',
    'Sequence',
    ['combine', 'rearrange'],
    ['When is it done?', 'Why then?', 'When else could it be done?', 'When should it be done?'],
  ],
  [
    'person',
    'Person',
    ['combine', 'rearrange'],
    ['Who does it?', 'Why that person?', 'Who else could do it?', 'Who should do it?'],
  ],
  [
    'means',
    'Means',
    ['simplify'],
    ['How is it done?', 'Why that way?', 'How else could it be done?', 'How should it be done?'],
  ],
];

const asks = ['fact', 'reason', 'alternative', 'proposal'] as const;

function questionsOf(head: ExaminationHead, texts: Texts): ExaminationQuestionFacts[] {
  return ([1, 2, 3, 4] as const).map((number, index) => ({
    id: `${head}-${number}`,
    head,
    number,
    stage: number <= 2 ? 'primary' : 'secondary',
    asks: asks[index] ?? 'fact',
    text: texts[index] ?? '',
    source: 'critical-examination',
  }));
}

/**
 * The heads with their questions. The twenty questions are read (`critical-examination`); that the first two of a head
 * ask about the present and the last two about alternatives is read too (`critical-examination-stages`). The words
 * primary and secondary, and which head leads to which change, are from memory of the ILO's book (`ilo-examination`).
 */
export const examinationHeads: readonly ExaminationHeadFacts[] = rows.map(([head, name, leadsTo, texts]) => ({
  head,
  name,
  leadsTo,
  leadsToSource: 'ilo-examination',
  questions: questionsOf(head, texts),
  source: 'critical-examination',
}));

/** The twenty questions, head by head. */
export const examinationQuestions: readonly ExaminationQuestionFacts[] = examinationHeads.flatMap(
  (head) => head.questions,
);

const byId = new Map(examinationQuestions.map((question) => [question.id, question]));

/** @throws RangeError when there is no such question */
export function examinationQuestionOf(id: ExaminationQuestion): ExaminationQuestionFacts {
  const question = byId.get(id);
  if (question === undefined) throw new RangeError(`no question ${id}`);
  return question;
}
