import { micros } from '../../../ground/base/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { groupedBy } from './context.ts';
import type { LeadDraft, LeadRule } from './lead.ts';

/** Our own choices, no source. */
const limits = { cycles: 4, faster: 0.08, ofTheGap: 0.25, reasons: 3 } as const;

/** One cycle is much shorter than the others, and it can be said why. */
export const fastCycle: LeadRule = {
  code: 'fast-cycle',
  name: 'One cycle much faster, for a reason that can be named',
  principles: [8],
  limit:
    'Said of the shortest of four cycles or more, when it is at least 8 % shorter than the mean of the others and single kinds of motion make up a quarter of the difference or more: our own choice, no source.',
  arrangement: 'kept',
  change:
    'The motions named take in every cycle no longer than in the fast one, at best; at worst they stay as they are.',
  remedies: [
    {
      how: 'eliminate',
      text: 'What the fast cycle did without: see whether it can be done without every time.',
    },
    {
      how: 'simplify',
      text: 'What was easier in the fast cycle: the way the part lay, the order, the grip. Make it so every time.',
    },
  ],
  questions: [
    'What was different before and in this cycle: how the parts lay, which way was taken?',
    'Was anything left out that is needed: a check, a full turn, a good seat?',
    'Could it be haste? Then it says nothing about the method.',
  ],
  caution:
    'This looks at what the method allowed once, not at the person. A faster pace is no better method and is not to be asked for.',
  find: (context) => {
    const { cycles } = context;
    const [fast] = [...cycles].sort((a, b) => a.duration - b.duration || a.position - b.position);
    if (fast === undefined || cycles.length < limits.cycles) return [];
    const others = cycles.filter((cycle) => cycle !== fast);
    const mean = others.reduce((sum, { duration }) => sum + duration, 0) / others.length;
    const gap = mean - fast.duration;
    if (gap < limits.faster * mean) return [];
    const reasons = reasonsOf(others, fast, gap);
    return reasons.length === 0 ? [] : [draft(fast, mean, reasons)];
  },
};

/** Motions of one kind with one thing in one hand: their time in the fast cycle and in the others. */
interface Reason {
  readonly words: string;
  readonly fast: number;
  readonly mean: number;
  readonly pieces: readonly Piece[];
}

/** The kinds of motion that the fast cycle lacked or had shorter, largest first. A wait or a hold is no reason, it follows from others; nor is rest, which is needed. */
function reasonsOf(others: readonly CycleReading[], fast: CycleReading, gap: number): Reason[] {
  const key = ({ hand, kind, object }: Piece) => `${hand} ${kind} ${object ?? ''}`;
  const counts = ({ kind }: Piece) => kind !== 'unmarked' && kind !== 'UD' && kind !== 'H' && kind !== 'R';
  const pieces = (cycle: CycleReading) => hands.flatMap((hand) => cycle[hand].filter(counts));
  const inFast = groupedBy(pieces(fast), key);
  const inOthers = groupedBy(others.flatMap(pieces), key);
  const time = (list: readonly Piece[]) => list.reduce((sum, { duration }) => sum + duration, 0);
  return [...inOthers]
    .map(([name, list]): Reason => {
      const [first] = list;
      const words =
        first === undefined
          ? name
          : `${motionFactsOf(first.kind).name} ${first.object ?? ''} (${first.hand} hand)`;
      return {
        words: words.replace('  ', ' '),
        fast: time(inFast.get(name) ?? []),
        mean: time(list) / others.length,
        pieces: list,
      };
    })
    .filter((reason) => reason.mean - reason.fast >= limits.ofTheGap * gap)
    .sort((a, b) => b.mean - b.fast - (a.mean - a.fast) || (a.words < b.words ? -1 : 1))
    .slice(0, limits.reasons);
}

function draft(fast: CycleReading, mean: number, reasons: readonly Reason[]): LeadDraft {
  const text = (time: number) => timeText(micros(Math.round(time)), 'seconds');
  const words = reasons.map((reason) =>
    reason.fast === 0
      ? `without ${reason.words}, ${text(reason.mean)} in the others`
      : `${reason.words} ${text(reason.fast)} against ${text(reason.mean)}`,
  );
  const name = fast.number === 0 ? 'The record' : `Cycle ${fast.number}`;
  return {
    hand: 'both',
    about: `cycle ${fast.number}`,
    traces: [{ cycle: fast.position, hand: 'both', from: fast.from, to: fast.to }],
    evidence: `${name} takes ${text(fast.duration)}, ${percentText(1 - fast.duration / mean, 0)} less than the others on average (${text(mean)}): ${words.join('; ')}.`,
    figures: [
      { name: 'fast cycle', value: fast.duration, unit: 'time' },
      { name: 'mean of the others', value: Math.round(mean), unit: 'time' },
    ],
    effects: reasons.flatMap((reason) => broughtDown(reason)),
  };
}

/** Each cycle's motions of the kind are brought to the time of the fast one, in the proportion in which they stand. */
function broughtDown({ pieces, fast }: Reason) {
  return [...groupedBy(pieces, ({ cycle }) => cycle).values()].flatMap((list) => {
    const time = list.reduce((sum, { duration }) => sum + duration, 0);
    const share = time === 0 ? 1 : Math.min(1, fast / time);
    return list.map((piece) => shortened(piece, piece.duration * share, piece.duration));
  });
}
