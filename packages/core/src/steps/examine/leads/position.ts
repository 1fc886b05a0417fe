import { type Micros, micros } from '../../../ground/base/index.ts';
import { quantileOf } from '../../../ground/numerics/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import { type Piece, stateOf } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/** Positioning has more than its share from this share of a hand's working time on. Ours. */
const fullShare = 0.1;
/** Fewer occurrences say nothing about their own best quarter. Ours. */
const enough = 4;

/** Lining things up takes long. */
export const position: LeadRule = {
  code: 'position',
  name: 'Position taking more than its share',
  principles: [20, 7],
  limit: `More than its share: positioning takes ${percentText(fullShare, 0)} of the hand's working time or more; the best quarter is used from ${enough} occurrences on. Both limits are ours, without a source. ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'At best a guide or a stop makes lining up needless; at the worst each one comes down to the lower quartile of the same motion in this record, and to nothing shorter when there are too few of them.',
  remedies: [
    { how: 'eliminate', text: 'Guides, funnels and stops lead the part into place without lining up.' },
    {
      how: 'combine',
      text: 'The part comes in the attitude in which it is used, so that it is lined up on the way.',
    },
    { how: 'simplify', text: 'Chamfers, larger clearances, parts that fit either way round.' },
    {
      how: 'simplify',
      text: 'The place at which the eyes must look lies in front, well lit, for one hand at a time.',
    },
  ],
  questions: [
    'What has to be lined up: an edge, a hole, a thread, a mark? How much play does it need?',
    'Could the part be symmetrical, or be marked by its shape?',
    'Why do the quickest ones go so much quicker?',
  ],
  find: (context) => hands.flatMap((hand) => inHand(context, hand)),
};

function inHand(context: LeadContext, hand: Hand): LeadDraft[] {
  const pieces = context.pieces[hand];
  const working = totalTime(pieces.filter(({ kind }) => stateOf(kind) === 'working'));
  const positions = pieces.filter(({ kind, duration }) => kind === 'P' && duration > 0);
  if (totalTime(positions) < fullShare * working) return [];
  return [...groupedBy(positions, ({ object }) => object)].flatMap(([object, group]) =>
    draft(context, hand, object, group, working),
  );
}

function draft(
  context: LeadContext,
  hand: Hand,
  object: string | undefined,
  pieces: readonly Piece[],
  working: Micros,
): LeadDraft[] {
  const total = totalTime(pieces);
  if (isNoise(context, aCycle(context, total))) return [];
  const sorted = pieces.map(({ duration }) => duration).sort((a, b) => a - b);
  const quartile = sorted.length < enough ? undefined : micros(Math.round(quantileOf(sorted, 0.25)));
  const share = total / working;
  return [
    {
      hand,
      about: object,
      traces: pieces.map(traceOf),
      evidence: `The ${hand} hand positions ${object ?? 'something'} for ${timeWords(context, total)} and ${percentText(share, 0)} of the hand's working time, ${cycleWords(context, pieces)}.${quartileWords(sorted, quartile)}`,
      figures: [
        { name: 'position', value: aCycle(context, total), unit: 'time' },
        { name: "share of the hand's working time", value: share, unit: 'share' },
        ...(quartile === undefined
          ? []
          : [{ name: 'lower quartile of one', value: quartile, unit: 'time' } as const]),
      ],
      effects: pieces.map((piece) => shortened(piece, 0, quartile ?? piece.duration)),
    },
  ];
}

function quartileWords(sorted: readonly Micros[], quartile: Micros | undefined): string {
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (quartile === undefined || least === undefined || most === undefined) return '';
  return ` One takes ${timeText(least, 'seconds')} to ${timeText(most, 'seconds')}; a quarter of the ${sorted.length} take no more than ${timeText(quartile, 'seconds')}.`;
}
