import { hands } from '../../../ground/study/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

/** One hand serves as a vice. */
export const hold: LeadRule = {
  code: 'hold',
  name: 'Holding in one hand',
  principles: [18],
  limit: noiseLimit,
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
      return [...groupedBy(holds, ({ object }) => object)].flatMap(([object, pieces]) => {
        const total = totalTime(pieces);
        const time = aCycle(context, total);
        if (isNoise(context, time)) return [];
        return [
          {
            hand,
            about: object,
            traces: pieces.map(traceOf),
            evidence: `The ${hand} hand holds ${object ?? 'something'} for ${timeWords(context, total)}, ${cycleWords(context, pieces)}.`,
            figures: [
              { name: 'hold', value: time, unit: 'time' as const },
              { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' as const },
            ],
            effects: pieces.map(gone),
          },
        ];
      });
    }),
};
