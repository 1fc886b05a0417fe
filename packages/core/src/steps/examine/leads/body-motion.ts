import { hands } from '../../../ground/study/index.ts';
import { classesCaution, motionClasses } from '../../../ground/tables/index.ts';
import type { Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, allPieces, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/** Words by which an analyst notes a motion of a high class. English, whole words; our own list. */
const classWords: readonly (readonly [classOf: 4 | 5, words: readonly string[]])[] = [
  [
    5,
    [
      'trunk',
      'torso',
      'bend',
      'bends',
      'bending',
      'stoop',
      'stoops',
      'stooping',
      'lean',
      'leans',
      'leaning',
      'twist',
      'twists',
      'twisting',
      'waist',
      'back',
      'kneel',
      'kneels',
      'squat',
      'squats',
      'step',
      'steps',
      'walk',
      'walks',
      'walking',
      'stands up',
      'stand up',
      'turns round',
      'turn round',
    ],
  ],
  [4, ['shoulder', 'upper arm', 'overhead', 'arm stretched', 'stretches', 'stretched']],
];

/** Motions for which the upper arm or the trunk is needed, where the analyst noted it. */
export const bodyMotion: LeadRule = {
  code: 'body-motion',
  name: 'Motions of the shoulder or the trunk',
  principles: [4, 22],
  limit: `${noiseLimit} Only what a note says: words such as trunk, bend, stoop, step, walk (class 5) and shoulder, upper arm, overhead, stretched (class 4).`,
  arrangement: 'kept',
  change:
    'The motion is brought within reach of the forearm: at best it takes as long as one of the quickest quarter of the same kind in the record that need no such note, at worst it stays.',
  remedies: [
    {
      how: 'rearrange',
      text: 'Bring the place within the sweep of the forearm, at the height of the elbow.',
    },
    {
      how: 'eliminate',
      text: 'Deliver the part to the place of work: a chute, a roller, a lift for the box.',
    },
    { how: 'simplify', text: 'Tilt the bin, take a smaller box, lengthen the handle.' },
  ],
  questions: [
    'What keeps the place where it is: room, weight, a machine?',
    'How often in a shift is this motion made, and with which load?',
  ],
  caution: classesCaution.text,
  find: (context) =>
    hands.flatMap((hand) => {
      const noted = context.pieces[hand].filter(
        (piece) => piece.duration > 0 && classNoted(piece) !== undefined,
      );
      return [...groupedBy(noted, (piece) => classNoted(piece) ?? 4)].flatMap(([classOf, pieces]) =>
        draft(context, hand, classOf, pieces),
      );
    }),
};

function classNoted({ motion, kind }: Piece): 4 | 5 | undefined {
  if (motion?.note === undefined || kind === 'unmarked') return undefined;
  const text = ` ${motion.note.toLowerCase().replace(/[^a-z]+/g, ' ')} `;
  return classWords.find(([, words]) => words.some((word) => text.includes(` ${word} `)))?.[0];
}

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  classOf: 4 | 5,
  pieces: readonly Piece[],
): LeadDraft[] {
  const total = totalTime(pieces);
  if (isNoise(context, aCycle(context, total))) return [];
  const facts = motionClasses.find((item) => item.class === classOf);
  const plain = new Map(
    [...groupedBy(pieces, ({ kind }) => kind).keys()].map((kind) => [kind, quickest(context, kind)]),
  );
  return [
    {
      hand,
      about: `class ${classOf}`,
      traces: pieces.map(traceOf),
      evidence: `Motions of the ${hand} hand about the ${facts?.pivot ?? 'shoulder'} (class ${classOf}) are noted for ${timeWords(context, total)}, ${cycleWords(context, pieces)}.`,
      figures: [
        { name: 'time of these motions', value: aCycle(context, total), unit: 'time' },
        { name: 'motions', value: pieces.length, unit: 'count' },
      ],
      effects: pieces.map((piece) =>
        shortened(piece, plain.get(piece.kind) ?? piece.duration, piece.duration),
      ),
    },
  ];
}

/** The lower quartile of the same kind without such a note; undefined when there is none. */
function quickest(context: LeadContext, kind: Piece['kind']): number | undefined {
  const times = allPieces(context)
    .filter((piece) => piece.kind === kind && piece.duration > 0 && classNoted(piece) === undefined)
    .map(({ duration }) => duration as number)
    .sort((a, b) => a - b);
  return times[Math.floor((times.length - 1) / 4)];
}
