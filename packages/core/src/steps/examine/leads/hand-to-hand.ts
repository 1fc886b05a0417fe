import { lastAtOrBefore, micros } from '../../../ground/base/index.ts';
import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { type Effect, gone, shortened } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, neighbour, noiseLimit, totalTime, traceOf } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, inOrder, timeWords } from './stretches.ts';

/** One hand lets go when the other has it: up to this long apart. Ours. */
const near = micros(100_000);
/** What the giving hand does with the thing before it lets go in the air. */
const carrying: ReadonlySet<MotionKind> = new Set(['TL', 'H', 'G']);

interface Transfer {
  readonly giver: Hand;
  readonly object: string;
  readonly release: Piece;
  readonly grasp: Piece;
  /** The way of the empty hand to the thing, where it is marked. */
  readonly reach: Piece | undefined;
}

/** A thing goes from one hand to the other. */
export const handToHand: LeadRule = {
  code: 'hand-to-hand',
  name: 'Passing from hand to hand',
  principles: [14, 12],
  limit: `Passing: one hand lets go of a thing within ${timeText(near, 'seconds')} of the other grasping a thing of the same name at the same place, or at no place that is marked. The limit is ours. ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'One letting go and one grasp are gone because the same hand keeps the thing; at best the reach for it as well.',
  remedies: [
    { how: 'eliminate', text: 'The hand that works with the thing takes it from its place itself.' },
    { how: 'rearrange', text: 'Bin and place of use on the same side; change the sides of two bins.' },
    { how: 'simplify', text: 'A nest takes the thing, so that neither hand waits for the other.' },
  ],
  questions: [
    'Why does the thing change hands: the side of the bin, the turn it needs, the preferred hand?',
    'Could the first hand do what the second one does with it?',
    'Could the thing lie so that the second hand takes it at once?',
  ],
  find: (context) => {
    const transfers = context.cycles.flatMap((cycle) =>
      hands.flatMap((hand) => passedBy(context, cycle, hand)),
    );
    return [...groupedBy(transfers, ({ giver, object }) => `${giver} ${object}`).values()].flatMap((group) =>
      draft(context, group),
    );
  },
};

function passedBy(context: LeadContext, cycle: CycleReading, giver: Hand): Transfer[] {
  const grasps = groupedBy(
    cycle[otherHand(giver)].filter(({ kind, object, duration }) => kind === 'G' && object && duration > 0),
    ({ object }) => object,
  );
  return cycle[giver].flatMap((release): Transfer[] => {
    const { duration, kind, object } = release;
    if (kind !== 'RL' || object === undefined || duration === 0) return [];
    const list = grasps.get(object) ?? [];
    const grasp = list[lastAtOrBefore(list, release.end + near, ({ start }) => start)];
    if (grasp === undefined || grasp.end < release.start - near) return [];
    const before = neighbour(context, grasp, -1);
    const reach = before?.kind === 'TE' && before.object === object ? before : undefined;
    return isPassing(context, release, grasp, reach) ? [{ giver, object, release, grasp, reach }] : [];
  });
}

/** The thing is let go where it is grasped; without places, while both hands have it. */
function isPassing(context: LeadContext, release: Piece, grasp: Piece, reach: Piece | undefined): boolean {
  const before = neighbour(context, release, -1);
  if (before === undefined || before.object !== release.object || !carrying.has(before.kind)) return false;
  const given = release.motion?.to ?? placeBefore(context, release);
  const taken = grasp.motion?.from ?? reach?.motion?.to;
  if (given !== undefined && taken !== undefined) return given === taken;
  return taken === undefined && grasp.start <= release.start;
}

/** Where the hand had brought the thing. */
function placeBefore(context: LeadContext, release: Piece): string | undefined {
  let piece = neighbour(context, release, -1);
  while (piece !== undefined && piece.object === release.object) {
    const { kind, motion } = piece;
    const place = kind === 'G' ? (motion?.to ?? motion?.from) : motion?.to;
    if (place !== undefined || kind === 'G' || kind === 'RL') return place;
    piece = neighbour(context, piece, -1);
  }
  return undefined;
}

function draft(context: LeadContext, transfers: readonly Transfer[]): LeadDraft[] {
  const [first] = transfers;
  const pieces = inOrder(
    transfers.flatMap(({ release, grasp, reach }) => [release, grasp, reach ?? []].flat()),
  );
  const total = totalTime(pieces);
  if (first === undefined || isNoise(context, aCycle(context, total))) return [];
  const { giver, object } = first;
  const what = transfers.some(({ reach }) => reach !== undefined)
    ? 'letting go, reaching and grasping'
    : 'letting go and grasping';
  return [
    {
      hand: giver,
      about: object,
      traces: pieces.map(traceOf),
      evidence: `The ${giver} hand passes ${object} to the ${otherHand(giver)} hand, ${cycleWords(context, pieces)}: ${what} take ${timeWords(context, total)}.`,
      figures: [
        { name: 'passing', value: aCycle(context, total), unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
        { name: 'in all cycles', value: transfers.length, unit: 'count' },
      ],
      effects: transfers.flatMap(effectsOf),
    },
  ];
}

function effectsOf({ grasp, reach, release }: Transfer): Effect[] {
  const certain = [gone(release), gone(grasp)];
  return reach === undefined ? certain : [...certain, shortened(reach, 0, reach.duration)];
}
