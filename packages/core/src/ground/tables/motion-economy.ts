import type { SourceId } from './sources.ts';

/** What a principle is about: the use of the body, the arrangement of the workplace, the design of tools. */
export type PrincipleArea = 'body' | 'place' | 'tool';

/** 1 to 22, as Barnes numbers them. */
export type PrincipleNumber =
  | 1
  | 2
  | 3
  | 4
  | 5
  | 6
  | 7
  | 8
  | 9
  | 10
  | 11
  | 12
  | 13
  | 14
  | 15
  | 16
  | 17
  | 18
  | 19
  | 20
  | 21
  | 22;

export interface Principle {
  readonly number: PrincipleNumber | undefined;
  readonly area: PrincipleArea;
  /** In our own words. */
  readonly fact: string;
  /** Whether the number was read in print or is from memory; undefined for a principle without a number. */
  readonly numbering: 'read' | 'memory' | undefined;
  readonly source: SourceId;
  /** Whether a two-hand record can test it: our own judgement. */
  readonly checkable: 'yes' | 'partly' | 'no';
  /** What is known for or against it, with its source. */
  readonly note?: { readonly text: string; readonly source: SourceId };
}

type Row = readonly [PrincipleArea, Principle['checkable'], string];

/** In the order of their numbers. */
const rows: readonly Row[] = [
  ['body', 'yes', 'Both hands begin their motions together and finish them together.'],
  ['body', 'yes', 'The two hands are not idle at the same time, except to rest.'],
  [
    'body',
    'partly',
    'The arms move at the same time, in opposite directions, one the mirror image of the other.',
  ],
  ['body', 'partly', 'A motion is of the lowest class that still does the work well.'],
  ['body', 'no', 'Momentum helps where it can and is kept small where muscles must stop it.'],
  ['body', 'partly', 'Paths are smooth curves, without zigzags and sharp turns.'],
  [
    'body',
    'partly',
    'Free swinging motions are faster, easier and more exact than motions held back all the way.',
  ],
  ['body', 'partly', 'The work is arranged so that it falls into an easy rhythm.'],
  ['body', 'partly', 'The eyes need to fix few points, and these lie close together.'],
  ['place', 'yes', 'Every tool and part has one fixed place.'],
  ['place', 'yes', 'Tools, parts and controls lie close to where they are used and in front of it.'],
  ['place', 'partly', 'Bins that feed by gravity bring the parts to where they are used.'],
  ['place', 'yes', 'Finished pieces are dropped rather than carried away.'],
  ['place', 'partly', 'Things lie in the order that gives the best sequence of motions.'],
  ['place', 'no', 'The light and the view are good enough for the work.'],
  ['place', 'partly', 'The height of the bench lets the person sit and stand in turn.'],
  ['place', 'no', 'The chair supports a good posture.'],
  ['tool', 'yes', 'What a jig, a fixture or a device for the foot can do is taken from the hands.'],
  ['tool', 'partly', 'Two tools are made into one where that is possible.'],
  ['tool', 'yes', 'Tools and parts stand ready in the position in which they will be used.'],
  ['tool', 'no', 'Where each finger has work of its own, the load follows what each finger can do.'],
  [
    'tool',
    'partly',
    'Levers, wheels and handles can be used with full advantage and little change of posture.',
  ],
];

/** Numbers up to this one were read in a numbered list; the later ones are from memory. */
const lastRead = 16;

const notes: Readonly<Partial<Record<PrincipleNumber, Principle['note']>>> = {
  3: {
    text: 'On a pegboard, 109 people were about 1 % faster with parallel than with alternating hands, a difference that was not significant: advice, not a claim about time.',
    source: 'symmetry-test',
  },
};

/** The numbered principles, 1 to 22. */
export const principles: readonly (Principle & { readonly number: PrincipleNumber })[] = rows.map(
  ([area, checkable, fact], index) => {
    const number = (index + 1) as PrincipleNumber;
    const read = number <= lastRead;
    const note = notes[number];
    return {
      number,
      area,
      fact,
      numbering: read ? 'read' : 'memory',
      source: read ? 'motion-economy' : 'barnes-principles',
      checkable,
      ...(note === undefined ? {} : { note }),
    };
  },
);

/** Two more that Barnes's list does not have. */
export const furtherPrinciples: readonly (Principle & { readonly number: undefined })[] = [
  {
    number: undefined,
    area: 'body',
    fact: 'The work is laid out for the hand that the person prefers.',
    numbering: undefined,
    source: 'groover-principles',
    checkable: 'no',
  },
  {
    number: undefined,
    area: 'body',
    fact: 'Gravity is used and not worked against.',
    numbering: undefined,
    source: 'groover-principles',
    checkable: 'no',
  },
];

/** @throws RangeError when there is no principle of that number */
export function principleOf(number: PrincipleNumber): Principle & { readonly number: PrincipleNumber } {
  const principle = principles[number - 1];
  if (principle === undefined) throw new RangeError(`there is no principle ${number}; they run from 1 to 22`);
  return principle;
}

export type MotionClass = 1 | 2 | 3 | 4 | 5;

export interface MotionClassFacts {
  readonly class: MotionClass;
  /** The joint about which the motion turns. */
  readonly pivot: string;
  /** The parts of the body that move. */
  readonly moves: string;
  readonly source: SourceId;
}

/** The classes of motion by the joint about which they turn; a higher class moves more of the body. */
export const motionClasses: readonly MotionClassFacts[] = [
  { class: 1, pivot: 'knuckles', moves: 'fingers', source: 'motion-classes' },
  { class: 2, pivot: 'wrist', moves: 'fingers and hand', source: 'motion-classes' },
  { class: 3, pivot: 'elbow', moves: 'fingers, hand and forearm', source: 'motion-classes' },
  { class: 4, pivot: 'shoulder', moves: 'fingers, hand, forearm and upper arm', source: 'motion-classes' },
  {
    class: 5,
    pivot: 'trunk',
    moves: 'fingers, hand, forearm, upper arm and trunk; the posture is disturbed',
    source: 'motion-classes',
  },
];

/** To be shown wherever the classes are used. */
export const classesCaution: { readonly text: string; readonly source: SourceId } = {
  text: 'The classes rank motions by limb, not by effort: motions of the fingers alone can be slower and more tiring than motions of the forearm. They point at something to look into and are no score. Where a posture may hurt somebody, local rules and qualified people decide.',
  source: 'motion-class-effort',
};
