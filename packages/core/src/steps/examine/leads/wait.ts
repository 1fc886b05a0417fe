import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import { type Segment, stateOf } from '../reading/index.ts';
import { gone, shortened } from '../stake/index.ts';
import { aCycle, isNoise, noiseLimit } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import {
  cycleShare,
  cycleWords,
  type Stretches,
  stretchesOf,
  timeWords,
  traceOfStretch,
} from './stretches.ts';

/** A hand stands still while the other works, or both stand still together. */
export const wait: LeadRule = {
  code: 'wait',
  name: 'Idle and waiting',
  principles: [2],
  limit: `${noiseLimit} Rest is never proposed away. Where both hands only hold or wait, a machine sets the time: a lead of its own.`,
  arrangement: 'shared',
  change:
    'The wait is gone because the waiting hand takes its share of the work or, where both hands stand idle, because nothing keeps them.',
  remedies: [
    { how: 'eliminate', text: 'Take away what the hand waits for: let it begin its own work sooner.' },
    {
      how: 'combine',
      text: 'Give the waiting hand work of its own beside the other: the same work on a second unit.',
    },
    { how: 'rearrange', text: 'Fetch the next part or clear the finished one during the wait.' },
    {
      how: 'simplify',
      text: 'Spread the work so that what is left of the wait falls at the end of the cycle.',
    },
  ],
  questions: [
    'What does the hand wait for: the other hand, a machine, a part, a signal?',
    'Which motions of the other hand could this hand do in that time?',
    'Is the wait needed as a rest? Then mark it as rest.',
  ],
  find: (context) => [...hands.flatMap((hand) => oneWaits(context, hand)), ...bothIdle(context)],
};

function oneWaits(context: LeadContext, hand: Hand): LeadDraft[] {
  const other = otherHand(hand);
  const waits = stretchesOf(
    context,
    hand,
    (segment) => segment[hand].kind === 'UD' && stateOf(segment[other].kind) === 'working',
  );
  if (isNoise(context, aCycle(context, waits.total))) return [];
  const rest = restWords(context, (segment) => segment[hand].kind === 'R');
  return [
    {
      hand,
      traces: waits.list.map(traceOfStretch),
      evidence: `The ${hand} hand waits for ${timeWords(context, waits.total)}, while the ${other} hand works, ${cycleWords(context, waits.list)}.${rest}`,
      figures: figuresOf(context, waits, 'waiting'),
      effects: [...waits.within.keys()].filter((piece) => piece.hand === hand).map(gone),
    },
  ];
}

function bothIdle(context: LeadContext): LeadDraft[] {
  const idle = stretchesOf(context, 'both', ({ left, right }) => {
    const kinds = [left.kind, right.kind];
    const still = kinds.every((kind) => stateOf(kind) === 'idle' && kind !== 'R');
    return still && kinds.some((kind) => kind !== 'UD');
  });
  if (isNoise(context, aCycle(context, idle.total))) return [];
  const rest = restWords(context, ({ left, right }) => left.kind === 'R' && right.kind === 'R');
  return [
    {
      hand: 'both',
      traces: idle.list.map(traceOfStretch),
      evidence: `Both hands stand idle together for ${timeWords(context, idle.total)}, ${cycleWords(context, idle.list)}.${rest}`,
      figures: figuresOf(context, idle, 'both idle'),
      // A wait beside it follows of itself.
      effects: [...idle.within]
        .filter(([{ kind }]) => kind !== 'UD')
        .map(([piece, time]) => shortened(piece, piece.duration - time, piece.duration - time)),
      arrangement: 'kept',
    },
  ];
}

function figuresOf(context: LeadContext, { total }: Stretches, name: string): LeadDraft['figures'] {
  return [
    { name, value: aCycle(context, total), unit: 'time' },
    { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
  ];
}

function restWords(context: LeadContext, fits: (segment: Segment) => boolean): string {
  const { total } = stretchesOf(context, 'both', fits);
  if (total === 0) return '';
  return ` Rest of ${timeText(aCycle(context, total), 'seconds')} a cycle is left as it is.`;
}
