import { quantileOf } from '../../../ground/numerics/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { classesCaution, motionClasses } from '../../../ground/tables/index.ts';
import type { Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, allPieces, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/**
 * Words by which an analyst notes a motion of a high class: English, our own list. Words that also name what is done to a
 * part (to bend a tab, to twist a collar, the first step, to put back) count only with the words that make them a motion
 * of the body, and none of them after "no", "not" or "without".
 */
const classWords: readonly (readonly [classOf: 4 | 5, words: RegExp])[] = [
  [
    5,
    wordsOf(
      'trunk|torso|upper body|stoop(?:s|ing)?|kneel(?:s|ing)?|crouch(?:es|ing)?|squat(?:s|ting)?',
      'walk(?:s|ing)?|stand(?:s|ing)? up|sit(?:s|ting)? down|from the floor|to the floor',
      '(?:bend|bends|bending|lean|leans|leaning)(?: (?:down|over|forward|forwards|back|low|sideways|out|to|at the waist)|$)',
      '(?:turn|turns|turning|twist|twists|twisting)(?: of)?(?: the)?(?: whole)? (?:body|round to)',
      '(?:step|steps|stepping) (?:to|back|aside|away|over|forward|up|down|round|left|right)',
    ),
  ],
  [
    4,
    wordsOf(
      'shoulder(?! (?:bolt|screw|pin|nut|washer|bolts|screws|pins|nuts|washers))s?|upper arm|overhead|above the head',
      '(?:arm|arms) (?:out)?stretched|(?:out)?stretched (?:arm|arms)|stretches (?:out )?(?:the |an )?arms?',
    ),
  ],
];

function wordsOf(...words: readonly string[]): RegExp {
  return new RegExp(`(?<!\\b(?:no|not|without) )\\b(?:${words.join('|')})(?![a-z])`);
}

/** Motions for which the upper arm or the trunk is needed, where the record says so in words. */
export const bodyMotion: LeadRule = {
  code: 'body-motion',
  name: 'Motions of the shoulder or the trunk',
  principles: [4, 22],
  limit: `${noiseLimit} Only what the words of a note or an object say: trunk, stoop, kneel, walk, bend down, lean over, step to, turn the body and the like (class 5); shoulder, upper arm, overhead, stretched arm (class 4). The list is ours, in English. A place beyond the maximum work area is a lead of long transports.`,
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
  find: (context) => {
    const noted = notedPieces(context);
    return hands.flatMap((hand) => {
      const own = [...noted].filter(([piece]) => piece.hand === hand);
      return [...groupedBy(own, ([, classOf]) => classOf)].flatMap(([classOf, list]) =>
        draft(
          context,
          hand,
          classOf,
          list.map(([piece]) => piece),
          noted,
        ),
      );
    });
  },
};

/** The motions of a high class; each wording is looked at once. */
function notedPieces(context: LeadContext): ReadonlyMap<Piece, 4 | 5> {
  const known = new Map<string | undefined, 4 | 5 | undefined>();
  const classOf = (words: string | undefined) => {
    if (!known.has(words)) known.set(words, classOfWords(words));
    return known.get(words);
  };
  const found = new Map<Piece, 4 | 5>();
  for (const piece of allPieces(context)) {
    if (piece.duration === 0 || piece.kind === 'unmarked') continue;
    const noted = classOf(piece.motion?.note) ?? classOf(piece.object);
    if (noted !== undefined) found.set(piece, noted);
  }
  return found;
}

function classOfWords(words: string | undefined): 4 | 5 | undefined {
  if (words === undefined) return undefined;
  const text = words
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return classWords.find(([, pattern]) => pattern.test(text))?.[0];
}

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  classOf: 4 | 5,
  pieces: readonly Piece[],
  noted: ReadonlyMap<Piece, 4 | 5>,
): LeadDraft[] {
  const total = totalTime(pieces);
  if (isNoise(context, aCycle(context, total))) return [];
  const facts = motionClasses.find((item) => item.class === classOf);
  const plain = new Map(
    [...groupedBy(pieces, ({ kind }) => kind).keys()].map((kind) => [kind, quickest(context, kind, noted)]),
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

/** The lower quartile of the same kind without such words; undefined when there is none. */
function quickest(
  context: LeadContext,
  kind: Piece['kind'],
  noted: ReadonlyMap<Piece, 4 | 5>,
): number | undefined {
  const times = allPieces(context)
    .filter((piece) => piece.kind === kind && piece.duration > 0 && !noted.has(piece))
    .map(({ duration }) => duration as number)
    .sort((a, b) => a - b);
  return times.length === 0 ? undefined : quantileOf(times, 0.25);
}
