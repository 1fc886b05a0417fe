import { micros } from '../../../ground/base/index.ts';
import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import { type CycleReading, type Piece, stateOf, type Trace } from '../reading/index.ts';
import { type Effect, shortened } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

/** Gaps up to this count as together: six frames at 60 a second. Ours. */
const together = micros(100_000);

type Edge = 'begin' | 'end';

/** One hand stands idle at an edge of the cycle while the other is at it. */
interface Gap {
  readonly edge: Edge;
  /** The hand that begins later or ends sooner. */
  readonly hand: Hand;
  readonly trace: Trace;
  readonly duration: number;
  readonly effects: readonly Effect[];
}

/** The hands do not begin or do not end together. */
export const apart: LeadRule = {
  code: 'apart',
  name: 'Hands not beginning or ending together',
  principles: [1],
  limit: `A gap of up to ${timeText(together, 'seconds')} in a cycle counts as together: the limit is ours. ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'Each hand keeps its own work, but the hand that begins later or ends sooner does not wait for the other.',
  remedies: [
    {
      how: 'combine',
      text: 'Both hands do the same work at the same time, so that they end together of themselves.',
    },
    { how: 'rearrange', text: 'The hand that ends sooner begins the next cycle: it fetches the next part.' },
    {
      how: 'rearrange',
      text: 'Shift motions from the hand that works longer to the edge at which the other is idle.',
    },
  ],
  questions: [
    'What must have happened before the later hand can begin?',
    'What could the hand that ends sooner already do for the next cycle?',
    'Does one hand wait because the place for finished parts or a bin is on the other side?',
  ],
  find,
};

function find(context: LeadContext): LeadDraft[] {
  const gaps = context.cycles.flatMap((cycle) => [...gapAt(cycle, 'begin'), ...gapAt(cycle, 'end')]);
  return [...groupedBy(gaps, ({ hand, edge }) => `${hand} ${edge}`).values()].flatMap((group) =>
    draft(context, group),
  );
}

function draft(context: LeadContext, gaps: readonly Gap[]): LeadDraft[] {
  const [first] = gaps;
  const total = gaps.reduce((sum, gap) => sum + gap.duration, 0);
  if (first === undefined || isNoise(context, aCycle(context, total))) return [];
  const { hand, edge } = first;
  const what = edge === 'begin' ? 'begins after' : 'ends before';
  const traces = gaps.map(({ trace }) => trace);
  return [
    {
      hand,
      about: edge,
      traces,
      evidence: `The ${hand} hand ${what} the ${otherHand(hand)} hand: ${timeWords(context, total)}, ${cycleWords(context, traces)}.`,
      figures: [
        { name: `gap at the ${edge}`, value: aCycle(context, total), unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
      ],
      effects: gaps.flatMap(({ effects }) => effects),
    },
  ];
}

function gapAt(cycle: CycleReading, edge: Edge): Gap[] {
  const [left, right] = hands.map((hand) => outermost(cycle[hand], edge));
  if (left === undefined || right === undefined) return [];
  const [one, other] = isInside(left, right, edge) ? [left, right] : [right, left];
  const { hand } = one;
  const stretch =
    edge === 'begin'
      ? { start: other.start, end: one.start, from: other.from, to: one.from }
      : { start: one.end, end: other.end, from: one.to, to: other.to };
  const duration = stretch.end - stretch.start;
  if (duration <= together) return [];
  const idle = cycle[hand].filter((piece) => piece.end > stretch.start && piece.start < stretch.end);
  // Rest stays, and of what is not marked nothing is known.
  if (idle.some(({ kind }) => kind === 'R' || kind === 'unmarked')) return [];
  const effects = idle
    .filter(({ kind }) => kind === 'UD' || kind === 'AD')
    .map((piece) => {
      const within = Math.min(piece.end, stretch.end) - Math.max(piece.start, stretch.start);
      return shortened(piece, piece.duration - within, piece.duration - within);
    });
  if (effects.length === 0) return [];
  const trace = { cycle: cycle.position, hand, from: stretch.from, to: stretch.to };
  return [{ edge, hand, trace, duration, effects }];
}

function outermost(pieces: readonly Piece[], edge: Edge): Piece | undefined {
  const acts = ({ kind, duration }: Piece) => {
    const state = stateOf(kind);
    return duration > 0 && (state === 'working' || state === 'holding');
  };
  return edge === 'begin' ? pieces.find(acts) : pieces.findLast(acts);
}

/** The first begins later, or ends sooner, than the second. */
function isInside(one: Piece, other: Piece, edge: Edge): boolean {
  return edge === 'begin' ? one.start > other.start : one.end < other.end;
}
