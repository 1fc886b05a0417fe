import type { SourceId } from './sources.ts';

/** The eighteen fundamental motions by their letter codes, and `unmarked` for what nobody has looked at yet. */
export type MotionKind =
  | 'TE'
  | 'TL'
  | 'G'
  | 'H'
  | 'RL'
  | 'P'
  | 'PP'
  | 'U'
  | 'A'
  | 'DA'
  | 'Sh'
  | 'F'
  | 'St'
  | 'I'
  | 'Pn'
  | 'UD'
  | 'AD'
  | 'R'
  | 'unmarked';

/** A print pattern that keeps a motion legible without colour. The choice of pattern for each motion is ours. */
export type Pattern =
  | 'plain'
  | 'solid'
  | 'diagonal'
  | 'diagonal-back'
  | 'cross-diagonal'
  | 'horizontal'
  | 'vertical'
  | 'grid'
  | 'dots'
  | 'dots-dense'
  | 'dashes'
  | 'zigzag'
  | 'wide-diagonal'
  | 'wide-diagonal-back'
  | 'wide-vertical'
  | 'wide-horizontal'
  | 'rings'
  | 'crosses'
  | 'empty';

export interface MotionFacts {
  readonly kind: MotionKind;
  readonly code: string;
  readonly name: string;
  /** The traditional colour by name, and where the name comes from. */
  readonly colourName: string;
  readonly colourSource: SourceId;
  /** Our screen approximation of the colour name; the books give names only. */
  readonly colour: string;
  readonly pattern: Pattern;
  /** Where the motion begins and ends, in our own words, and whose definition that follows. */
  readonly begins: string;
  readonly ends: string;
  readonly definitionSource: SourceId;
  readonly note?: string;
}

type Row = readonly [
  kind: MotionKind,
  name: string,
  colourName: string,
  colourSource: SourceId,
  colour: string,
  pattern: Pattern,
  begins: string,
  ends: string,
  definitionSource: SourceId,
  note?: string,
];

const rows: readonly Row[] = [
  [
    'TE',
    'transport empty',
    'olive green',
    'motion-lecture',
    '#8a8d2b',
    'diagonal',
    'the empty hand starts to move',
    'the hand touches what it reached for, or stops',
    'barnes-memory',
    'Called reach in later books.',
  ],
  [
    'TL',
    'transport loaded',
    'green',
    'motion-lecture',
    '#2e8b3d',
    'wide-diagonal',
    'the hand starts to move with something in it: carrying, sliding, pushing, rolling',
    'the thing arrives and its movement stops',
    'barnes-memory',
    'Called move in later books.',
  ],
  [
    'G',
    'grasp',
    'lake red',
    'motion-lecture',
    '#b3123a',
    'solid',
    'the fingers first touch the thing',
    'the hand controls it',
    'barnes-definitions',
  ],
  [
    'H',
    'hold',
    'gold ochre',
    'motion-lecture',
    '#c98a1b',
    'horizontal',
    'the thing in the hand stops moving and the grip stays',
    'the next motion with that thing starts',
    'barnes-memory',
    'The hand serves as a vice.',
  ],
  [
    'RL',
    'release load',
    'carmine red',
    'motion-lecture',
    '#e0314b',
    'vertical',
    'the thing starts to leave the fingers',
    'the hand is free of it',
    'barnes-memory',
  ],
  [
    'P',
    'position',
    'blue',
    'motion-lecture',
    '#2456c9',
    'cross-diagonal',
    'the hand starts to turn or line up the thing for the place where it must go',
    'it is lined up there',
    'barnes-definitions',
    'May happen during transport loaded.',
  ],
  [
    'PP',
    'pre-position',
    'sky blue',
    'motion-lecture',
    '#7ec8f0',
    'dots',
    'as position',
    'the thing is left in the attitude that a later motion wants',
    'barnes-definitions',
  ],
  [
    'U',
    'use',
    'purple',
    'motion-lecture',
    '#a3238e',
    'grid',
    'a tool or control starts to serve its purpose',
    'its use stops',
    'barnes-definitions',
  ],
  [
    'A',
    'assemble',
    'dark violet',
    'motion-lecture',
    '#4b1e82',
    'wide-diagonal-back',
    'the parts start to go together',
    'they are joined',
    'barnes-definitions',
  ],
  [
    'DA',
    'disassemble',
    'light violet',
    'motion-lecture',
    '#b79be0',
    'diagonal-back',
    'the hand starts to take one part off the other',
    'they are apart',
    'barnes-definitions',
  ],
  [
    'Sh',
    'search',
    'black',
    'motion-lecture',
    '#1a1a1a',
    'dots-dense',
    'eyes or hand start to hunt for the thing',
    'it has been found',
    'barnes',
  ],
  [
    'F',
    'find',
    'grey',
    'motion-lecture',
    '#808080',
    'crosses',
    'the moment at which a search ends',
    'the same moment',
    'barnes',
    'A mental event with no length of its own; Barnes and Groover leave it out.',
  ],
  [
    'St',
    'select',
    'light grey',
    'motion-lecture',
    '#c8c8c8',
    'rings',
    'the hand or the eyes begin to choose one out of several',
    'one has been singled out',
    'barnes-memory',
  ],
  [
    'I',
    'inspect',
    'burnt ochre',
    'motion-lecture',
    '#a0522d',
    'wide-horizontal',
    'the thing starts to be compared with what it should be',
    'the verdict is reached',
    'barnes-memory',
  ],
  [
    'Pn',
    'plan',
    'brown',
    'barnes-memory',
    '#7a4a21',
    'zigzag',
    'work stops to decide what comes next',
    'the decision is made',
    'barnes-memory',
  ],
  [
    'UD',
    'unavoidable delay',
    'yellow ochre',
    'motion-lecture',
    '#d8b13c',
    'wide-vertical',
    'the hand stands idle for a cause that lies in the method: the other hand, a machine',
    'it takes up work again',
    'barnes-memory',
  ],
  [
    'AD',
    'avoidable delay',
    'lemon yellow',
    'barnes-memory',
    '#f5e642',
    'dashes',
    'the hand stands idle though nothing in the method asks for it',
    'it takes up work again',
    'barnes-memory',
  ],
  [
    'R',
    'rest',
    'orange',
    'barnes-memory',
    '#f08a24',
    'plain',
    'the hand stands idle to recover from fatigue',
    'it takes up work again',
    'barnes-memory',
    'In full: rest for overcoming fatigue.',
  ],
  [
    'unmarked',
    'not marked yet',
    'none',
    'ours',
    '#ffffff',
    'empty',
    'where nobody has looked yet',
    'the next motion starts',
    'ours',
    'Not a motion: counts in no figure.',
  ],
];

export const motionFacts: readonly MotionFacts[] = rows.map(
  ([kind, name, colourName, colourSource, colour, pattern, begins, ends, definitionSource, note]) => ({
    kind,
    code: kind === 'unmarked' ? '–' : kind,
    name,
    colourName,
    colourSource,
    colour,
    pattern,
    begins,
    ends,
    definitionSource,
    ...(note === undefined ? {} : { note }),
  }),
);

const byKind = new Map(motionFacts.map((facts) => [facts.kind, facts]));

export const motionKinds = motionFacts.map((facts) => facts.kind);

/** The eighteen, without `unmarked`. */
export const fundamentalMotions = motionFacts.filter((facts) => facts.kind !== 'unmarked');

export function motionFactsOf(kind: MotionKind): MotionFacts {
  const facts = byKind.get(kind);
  if (facts === undefined) throw new RangeError(`not a motion kind: ${kind}`);
  return facts;
}

/** Reads a letter code or a name, in any case; "unmarked" and "–" are the kind unmarked. */
export function parseMotionKind(text: string): MotionKind | undefined {
  const word = text.trim();
  const exact = motionFacts.find((facts) => facts.kind === word || facts.code === word);
  if (exact !== undefined) return exact.kind;
  const lower = word.toLowerCase().replace(/[_-]/g, ' ');
  return motionFacts.find(
    (facts) =>
      facts.kind.toLowerCase() === lower ||
      facts.name.replace('-', ' ') === lower ||
      (facts.kind === 'unmarked' && lower === 'not marked'),
  )?.kind;
}
