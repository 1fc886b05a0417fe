import { type Hand, hands } from '../../../ground/study/index.ts';
import { type Segment, stateOf } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, isNoise, noiseLimit } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, otherHand, stretchesOf, timeWords, traceOfStretch } from './stretches.ts';

/** A look or a test for which both hands stop. */
export const inspection: LeadRule = {
  code: 'inspection',
  name: 'Inspection that stops both hands',
  principles: [2, 9, 18],
  limit: noiseLimit,
  arrangement: 'kept',
  change: 'The inspection shrinks: at best it is gone or done beside other work, at worst it stays.',
  remedies: [
    {
      how: 'eliminate',
      text: 'Make the fault impossible: parts that fit one way only, a stop, a gauge in the fixture.',
    },
    {
      how: 'combine',
      text: 'Let the next motion test it: what does not fit does not go on. Let the machine or the fixture test.',
    },
    { how: 'rearrange', text: 'Look while the hands fetch or carry; look at several units at once.' },
    {
      how: 'simplify',
      text: 'Good light, a clear limit sample, the place to be looked at turned towards the eyes.',
    },
  ],
  questions: [
    'What fault is looked for, how often is it found, and what follows when it is missed?',
    'Who asked for this inspection: drawing, customer, law? Where is it written?',
    'Could the cause of the fault be taken away instead?',
  ],
  caution:
    'An inspection may be asked for by safety, quality or law (common practice, no source): never drop or shorten one without those responsible.',
  find: (context) => [
    ...hands.flatMap((hand) => draft(context, hand, (segment) => stopsOther(segment, hand))),
    ...draft(context, 'both', ({ left, right }) => left.kind === 'I' && right.kind === 'I'),
  ],
};

function stopsOther(segment: Segment, hand: Hand): boolean {
  const state = stateOf(segment[otherHand(hand)].kind);
  return segment[hand].kind === 'I' && (state === 'holding' || state === 'idle');
}

function draft(context: LeadContext, hand: Hand | 'both', fits: (segment: Segment) => boolean): LeadDraft[] {
  const { list, total, within } = stretchesOf(context, hand, fits);
  const time = aCycle(context, total);
  if (isNoise(context, time)) return [];
  const inspected = [...within.keys()].filter(({ kind }) => kind === 'I');
  const names = [...new Set(inspected.flatMap(({ object }) => object ?? []))].sort();
  const things = names.length === 0 ? '' : ` ${names.join(', ')}`;
  const who =
    hand === 'both'
      ? `Both hands stand still to inspect${things}`
      : `The ${hand} hand inspects${things} while the ${otherHand(hand)} hand holds or waits`;
  return [
    {
      hand,
      traces: list.map(traceOfStretch),
      evidence: `${who}, ${timeWords(context, total)}, ${cycleWords(context, list)}.`,
      figures: [
        { name: 'inspection', value: time, unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
      ],
      effects: inspected.map((piece) =>
        shortened(piece, piece.duration - (within.get(piece) ?? 0), piece.duration),
      ),
    },
  ];
}
