import { hands } from '../../../ground/study/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

const words = {
  AD: 'stands idle though nothing in the method asks for it',
  Pn: 'stands still for a decision',
} as const;

/** Idle without a cause in the method, or work that stops for a decision. */
export const avoidableDelay: LeadRule = {
  code: 'avoidable-delay',
  name: 'Avoidable delay and planning',
  principles: [2, 8],
  limit: noiseLimit,
  arrangement: 'kept',
  change: 'The delay is gone.',
  remedies: [
    {
      how: 'eliminate',
      text: 'One taught sequence in which nothing has to be decided; the next part lies ready.',
    },
    { how: 'simplify', text: 'A picture or a sample at the workplace shows what comes next.' },
  ],
  questions: [
    'What happened here: a question, a doubt, a disturbance?',
    'Is the marking right, or was there a cause outside this hand that the film does not show?',
    'Was it needed as a rest? Then mark it as rest.',
  ],
  caution:
    'Such a delay says something about the method and how it is taught, not about the person. Time to recover is no avoidable delay; local rules and qualified people say how much is needed.',
  find: (context) =>
    hands.flatMap((hand) =>
      (['AD', 'Pn'] as const).flatMap((kind) => {
        const pieces = context.pieces[hand].filter((piece) => piece.kind === kind && piece.duration > 0);
        const total = totalTime(pieces);
        const time = aCycle(context, total);
        if (isNoise(context, time)) return [];
        return [
          {
            hand,
            about: kind === 'Pn' ? 'plan' : undefined,
            traces: pieces.map(traceOf),
            evidence: `The ${hand} hand ${words[kind]}, ${timeWords(context, total)}, ${cycleWords(context, pieces)}.`,
            figures: [
              { name: kind === 'Pn' ? 'plan' : 'avoidable delay', value: time, unit: 'time' as const },
              { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' as const },
            ],
            effects: pieces.map(gone),
          },
        ];
      }),
    ),
};
