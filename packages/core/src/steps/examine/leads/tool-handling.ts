import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import type { Piece } from '../reading/index.ts';
import { gone, shortened } from '../stake/index.ts';
import {
  aCycle,
  allPieces,
  cycleCount,
  groupedBy,
  isNoise,
  noiseLimit,
  totalTime,
  traceOf,
} from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

const handling: ReadonlySet<MotionKind> = new Set(['TE', 'G', 'TL', 'PP', 'RL']);

/** A tool is taken up and laid down again in every cycle. */
export const toolHandling: LeadRule = {
  code: 'tool-handling',
  name: 'Taking up and laying down a tool in every cycle',
  principles: [18, 19, 20],
  limit: `A tool is a thing that is used (U) and let go in the same cycle, or that goes back to the place it came from; it counts when that happens in at least half of the cycles. The rule is ours. ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'At best the tool is neither taken up nor laid down; at the worst only the pre-positioning is gone, because a holder does it.',
  remedies: [
    { how: 'eliminate', text: 'A fixture, a foot pedal or the machine does what the tool does.' },
    {
      how: 'combine',
      text: 'Two tools in one, or a tool that stays in the hand while the fingers do the next motion.',
    },
    { how: 'rearrange', text: 'Several units in a row for one taking up of the tool.' },
    {
      how: 'simplify',
      text: 'The tool hangs on a spring or stands in a holder, ready as it is used, next to where it is used.',
    },
  ],
  questions: [
    'Could the tool stay in the palm until the next cycle?',
    'Could one taking up serve several units?',
    'Does the tool hang or stand where and how the hand uses it?',
  ],
  find: (context) => {
    const used = new Set(
      allPieces(context).flatMap(({ kind, object }) => (kind === 'U' && object ? [object] : [])),
    );
    return hands.flatMap((hand) => {
      const named = context.pieces[hand].filter(
        ({ object, duration }) => object !== undefined && duration > 0,
      );
      return [...groupedBy(named, ({ object }) => object ?? '')].flatMap(([object, pieces]) =>
        draft(context, hand, object, handled(pieces, used.has(object))),
      );
    });
  },
};

/** The motions of getting and laying down in the cycles in which the thing is handled as a tool. */
function handled(pieces: readonly Piece[], used: boolean): Piece[] {
  return [...groupedBy(pieces, ({ cycle }) => cycle).values()].flatMap((inCycle) => {
    const taken = inCycle.some(({ kind }) => kind === 'G') && inCycle.some(({ kind }) => kind === 'RL');
    if (!taken || !(used || isReturned(inCycle))) return [];
    return inCycle.filter(({ kind }) => handling.has(kind));
  });
}

/** Grasped at a place, carried away and let go at the same place. */
function isReturned(pieces: readonly Piece[]): boolean {
  let [origin, place, away]: [string | undefined, string | undefined, boolean] = [
    undefined,
    undefined,
    false,
  ];
  for (const { kind, motion } of pieces) {
    if (kind === 'G') [origin, place, away] = [motion?.from, motion?.from, false];
    if (kind === 'TL' && motion?.to !== undefined) {
      place = motion.to;
      away ||= place !== origin;
    }
    if (kind === 'RL' && away && origin !== undefined && (motion?.to ?? place) === origin) return true;
  }
  return false;
}

function draft(context: LeadContext, hand: Hand, object: string, pieces: readonly Piece[]): LeadDraft[] {
  const total = totalTime(pieces);
  const often = 2 * cycleCount(pieces) >= context.cycles.length;
  if (!often || isNoise(context, aCycle(context, total))) return [];
  const before = totalTime(pieces.filter(({ kind }) => kind === 'PP'));
  const prePosition = aCycle(context, before);
  const words = before === 0 ? '' : `; ${timeText(prePosition, 'seconds')} of that is pre-positioning`;
  return [
    {
      hand,
      about: object,
      traces: pieces.map(traceOf),
      evidence: `The ${hand} hand takes up ${object} and lays it down ${cycleWords(context, pieces)}: ${timeWords(context, total)}${words}.`,
      figures: [
        { name: 'taking up and laying down', value: aCycle(context, total), unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
        { name: 'pre-position', value: prePosition, unit: 'time' },
      ],
      effects: pieces.map((piece) =>
        piece.kind === 'PP' ? gone(piece) : shortened(piece, 0, piece.duration),
      ),
    },
  ];
}
