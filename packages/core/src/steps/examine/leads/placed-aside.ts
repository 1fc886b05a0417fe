import { hands } from '../../../ground/study/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import { type CycleReading, type Piece, stateOf } from '../reading/index.ts';
import { gone, shortened } from '../stake/index.ts';
import {
  aCycle,
  allPieces,
  groupedBy,
  isNoise,
  meanCycle,
  noiseLimit,
  totalTime,
  traceOf,
} from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords } from './stretches.ts';

/** Our own choice, no source: below this share of the cycle a part is carried away quickly enough. */
const share = 0.05;

/** The last thing that a hand does in a cycle: carry something away, line it up perhaps, let go. */
interface Disposal {
  readonly carry: Piece;
  readonly placing: readonly Piece[];
  readonly release: Piece;
}

/** The finished part is carried away and placed instead of dropped where it is done. */
export const placedAside: LeadRule = {
  code: 'placed-aside',
  name: 'Laying aside instead of drop delivery',
  principles: [13, 12],
  limit: `${noiseLimit} Said when a part is lined up before it is let go at the end of the cycle, or when carrying it away and letting go takes a twentieth of the cycle or more: our own choice, no source.`,
  arrangement: 'kept',
  change:
    'Lining up is gone; at best the carrying is gone as well, because the part drops where it is done, and the release is as short as one of the quickest quarter in the record.',
  remedies: [
    {
      how: 'eliminate',
      text: 'A chute or an opening right at the place of work: the part falls as it is let go.',
    },
    {
      how: 'combine',
      text: 'Let the next part push the finished one out, or let a foot or the fixture throw it out.',
    },
    {
      how: 'rearrange',
      text: 'Let it go on the way to the next part, so that the carrying is no way of its own.',
    },
    { how: 'simplify', text: 'A box close by that takes the part in any attitude.' },
  ],
  questions: [
    'What happens to the part next: must it lie in order, or is it poured out anyway?',
    'Would a fall hurt the part? Would a soft slide do?',
    'Who takes the box away, and how often?',
  ],
  find: (context) =>
    hands.flatMap((hand) => {
      const found = context.cycles.flatMap((cycle) => disposalOf(cycle[hand]) ?? []);
      const byPlace = groupedBy(found, ({ carry }) => carry.motion?.to);
      return [...byPlace.values()].flatMap((list) => draft(context, hand, list));
    }),
};

/** Undefined when the hand's work of the cycle does not end in this way. */
function disposalOf(pieces: CycleReading['left']): Disposal | undefined {
  const last = pieces.findLastIndex(({ kind }) => stateOf(kind) === 'working' && kind !== 'TE');
  const release = pieces[last];
  if (release?.kind !== 'RL') return undefined;
  let at = last - 1;
  while (pieces[at]?.kind === 'P' || pieces[at]?.kind === 'PP') at -= 1;
  const carry = pieces[at];
  if (carry?.kind !== 'TL' || carry.motion?.to === undefined) return undefined;
  return { carry, placing: pieces.slice(at + 1, last), release };
}

function draft(context: LeadContext, hand: LeadDraft['hand'], list: readonly Disposal[]): LeadDraft[] {
  const all = list.flatMap(({ carry, placing, release }) => [carry, ...placing, release]);
  const placed = list.flatMap(({ placing }) => placing);
  const time = aCycle(context, totalTime(all));
  const part = time / Math.max(1, meanCycle(context));
  if (isNoise(context, time) || (placed.length === 0 && part < share)) return [];
  const [first] = list;
  const to = first?.carry.motion?.to;
  const place = to === undefined ? 'its place' : context.reading.placeName(to);
  const lining =
    placed.length === 0
      ? ''
      : `, ${timeText(aCycle(context, totalTime(placed)), 'seconds')} of it lining it up`;
  const quick = quickRelease(context);
  return [
    {
      hand,
      about: first?.carry.object ?? to,
      traces: list.map(({ carry, release }) => ({ ...traceOf(carry), to: release.to })),
      evidence: `The ${hand} hand carries ${first?.carry.object ?? 'the part'} to ${place} and lets go for ${timeText(time, 'seconds')} a cycle, ${percentText(part, 0)} of it${lining}, ${cycleWords(context, all)}.`,
      figures: [
        { name: 'laying aside', value: time, unit: 'time' },
        { name: 'lining up', value: aCycle(context, totalTime(placed)), unit: 'time' },
        { name: 'share of the cycle', value: part, unit: 'share' },
      ],
      effects: list.flatMap(({ carry, placing, release }) => [
        shortened(carry, 0, carry.duration),
        ...placing.map(gone),
        shortened(release, Math.min(quick, release.duration), release.duration),
      ]),
    },
  ];
}

/** The lower quartile of all releases of the record. */
function quickRelease(context: LeadContext): number {
  const times = allPieces(context)
    .filter(({ kind, duration }) => kind === 'RL' && duration > 0)
    .map(({ duration }) => duration as number)
    .sort((a, b) => a - b);
  return times[Math.floor((times.length - 1) / 4)] ?? 0;
}
