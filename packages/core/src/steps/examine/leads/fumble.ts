import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/** What may lie between letting go of a thing and grasping it again. */
const between: ReadonlySet<MotionKind> = new Set(['TE', 'Sh', 'F', 'St', 'UD', 'AD', 'Pn']);

/** Grasped again: from the letting go to the end of the second grasp, or the second of two grasps in a row. */
interface Regrasp {
  readonly object: string | undefined;
  readonly pieces: readonly Piece[];
}

/** The same thing is grasped twice by the same hand without having been used or laid away in between. */
export const fumble: LeadRule = {
  code: 'fumble',
  name: 'Regrasp and fumble',
  principles: [20, 4],
  limit: noiseLimit,
  arrangement: 'kept',
  change: 'The second grasp is gone, with the letting go and the reaching before it.',
  remedies: [
    { how: 'eliminate', text: 'Offer the part so that the first grasp is the one with which it is used.' },
    {
      how: 'combine',
      text: 'Do with one grip what is now done with two: a longer handle, a stop to push against, a fixture that turns.',
    },
    {
      how: 'simplify',
      text: 'Parts that are easy to hold: a recess in the bin, a soft floor to pick from, no oil on the grip.',
    },
  ],
  questions: [
    'Is it the same in every cycle, and so part of the method, or does it happen now and then?',
    'In which attitude is the part taken, and in which is it needed?',
    'Why is the grip changed: force, room, view?',
  ],
  find: (context) => hands.flatMap((hand) => draftsOf(context, hand)),
};

function draftsOf(context: LeadContext, hand: Hand): LeadDraft[] {
  const found = context.cycles.flatMap((cycle) => regraspsOf(cycle[hand]));
  return [...groupedBy(found, ({ object }) => object)].flatMap(([object, list]) => {
    const pieces = list.flatMap((item) => item.pieces);
    const total = totalTime(pieces);
    if (isNoise(context, aCycle(context, total))) return [];
    return [
      {
        hand,
        about: object,
        traces: list.map((item) => ({
          cycle: item.pieces[0]?.cycle ?? 0,
          hand,
          from: item.pieces[0]?.from ?? 0,
          to: item.pieces.at(-1)?.to ?? 0,
        })),
        evidence: `The ${hand} hand takes ${object ?? 'a thing'} up again ${list.length === 1 ? 'once' : `${list.length} times`}, ${timeWords(context, total)}, ${cycleWords(context, pieces)}.`,
        figures: [
          { name: 'letting go and grasping again', value: aCycle(context, total), unit: 'time' as const },
          { name: 'times', value: list.length, unit: 'count' as const },
        ],
        effects: pieces.map(gone),
      },
    ];
  });
}

function regraspsOf(pieces: CycleReading['left']): Regrasp[] {
  const found: Regrasp[] = [];
  pieces.forEach((piece, at) => {
    if (piece.kind !== 'G' || piece.duration === 0) return;
    let before = at - 1;
    while (between.has(pieces[before]?.kind ?? 'unmarked') && sameThing(pieces[before], piece)) before -= 1;
    const earlier = pieces[before];
    if (earlier === undefined || earlier.object !== piece.object) return;
    const twice = earlier.kind === 'G' && before === at - 1;
    const again = earlier.kind === 'RL' && isSamePlace(pieces, before, at);
    if (twice) found.push({ object: piece.object, pieces: [piece] });
    else if (again) found.push({ object: piece.object, pieces: pieces.slice(before, at + 1) });
  });
  return found;
}

/** A pause may stand between; a reach must be for the same thing. */
function sameThing(between: Piece | undefined, grasp: Piece): boolean {
  return between?.object === undefined || between.object === grasp.object;
}

/**
 * Whether a grasp takes up what the release before it let go. It does when it follows at once, or when its place is where
 * that thing was last; a grasp at another place, or at one that is not known after a reach, takes up another of its kind.
 */
function isSamePlace(pieces: CycleReading['left'], release: number, grasp: number): boolean {
  const taken = pieces[grasp]?.motion?.from;
  if (taken === undefined) return grasp === release + 1;
  for (let at = release; at >= 0 && pieces[at]?.object === pieces[grasp]?.object; at -= 1) {
    const place = pieces[at]?.motion?.to;
    if (place !== undefined) return place === taken;
    if (pieces[at]?.kind === 'G') return pieces[at]?.motion?.from === taken;
  }
  return false;
}
