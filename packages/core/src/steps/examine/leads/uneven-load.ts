import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import { type Segment, stateOf } from '../reading/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, isNoise, noiseLimit } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { stretchesOf, traceOfStretch } from './stretches.ts';

/** A hand that works less than this share of the other's working time has an unequal load. Ours. */
const evenShare = 0.75;

/** One hand does most of the work. */
export const unevenLoad: LeadRule = {
  code: 'uneven-load',
  name: 'Unequal load of the hands',
  principles: [1, 2],
  limit: `Unequal: one hand works less than ${percentText(evenShare, 0)} of the time the other works, and half of the difference is no less than the floor; both limits are ours. ${noiseLimit}`,
  arrangement: 'shared',
  change:
    'The holds and waits of the hand with less work are gone, and both hands take an equal share of what is left.',
  remedies: [
    { how: 'combine', text: 'Both hands do the same work at the same time, each on a unit of its own.' },
    {
      how: 'rearrange',
      text: 'Bins, tools and the place for finished parts on the side of the hand with less work.',
    },
    { how: 'simplify', text: 'A fixture holds, so that both hands are free to work.' },
  ],
  questions: [
    'Which motions of the busier hand could the other hand do as well as they are done now?',
    'Does the busier hand do it because of where things lie, or because of what it asks of the hand?',
    'Would two units at a time give both hands the same work?',
  ],
  find,
};

function find(context: LeadContext): LeadDraft[] {
  const times = workingTimes(context);
  const busy: Hand = times.left > times.right ? 'left' : 'right';
  const less = otherHand(busy);
  const halfOfGap = aCycle(context, (times[busy] - times[less]) / 2);
  if (times[less] >= evenShare * times[busy] || isNoise(context, halfOfGap)) return [];
  const alone = stretchesOf(
    context,
    busy,
    (segment) => bothMarked(segment) && works(segment, busy) && !works(segment, less),
  );
  const effects = [...alone.within.keys()]
    .filter(({ hand, kind }) => hand === less && (kind === 'UD' || kind === 'AD' || kind === 'H'))
    .map(gone);
  if (effects.length === 0) return [];
  const share = times[less] / times[busy];
  const [most, least] = [aCycle(context, times[busy]), aCycle(context, times[less])];
  return [
    {
      hand: 'both',
      traces: alone.list.map(traceOfStretch),
      evidence: `The ${busy} hand works ${timeText(most, 'seconds')} a cycle, the ${less} hand ${timeText(least, 'seconds')}: ${percentText(share, 0)} of it. For ${timeText(aCycle(context, alone.total), 'seconds')} a cycle the ${busy} hand works alone.`,
      figures: [
        { name: `working, ${busy} hand`, value: most, unit: 'time' },
        { name: `working, ${less} hand`, value: least, unit: 'time' },
        { name: 'less to more', value: share, unit: 'ratio' },
        { name: 'works alone', value: aCycle(context, alone.total), unit: 'time' },
      ],
      effects,
    },
  ];
}

/** Over all cycles, where both hands are marked. */
function workingTimes(context: LeadContext): Record<Hand, Micros> {
  const times = { left: 0, right: 0 };
  for (const segments of context.segments) {
    for (const segment of segments) {
      if (!bothMarked(segment)) continue;
      for (const hand of hands) if (works(segment, hand)) times[hand] += segment.duration;
    }
  }
  return { left: micros(times.left), right: micros(times.right) };
}

function bothMarked({ left, right }: Segment): boolean {
  return left.kind !== 'unmarked' && right.kind !== 'unmarked';
}

function works(segment: Segment, hand: Hand): boolean {
  return stateOf(segment[hand].kind) === 'working';
}
