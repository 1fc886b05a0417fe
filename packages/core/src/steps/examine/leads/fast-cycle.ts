import { micros } from '../../../ground/base/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { type MotionKind, motionFactsOf } from '../../../ground/tables/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { groupedBy } from './context.ts';
import type { LeadDraft, LeadRule } from './lead.ts';

/** Our own choices, no source. */
const limits = { cycles: 4, faster: 0.08, ofTheGap: 0.25, beyondPace: 2, tried: 3 } as const;

/** Without them the work is not done: a cycle that lacks one is no whole cycle. */
const essential: ReadonlySet<MotionKind> = new Set(['A', 'U', 'DA']);
/** A wait follows from other motions; rest and inspection are needed and no reason to go faster. */
const noReason: ReadonlySet<MotionKind> = new Set(['unmarked', 'UD', 'R', 'I']);

/** One cycle is much shorter than the others, and it can be said why. */
export const fastCycle: LeadRule = {
  code: 'fast-cycle',
  name: 'One cycle much faster, for a reason that can be named',
  principles: [8],
  limit:
    'Said of the shortest of four cycles or more that has all the assembling, using and taking apart of the others, when it is at least 8 % shorter than the mean of the others and single kinds of motion make up a quarter of the difference or more: motions it had none of, or that it shortened at least twice as much as the whole cycle, so that pace alone is no reason. A hold counts only where nothing else explains it. All of this is our own choice, no source.',
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
  find: ({ cycles }) => {
    if (cycles.length < limits.cycles) return [];
    const shortest = [...cycles].sort((a, b) => a.duration - b.duration || a.position - b.position);
    for (const fast of shortest.slice(0, limits.tried)) {
      const found = compared(cycles, fast);
      if (found !== undefined) return [found];
    }
    return [];
  },
};

/** Undefined when the cycle is not much shorter, not whole, or nothing explains it. */
function compared(cycles: readonly CycleReading[], fast: CycleReading): LeadDraft | undefined {
  const others = cycles.filter((cycle) => cycle !== fast);
  const mean = others.reduce((sum, { duration }) => sum + duration, 0) / others.length;
  if (mean - fast.duration < limits.faster * mean || fewer(others, fast, essential)) return undefined;
  const reasons = reasonsOf(others, fast, mean);
  if (reasons.length === 0) return undefined;
  return draft(fast, mean, reasons, fewer(others, fast, new Set(['I'])));
}

/** Whether the cycle has fewer motions of these kinds with some thing than the middle one of the others. */
function fewer(others: readonly CycleReading[], fast: CycleReading, kinds: ReadonlySet<MotionKind>): boolean {
  const countsOf = (cycle: CycleReading) => {
    const pieces = hands.flatMap((hand) => cycle[hand].filter(({ kind }) => kinds.has(kind)));
    return groupedBy(pieces, ({ kind, object }) => `${kind} ${object ?? ''}`);
  };
  const own = countsOf(fast);
  const counts = new Map<string, number[]>();
  for (const cycle of others) {
    for (const [key, list] of countsOf(cycle)) {
      const known = counts.get(key);
      if (known === undefined) counts.set(key, [list.length]);
      else known.push(list.length);
    }
  }
  return [...counts].some(([key, known]) => {
    const sorted = [...new Array<number>(others.length - known.length).fill(0), ...known].sort(
      (a, b) => a - b,
    );
    return (own.get(key)?.length ?? 0) < (sorted[Math.floor((sorted.length - 1) / 2)] ?? 0);
  });
}

/** Motions of one kind with one thing in one hand: their time in the fast cycle and in the others. */
interface Reason {
  readonly words: string;
  readonly fast: number;
  readonly mean: number;
  readonly pieces: readonly Piece[];
}

/** The kinds of motion that the fast cycle lacked or had shorter, largest first; holds only where there is no other. */
function reasonsOf(others: readonly CycleReading[], fast: CycleReading, mean: number): Reason[] {
  const gap = mean - fast.duration;
  const shorter = kindsOf(others, fast).filter(
    (reason) =>
      reason.mean - reason.fast >= limits.ofTheGap * gap &&
      (reason.fast === 0 || 1 - reason.fast / reason.mean >= (limits.beyondPace * gap) / mean),
  );
  const better = shorter.filter(({ pieces }) => pieces[0]?.kind !== 'H');
  return (better.length > 0 ? better : shorter).sort(
    (a, b) => b.mean - b.fast - (a.mean - a.fast) || (a.words < b.words ? -1 : 1),
  );
}

function kindsOf(others: readonly CycleReading[], fast: CycleReading): Reason[] {
  const key = ({ hand, kind, object }: Piece) => `${hand} ${kind} ${object ?? ''}`;
  const pieces = (cycle: CycleReading) =>
    hands.flatMap((hand) => cycle[hand].filter(({ kind }) => !noReason.has(kind)));
  const inFast = groupedBy(pieces(fast), key);
  const inOthers = groupedBy(others.flatMap(pieces), key);
  const time = (list: readonly Piece[]) => list.reduce((sum, { duration }) => sum + duration, 0);
  return [...inOthers].map(([name, list]): Reason => {
    const [first] = list;
    const words =
      first === undefined
        ? [name]
        : [motionFactsOf(first.kind).name, first.object, `(${first.hand} hand)`].filter(Boolean);
    return {
      words: words.join(' '),
      fast: time(inFast.get(name) ?? []),
      mean: time(list) / others.length,
      pieces: list,
    };
  });
}

function draft(
  fast: CycleReading,
  mean: number,
  reasons: readonly Reason[],
  uninspected: boolean,
): LeadDraft {
  const text = (time: number) => timeText(micros(Math.round(time)), 'seconds');
  const words = reasons.map((reason) =>
    reason.fast === 0
      ? `without ${reason.words}, ${text(reason.mean)} in the others`
      : `${reason.words} ${text(reason.fast)} against ${text(reason.mean)}`,
  );
  const warning = uninspected
    ? ' It has less inspection than the others: see whether a check was left out.'
    : '';
  return {
    hand: 'both',
    about: `cycle ${fast.number}`,
    traces: [{ cycle: fast.position, hand: 'both', from: fast.from, to: fast.to }],
    evidence: `Cycle ${fast.number} takes ${text(fast.duration)}, ${percentText(1 - fast.duration / mean, 0)} less than the others on average (${text(mean)}): ${words.join('; ')}.${warning}`,
    figures: [
      { name: 'fast cycle', value: fast.duration, unit: 'time' },
      { name: 'mean of the others', value: Math.round(mean), unit: 'time' },
      ...reasons.flatMap((reason) => [
        { name: `${reason.words}, fast cycle`, value: reason.fast, unit: 'time' as const },
        {
          name: `${reason.words}, mean of the others`,
          value: Math.round(reason.mean),
          unit: 'time' as const,
        },
      ]),
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
