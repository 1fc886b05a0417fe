import type { Segment } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, isNoise, noiseLimit } from './context.ts';
import type { LeadRule } from './lead.ts';
import { cycleShare, cycleWords, stretchesOf, timeWords, traceOfStretch } from './stretches.ts';

/** Both hands only hold or wait: a machine or a process sets the time. */
export const machineWait: LeadRule = {
  code: 'machine-wait',
  name: 'Both hands wait for a machine or a process',
  principles: [2],
  limit: `${noiseLimit} Two holds at once count as a wait: nothing is done meanwhile by either hand. That is our reading.`,
  arrangement: 'kept',
  change:
    'The common wait shrinks: at best it is gone, at worst it stays because the process needs its time.',
  remedies: [
    {
      how: 'rearrange',
      text: 'Do inside the wait what is now done before or after it: fetch, lay away, make the next unit ready.',
    },
    { how: 'combine', text: 'Serve a second place or a second machine in the time of the wait.' },
    {
      how: 'simplify',
      text: 'Shorten the process: less stroke and overrun, an earlier start, a stop and an ejection of its own.',
    },
  ],
  questions: [
    'Is there a machine or a process at all, or do the hands wait for one another?',
    'What sets the time of the process, and when did somebody last look at it?',
    'Must anybody stand by while it runs?',
    'Which work of the cycle could be done inside this time?',
  ],
  caution:
    'Guards, two-hand controls and duties to watch are there for safety (common practice, no source): change none without those responsible, and keep to the local rules.',
  find: (context) => {
    const { list, total, within } = stretchesOf(context, 'both', isProcessWait);
    const time = aCycle(context, total);
    if (isNoise(context, time)) return [];
    return [
      {
        hand: 'both',
        traces: list.map(traceOfStretch),
        evidence: `Both hands only wait or hold for ${timeWords(context, total)}, ${cycleWords(context, list)}.`,
        figures: [
          { name: 'common wait', value: time, unit: 'time' },
          { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
        ],
        effects: [...within].map(([piece, inside]) =>
          shortened(piece, piece.duration - inside, piece.duration),
        ),
      },
    ];
  },
};

function isProcessWait({ left, right }: Segment): boolean {
  return [left, right].every(({ kind }) => kind === 'UD' || kind === 'H');
}
