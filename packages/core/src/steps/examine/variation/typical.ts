import { quantileOf } from '../../../ground/numerics/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { type AlignRow, align, alignRow } from '../elements/index.ts';
import { type CycleReading, cycleWords, type MethodReading } from '../reading/index.ts';
import type { TokenTable } from '../sequences/index.ts';
import type { TypicalCycle } from './variation-types.ts';

/** One cycle of a hand with its motions ready to be compared. */
export interface HandCycle {
  readonly cycle: CycleReading;
  readonly row: AlignRow;
}

export interface HandTypical {
  readonly of: HandCycle;
  readonly told: TypicalCycle;
}

export function handCycles(reading: MethodReading, hand: Hand, table: TokenTable): HandCycle[] {
  return reading.cycles.map((cycle) => ({ cycle, row: alignRow(cycle, hand, table) }));
}

/**
 * The cycle that stands for the others in one hand: of the sequence of motions that occurs most often, the cycle of middle
 * length; where no two are alike, of at most thirty cycles the one that differs least from the others. Cycles in which the
 * hand is not marked throughout come in only when all are so. Undefined when the hand has no motion at all.
 */
export function typicalCycle(cycles: readonly HandCycle[], hand: Hand): HandTypical | undefined {
  const marked = cycles.filter(({ cycle }) => cycle.marked[hand] === cycle.duration);
  const candidates = (marked.length > 0 ? marked : cycles).filter(({ row }) => row.pieces.length > 0);
  if (candidates.length === 0) return undefined;
  const [common = []] = alikeGroups(candidates);
  if (common.length === 1 && candidates.length > 1) return leastDifferent(candidates, hand);
  const of = nearest(common, middle(common));
  const several = `In ${common.length} of ${candidates.length} cycles that could be compared the ${hand} hand makes exactly these motions; ${nameOf(of)} has the middle length of them.`;
  const only = `${nameOf(of)} is the only one that could be compared in the ${hand} hand.`;
  const words = candidates.length > 1 ? several : capital(only);
  return typicalFrom(of, common.length, words);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function typicalFrom(of: HandCycle, alike: number, words: string): HandTypical {
  return { of, told: { cycle: of.cycle.position, number: of.cycle.number, alike, words } };
}

const nameOf = ({ cycle }: HandCycle) => cycleWords([cycle.number]);

/** Cycles with exactly the same motions, the most first; of equal groups the one nearer to the middle length of all. */
function alikeGroups(candidates: readonly HandCycle[]): HandCycle[][] {
  const groups = new Map<string, HandCycle[]>();
  for (const item of candidates) {
    const key = item.row.tokens.join(' ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  const goal = middle(candidates);
  const ordered = [...groups.values()].map((group) => ({ group, away: Math.abs(middle(group) - goal) }));
  return ordered.sort((a, b) => b.group.length - a.group.length || a.away - b.away).map(({ group }) => group);
}

function middle(cycles: readonly HandCycle[]): number {
  return quantileOf(
    cycles.map(({ cycle }) => cycle.duration).sort((a, b) => a - b),
    0.5,
  );
}

/** The nearest in length; of two equally near the shorter, so that the order of the cycles plays no part. */
function nearest(cycles: readonly HandCycle[], goal: number): HandCycle {
  const away = ({ cycle }: HandCycle) => Math.abs(cycle.duration - goal);
  const order = (a: HandCycle, b: HandCycle) => away(a) - away(b) || a.cycle.duration - b.cycle.duration;
  return cycles.reduce((best, item) => (order(item, best) < 0 ? item : best));
}

const mostCompared = 30;
/** Cells of alignment tables that are spent on the search. */
const mostWork = 20_000_000;

function leastDifferent(candidates: readonly HandCycle[], hand: Hand): HandTypical {
  const compared = evenly(candidates, comparable(candidates));
  const sums = compared.map((a) => compared.reduce((sum, b) => sum + align(a.row, b.row).cost, 0));
  const goal = middle(candidates);
  const away = (index: number) => Math.abs((compared[index]?.cycle.duration ?? 0) - goal);
  const sum = (index: number) => sums[index] ?? Number.POSITIVE_INFINITY;
  const order = [...compared.keys()].sort((a, b) => sum(a) - sum(b) || away(a) - away(b) || a - b);
  const of = compared[order[0] ?? 0] as HandCycle;
  const words = `No two cycles are alike in the ${hand} hand; of ${compared.length} cycles compared with one another ${nameOf(of)} differs least from the others.`;
  return typicalFrom(of, 1, words);
}

/** Fewer where the cycles are long, so that the search stays short. */
function comparable(candidates: readonly HandCycle[]): number {
  const motions = candidates.reduce((sum, { row }) => sum + row.tokens.length, 0) / candidates.length;
  const affordable = Math.floor(Math.sqrt(mostWork) / Math.max(1, motions));
  return Math.min(candidates.length, mostCompared, Math.max(3, affordable));
}

/** Evenly from the shortest to the longest, so that the order of the cycles plays no part. */
function evenly(candidates: readonly HandCycle[], count: number): HandCycle[] {
  const sorted = [...candidates].sort((a, b) => a.cycle.duration - b.cycle.duration);
  if (count >= sorted.length) return sorted;
  const step = (sorted.length - 1) / (count - 1);
  return Array.from({ length: count }, (_, index) => sorted[Math.round(index * step)] as HandCycle);
}
