import { hands } from '../../../ground/study/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import type { Piece } from '../reading/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, cycleCount, groupedBy, meanCycle, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';

/** One hand serves as a vice. */
export const hold: LeadRule = {
  code: 'hold',
  name: 'Holding in one hand',
  principles: [18],
  arrangement: 'shared',
  change: 'The hold is gone because something else holds, and the freed hand takes its share of the work.',
  remedies: [
    { how: 'eliminate', text: 'A fixture, nest, clamp or stop holds the part; a foot pedal opens it.' },
    { how: 'combine', text: 'A fixture for two, so that each hand works on a unit of its own.' },
    { how: 'simplify', text: 'Shorten the hold: take the part up later, lay it down sooner.' },
  ],
  questions: [
    'What does the hand prevent: turning, tipping, sliding away? What could prevent it instead?',
    'Could the part stand, lie or hang by its own shape?',
    'Would a fixture let both hands do the same work on two units?',
  ],
  find: (context) =>
    hands.flatMap((hand) => {
      const holds = context.pieces[hand].filter(({ kind, duration }) => kind === 'H' && duration > 0);
      return [...groupedBy(holds, ({ object }) => object)].map(([object, pieces]) =>
        draft(context, hand, object, pieces),
      );
    }),
};

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  object: string | undefined,
  pieces: readonly Piece[],
): LeadDraft {
  const time = aCycle(context, totalTime(pieces));
  const share = time / Math.max(1, meanCycle(context));
  const what = object === undefined ? 'something' : object;
  return {
    hand,
    about: object,
    traces: pieces.map(traceOf),
    evidence: `The ${hand} hand holds ${what} for ${timeText(time, 'seconds')} a cycle, ${percentText(share, 0)} of it, in ${cycleCount(pieces)} of ${context.cycles.length} cycles.`,
    figures: [
      { name: 'hold', value: time, unit: 'time' },
      { name: 'share of the cycle', value: share, unit: 'share' },
    ],
    effects: pieces.map(gone),
  };
}
