import { hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { Piece } from '../reading/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

const searching: ReadonlySet<MotionKind> = new Set(['Sh', 'F', 'St']);

/** The eyes and the hand hunt for a thing or choose one of several. */
export const search: LeadRule = {
  code: 'search',
  name: 'Searching and selecting',
  principles: [10, 12, 20],
  limit: noiseLimit,
  arrangement: 'kept',
  change:
    'The search and the choice are gone because the thing lies ready, one at a time, in a place of its own.',
  remedies: [
    { how: 'eliminate', text: 'A fixed place for each part and tool, one kind in each bin.' },
    { how: 'eliminate', text: 'A feeder, chute or tray that offers one part at a time.' },
    { how: 'combine', text: 'Parts come joined or in a row, ready to be taken in the order of use.' },
    {
      how: 'simplify',
      text: 'Bins with a lip and a low front, parts that differ in shape or colour, better light.',
    },
  ],
  questions: [
    'Is there more than one kind, size or side to choose from? Could only the right one lie there?',
    'Do the parts hook into one another or lie in a heap?',
    'Is the thing always in the same place when the cycle begins?',
  ],
  find: (context) =>
    hands.flatMap((hand) => {
      const pieces = context.pieces[hand].filter(({ kind, duration }) => searching.has(kind) && duration > 0);
      return [...groupedBy(pieces, ({ object }) => object)].flatMap(([object, group]) =>
        draft(context, hand, object, group),
      );
    }),
};

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  object: string | undefined,
  pieces: readonly Piece[],
): LeadDraft[] {
  const total = totalTime(pieces);
  if (isNoise(context, aCycle(context, total))) return [];
  return [
    {
      hand,
      about: object,
      traces: pieces.map(traceOf),
      evidence: `The ${hand} hand ${verb(pieces)} ${object ?? 'something'} for ${timeWords(context, total)}, ${cycleWords(context, pieces)}.`,
      figures: [
        { name: 'search and select', value: aCycle(context, total), unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
      ],
      effects: pieces.map(gone),
    },
  ];
}

function verb(pieces: readonly Piece[]): string {
  const selects = pieces.some(({ kind }) => kind === 'St');
  const searches = pieces.some(({ kind }) => kind !== 'St');
  return searches && selects ? 'searches for and selects' : searches ? 'searches for' : 'selects';
}
