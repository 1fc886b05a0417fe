import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { gone } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/** What may lie between letting go of a thing and grasping it again. */
const between: ReadonlySet<MotionKind> = new Set(['TE', 'Sh', 'F', 'St', 'UD', 'AD', 'Pn']);

/** What is made a second time after a thing was dropped. */
const repeatable: ReadonlySet<MotionKind> = new Set(['TL', 'P', 'PP']);

/** Grasped again: from the letting go to the end of the second grasp, or the second of two grasps in a row. */
interface Regrasp {
  readonly object: string;
  readonly pieces: readonly Piece[];
  /** Motions after it that had been made before the thing was let go. */
  readonly redone: readonly Piece[];
}

/** The same thing is grasped twice by the same hand without having been used or laid away in between. */
export const fumble: LeadRule = {
  code: 'fumble',
  name: 'Regrasp and fumble',
  principles: [20, 4],
  limit: `${noiseLimit} Things without a name are left out: they cannot be told from one another.`,
  arrangement: 'kept',
  change:
    'The second grasp is gone, with the letting go and the reaching before it and with what has to be carried or lined up a second time after it.',
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
    const again = list.flatMap(({ pieces }) => pieces);
    const redone = list.flatMap((item) => item.redone);
    const all = list.flatMap((item) => [...item.pieces, ...item.redone]);
    const total = totalTime(all);
    if (isNoise(context, aCycle(context, total))) return [];
    const second = aCycle(context, totalTime(redone));
    const words =
      redone.length === 0
        ? ''
        : ` ${timeText(second, 'seconds')} a cycle of it is carrying or lining up a second time.`;
    return [
      {
        hand,
        about: object,
        traces: list.map(({ pieces, redone: after }) => ({
          cycle: pieces[0]?.cycle ?? 0,
          hand,
          from: pieces[0]?.from ?? 0,
          to: (after.at(-1) ?? pieces.at(-1))?.to ?? 0,
        })),
        evidence: `The ${hand} hand takes ${object} up again ${list.length === 1 ? 'once' : `${list.length} times`}, ${timeWords(context, total)}, ${cycleWords(context, all)}.${words}`,
        figures: [
          {
            name: 'letting go and grasping again',
            value: aCycle(context, totalTime(again)),
            unit: 'time' as const,
          },
          { name: 'made a second time', value: second, unit: 'time' as const },
          { name: 'times', value: list.length, unit: 'count' as const },
        ],
        effects: all.map(gone),
      },
    ];
  });
}

function regraspsOf(pieces: CycleReading['left']): Regrasp[] {
  const found: Regrasp[] = [];
  pieces.forEach((piece, at) => {
    const { object } = piece;
    if (piece.kind !== 'G' || piece.duration === 0 || object === undefined) return;
    let before = at - 1;
    while (between.has(pieces[before]?.kind ?? 'unmarked') && sameThing(pieces[before], piece)) before -= 1;
    const earlier = pieces[before];
    if (earlier === undefined || earlier.object !== object) return;
    const twice = earlier.kind === 'G' && before === at - 1;
    const again = earlier.kind === 'RL' && isSamePlace(pieces, before, at);
    if (twice) found.push({ object, pieces: [piece], redone: [] });
    else if (again) {
      const redone = redoneAfter(pieces, before, at);
      found.push({ object, pieces: pieces.slice(before, at + 1), redone });
    }
  });
  return found;
}

/** The carrying and lining up right after the second grasp that were made to the same place before the release. */
function redoneAfter(pieces: CycleReading['left'], release: number, grasp: number): readonly Piece[] {
  const object = pieces[grasp]?.object;
  const made = new Set<string>();
  const key = ({ kind, motion }: Piece) => `${kind} ${motion?.to ?? ''}`;
  for (let at = release - 1; at >= 0 && pieces[at]?.object === object; at -= 1) {
    const piece = pieces[at];
    if (piece === undefined || !isOnTheWay(piece)) break;
    if (repeatable.has(piece.kind)) made.add(key(piece));
  }
  const rest = pieces.slice(grasp + 1, grasp + 1 + made.size);
  const end = rest.findIndex((piece) => piece.object !== object || !made.has(key(piece)));
  return end < 0 ? rest : rest.slice(0, end);
}

/** Nothing was done with the thing yet: it was only carried, lined up or held. */
function isOnTheWay({ kind }: Piece): boolean {
  return repeatable.has(kind) || kind === 'H';
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
