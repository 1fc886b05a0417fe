import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  type Cycle,
  type Hand,
  hands,
  isProposed,
  itemAt,
  itemsBetween,
  type Method,
  type Motion,
  proposedBetween,
  type Spanned,
  spanAt,
} from '../../../ground/study/index.ts';
import { betweenCycles } from './aside.ts';
import type { ConfirmedCycle, LabelledStart, Stretch } from './confirmed.ts';
import type { ProposedSpan } from './proposal.ts';

/** What the cycles of a method are to a proposal. Stretches are in seconds, `kept` in boundaries of the method. */
export interface ReadCycles {
  /** Those that others are proposed after: no part of them is set aside, unmarked or only proposed. */
  readonly confirmed: readonly ConfirmedCycle[];
  /** Those whose bounds a person has marked and whose motions nobody has. */
  readonly given: readonly Stretch[];
  /** Where a person has marked something, or set it aside: nothing is proposed there. */
  readonly taken: readonly Stretch[];
  /** Cycles in which proposals stand beside what is confirmed: both stay as they are. */
  readonly kept: readonly ProposedSpan[];
  readonly findings: readonly Finding[];
}

/** How a method’s boundaries and motions are seen by the proposer. */
export interface Reader {
  /** Seconds of a boundary. */
  readonly timeAt: (boundary: number) => number;
  /** A number that is the same for motions alike in all but their times. */
  readonly labelOf: (motion: Motion) => number;
}

/** Whether a person says what a hand does. */
export function counts(motion: Motion): boolean {
  return motion.kind !== 'unmarked' && !isProposed(motion);
}

type Standing = 'confirmed' | 'bare' | 'aside' | 'part-marked' | 'part-confirmed' | 'open';

interface Seen {
  readonly cycle: Spanned<Cycle>;
  readonly standing: Standing;
  /** Where the last motion ends that counts; the start of the cycle when there is none. */
  readonly marked: number;
  /** It is the last and reaches to the end of the film: where it ends nobody has said. */
  readonly endless: boolean;
}

export function readCycles(method: Method, reader: Reader): ReadCycles {
  const { timeAt } = reader;
  const seen = judged(
    method.cycles.items.map((_, index) => seenAt(method, index)),
    timeAt,
  );
  const of = (standing: Standing) => seen.filter((one) => one.standing === standing);
  const stretch = ({ start, end }: Stretch): Stretch => ({ start: timeAt(start), end: timeAt(end) });
  const whole = method.cycles.items.length === 0 ? wholeMarked(method, reader) : undefined;
  const confirmed = [
    ...(whole === undefined ? [] : [whole]),
    ...of('confirmed').map(({ cycle, marked }) => confirmedAt(method, { ...cycle, end: marked }, reader)),
  ];
  const longest = Math.max(0, ...confirmed.map(({ start, end }) => end - start));
  // A mark far from the next one says where one cycle begins, and nothing of how many follow.
  const given = of('bare')
    .filter(({ endless }) => !endless)
    .map(({ cycle }) => stretch(cycle))
    .filter(({ start, end }) => end - start < 2 * longest);
  const usual = middleOf([...confirmed, ...given].map(({ start, end }) => end - start));
  const part = of('part-marked').map((one) => ({ cycle: one.cycle, span: partOf(one, usual, timeAt) }));
  const kept = of('part-confirmed').map(({ cycle }) => cycle);
  const aside = of('aside').map(({ cycle, marked, endless }) =>
    endless && marked > cycle.start ? { start: cycle.start, end: marked } : cycle,
  );
  const left = [...aside, ...kept, ...loose(method, confirmed.length > 0)].map(stretch);
  return {
    confirmed,
    given,
    taken: [...confirmed, ...given, ...part.map(({ span }) => span), ...left],
    kept: kept.map(({ start, end }) => ({ from: start, to: end })),
    findings: [...part.map(({ cycle, span }) => partMarked(method, cycle, span)), ...partConfirmed(kept)],
  };
}

function partMarked({ base }: Method, cycle: Spanned<Cycle>, { start, end }: Stretch): Finding {
  const words = { cycle: cycle.index + 1, from: start.toFixed(1), to: end.toFixed(1) };
  return finding('propose/part-marked', base.kind === 'frames' ? { frame: cycle.start } : {}, words);
}

function partConfirmed(kept: readonly Spanned<Cycle>[]): Finding[] {
  const cycles = listed(kept.map(({ index }) => index + 1));
  return kept.length === 0 ? [] : [finding('propose/part-confirmed', {}, { cycles })];
}

/** "cycle 2", "cycles 2 and 3", "cycles 2, 3 and 5". */
function listed(numbers: readonly number[]): string {
  if (numbers.length === 1) return `cycle ${numbers[0]}`;
  return `cycles ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

function seenAt(method: Method, index: number): Seen {
  const cycle = spanAt(method.cycles, index) as Spanned<Cycle>;
  const rows = markedIn(method, cycle);
  const marked = Math.max(cycle.start, ...rows.map((row) => row.at(-1)?.end ?? cycle.start));
  const last = index === method.cycles.items.length - 1;
  const endless = last && cycle.end >= Math.max(method.left.end, method.right.end);
  return { cycle, marked, endless, standing: standingOf(method, cycle, rows, { marked, endless }) };
}

function markedIn(method: Method, { start, end }: Pick<Spanned<Cycle>, 'start' | 'end'>) {
  return hands.map((hand) => itemsBetween(method[hand], start, end).filter(({ item }) => counts(item)));
}

function standingOf(
  method: Method,
  cycle: Spanned<Cycle>,
  rows: readonly Spanned<Motion>[][],
  { marked, endless }: Pick<Seen, 'marked' | 'endless'>,
): Standing {
  const { item, start, end } = cycle;
  // A motion that only reaches in from before belongs to the cycle before it.
  const bare = rows.every((row) => row.every((motion) => motion.item.start < start));
  if (bare && (isProposed(item) || (item.said === 'confirmed' && item.setAside === betweenCycles)))
    return 'open';
  if (item.setAside !== undefined && !isProposed(item)) return 'aside';
  if (bare) return 'bare';
  if (isProposed(item) || proposedBetween(method, start, endless ? marked : end) > 0) return 'part-confirmed';
  return filled(rows, marked - start) ? 'confirmed' : 'part-marked';
}

/** Whether so much of a stretch is marked that it can show how the work goes. */
function filled(rows: readonly Spanned<Motion>[][], span: number): boolean {
  const shares = rows.map(
    (row) => row.reduce((sum, { start, end }) => sum + end - start, 0) / Math.max(1, span),
  );
  const [left = 0, right = 0] = shares;
  return span > 0 && (left + right) / 2 >= 0.3 && Math.max(left, right) >= 0.6;
}

/**
 * Where the marks end well before the cycle does, the rest may hold other cycles, or be the part that is not marked yet.
 * It is the latter when the rest is short beside what is marked, or when cycles with both bounds are longer than that.
 */
function judged(seen: readonly Seen[], timeAt: (boundary: number) => number): Seen[] {
  const lengths = ({ cycle, marked, endless }: Seen) => {
    const own = timeAt(marked) - timeAt(cycle.start);
    const span = timeAt(cycle.end) - timeAt(cycle.start);
    return { own, span, rest: endless ? 0 : span - own };
  };
  const long = ({ rest, span }: ReturnType<typeof lengths>) => rest > Math.max(shortest, 0.25 * span);
  const usual = middleOf(
    seen.flatMap((one) => {
      const clean =
        one.standing === 'bare' ? !one.endless : one.standing === 'confirmed' && !long(lengths(one));
      return clean ? [one.standing === 'bare' ? lengths(one).span : lengths(one).own] : [];
    }),
  );
  return seen.map((one) => {
    const length = lengths(one);
    if (one.standing !== 'confirmed' || !long(length)) return one;
    const begun = length.own < 0.7 * usual && length.span < 1.5 * usual;
    return length.rest < 0.5 * length.own || begun ? { ...one, standing: 'part-marked' } : one;
  });
}

/** Shorter stretches are not worth a look, in seconds. */
export const shortest = 0.5;

/** What a partly marked cycle takes: where nobody has said where it ends, as long as cycles usually are. */
function partOf(
  { cycle, marked, endless }: Seen,
  usual: number,
  timeAt: (boundary: number) => number,
): Stretch {
  const [start, end] = [timeAt(cycle.start), timeAt(cycle.end)];
  return { start, end: endless ? Math.max(timeAt(marked), Math.min(end, start + usual)) : end };
}

function confirmedAt(
  method: Method,
  { start, end }: Pick<Spanned<Cycle>, 'start' | 'end'>,
  { timeAt, labelOf }: Reader,
): ConfirmedCycle {
  const starts = (hand: Hand): LabelledStart[] =>
    itemsBetween(method[hand], start, end).map((motion) => ({
      at: timeAt(motion.item.start),
      label: labelOf(motion.item),
    }));
  return { start: timeAt(start), end: timeAt(end), left: starts('left'), right: starts('right') };
}

/** Where no cycle is marked, all that is marked in both hands counts as one. */
function wholeMarked(method: Method, reader: Reader): ConfirmedCycle | undefined {
  const rows = markedIn(method, { start: 0, end: Math.max(method.left.end, method.right.end) });
  if (rows.some((row) => row.length === 0)) return undefined;
  const start = Math.min(...rows.map((row) => row[0]?.start ?? 0));
  const end = Math.max(...rows.map((row) => row.at(-1)?.end ?? 0));
  return filled(rows, end - start) ? confirmedAt(method, { start, end }, reader) : undefined;
}

/**
 * Motions that are marked outside of the cycles. With a cycle to go by, whole cycles are proposed, so what one hand has
 * is enough, unless it is the end of a cycle’s motion; without one each hand has a rough row of its own, so only what both
 * have is left alone.
 */
function loose(method: Method, hasCycle: boolean): Stretch[] {
  const spans = hands.map((hand) =>
    method[hand].items.flatMap((item, index) => {
      const own = spanAt(method[hand], index);
      return own === undefined || !counts(item) ? [] : [{ start: own.start, end: own.end }];
    }),
  );
  const [left = [], right = []] = spans;
  const alone = ({ start }: Stretch) => itemAt(method.cycles, start) === undefined;
  return [
    ...(hasCycle ? [...left, ...right].filter(alone) : []),
    ...left.flatMap((own) =>
      right
        .filter(({ start, end }) => start < own.end && own.start < end)
        .map(({ start, end }) => ({ start: Math.max(start, own.start), end: Math.min(end, own.end) })),
    ),
  ];
}
