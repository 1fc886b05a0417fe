import { micros } from '../../../ground/base/index.ts';
import { quantileOf } from '../../../ground/numerics/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { numberText, percentText, timeText } from '../../../ground/units/index.ts';
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

/** Our own choices, no source: a share of the cycle, millimetres (a hand's length), and times the quick release. */
const limits = { share: 0.05, near: 200, slow: 1.5 } as const;

/** The last thing that a hand does in a cycle: carry something away, line it up perhaps, let go. */
interface Disposal {
  readonly carry: Piece;
  readonly placing: readonly Piece[];
  readonly release: Piece;
  /** Where it is laid. */
  readonly place: string;
}

/** The finished part is carried away and placed instead of dropped where it is done. */
export const placedAside: LeadRule = {
  code: 'placed-aside',
  name: 'Laying aside instead of drop delivery',
  principles: [13, 12],
  limit: `${noiseLimit} Said of the last thing a hand lets go in a cycle, at a place where nothing is taken up, worked on or held and where it lets go but once, when it is lined up there, when letting go takes ${numberText(limits.slow, 1)} times the quickest quarter of the releases or more, or when carrying it away and letting go takes ${percentText(limits.share, 0)} of the cycle or more and the way is not known to be under ${limits.near} mm: our own choices, no source.`,
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
    'Is the part laid aside here, or is it fitted into something?',
    'What happens to the part next: must it lie in order, or is it poured out anyway?',
    'Would a fall hurt the part? Would a soft slide do?',
    'Who takes the box away, and how often?',
  ],
  find: (context) => {
    const ends = { left: disposals(context, 'left'), right: disposals(context, 'right') };
    if (ends.left.length + ends.right.length === 0) return [];
    const used = placesOfWork(context);
    const quick = quickRelease(context);
    return hands.flatMap((hand) => {
      const found = ends[hand].filter(({ place }) => !used.has(place));
      const byObject = groupedBy(found, ({ carry }) => carry.object);
      return [...byObject.values()].flatMap((list) => draft(context, hand, list, quick));
    });
  },
};

const working: ReadonlySet<MotionKind> = new Set(['A', 'DA', 'U', 'I', 'H']);

/** Places at which something is taken up, worked on or held: what is let go there is not done with. */
function placesOfWork(context: LeadContext): ReadonlySet<string> {
  const places = new Set<string>();
  for (const { kind, motion } of allPieces(context)) {
    if (kind === 'G' && motion?.from !== undefined) places.add(motion.from);
    if (!working.has(kind)) continue;
    if (motion?.from !== undefined) places.add(motion.from);
    if (motion?.to !== undefined) places.add(motion.to);
  }
  return places;
}

function disposals(context: LeadContext, hand: Hand): Disposal[] {
  return context.cycles.flatMap((cycle) => disposalOf(cycle[hand]) ?? []);
}

/** Undefined when the hand's work of the cycle does not end in this way. */
function disposalOf(pieces: CycleReading['left']): Disposal | undefined {
  const last = pieces.findLastIndex(({ kind }) => stateOf(kind) === 'working' && kind !== 'TE');
  const release = pieces[last];
  if (release?.kind !== 'RL') return undefined;
  let at = last - 1;
  while (pieces[at]?.kind === 'P' || pieces[at]?.kind === 'PP') at -= 1;
  const carry = pieces[at];
  const placing = pieces.slice(at + 1, last);
  const place = release.motion?.to ?? placing.at(-1)?.motion?.to ?? carry?.motion?.to;
  if (carry?.kind !== 'TL' || place === undefined) return undefined;
  const visits = pieces.filter(({ kind, motion }) => kind === 'TL' && motion?.to === place);
  return visits.length > 1 ? undefined : { carry, placing, release, place };
}

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  list: readonly Disposal[],
  quick: number,
): LeadDraft[] {
  const all = list.flatMap(({ carry, placing, release }) => [carry, ...placing, release]);
  const time = aCycle(context, totalTime(all));
  const lining = aCycle(context, totalTime(list.flatMap(({ placing }) => placing)));
  const letting = totalTime(list.map(({ release }) => release)) / list.length;
  const way = longestWay(context, list);
  const part = time / Math.max(1, meanCycle(context));
  const far = part >= limits.share && (way === undefined || way >= limits.near);
  const slow = letting >= limits.slow * quick && !isNoise(context, letting - quick);
  if (isNoise(context, time) || !(lining > 0 || slow || far)) return [];
  const object = list[0]?.carry.object;
  const places = [...new Set(list.map(({ place }) => context.reading.placeName(place)))].join(', ');
  const words = [
    lining === 0 ? '' : `, ${timeText(lining, 'seconds')} of it lining it up`,
    `, ${cycleWords(context, all)}.`,
    slow
      ? ` Letting go takes ${secondsText(letting)}, the quickest quarter of the releases ${secondsText(quick)} or less.`
      : '',
    way === undefined ? '' : ` The way is ${numberText(way, 0)} mm.`,
  ];
  return [
    {
      hand,
      about: object,
      traces: list.map(({ carry, release }) => ({ ...traceOf(carry), to: release.to })),
      evidence: `The ${hand} hand carries ${object ?? 'the part'} to ${places} and lets go for ${timeText(time, 'seconds')} a cycle, ${percentText(part, 0)} of it${words.join('')}`,
      figures: [
        { name: 'laying aside', value: time, unit: 'time' },
        { name: 'lining up', value: lining, unit: 'time' },
        { name: 'one release', value: letting, unit: 'time' },
        { name: 'share of the cycle', value: part, unit: 'share' },
        ...(way === undefined ? [] : [{ name: 'way', value: way, unit: 'length' } as const]),
      ],
      effects: list.flatMap(({ carry, placing, release }) => [
        shortened(carry, 0, carry.duration),
        ...placing.map(gone),
        shortened(release, Math.min(quick, release.duration), release.duration),
      ]),
    },
  ];
}

function secondsText(time: number): string {
  return timeText(micros(Math.round(time)), 'seconds');
}

/** The longest way in millimetres; undefined where a position is not known. */
function longestWay({ reading }: LeadContext, list: readonly Disposal[]): number | undefined {
  const at = new Map(reading.study.places.map((place) => [place.id, place.at]));
  let longest = 0;
  for (const { carry, place } of list) {
    const [from, to] = [at.get(carry.motion?.from ?? ''), at.get(place)];
    if (from === undefined || to === undefined) return undefined;
    longest = Math.max(longest, Math.hypot(to.x - from.x, to.y - from.y));
  }
  return longest;
}

/** The lower quartile of all releases of the record. */
function quickRelease(context: LeadContext): number {
  const times = allPieces(context)
    .filter(({ kind, duration }) => kind === 'RL' && duration > 0)
    .map(({ duration }) => duration as number)
    .sort((a, b) => a - b);
  return times.length === 0 ? 0 : quantileOf(times, 0.25);
}
