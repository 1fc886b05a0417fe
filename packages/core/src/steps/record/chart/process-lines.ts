import type { Hand } from '../../../ground/study/index.ts';
import { type ProcessSymbol, processSymbols, symbolOfMotion } from '../../../ground/tables/index.ts';
import type { ChartFacts, ChartMotion } from './facts.ts';

/** What a hand does on a line of the process chart: a motion that begins there, or one that goes on. */
export interface ProcessEntry {
  readonly motion: ChartMotion;
  readonly symbol: ProcessSymbol | undefined;
  readonly goesOn: boolean;
}

/** One line of the process chart: what both hands do from `start` on. */
export interface ProcessLine extends Readonly<Record<Hand, ProcessEntry>> {
  /** From 1. */
  readonly number: number;
  /** Microseconds from the start of the chart. */
  readonly start: number;
}

/** Starts no further apart than this, in microseconds, stand on one line: two frames at 30 a second. The choice is ours. */
export const togetherWithin = 66_667;

/**
 * The lines of the two-handed process chart. A line begins wherever a hand begins a motion; motions of the two hands
 * that begin together share one ("events that happen together go on one line": ILO, Introduction to Work Study, from
 * memory). Every line has an entry for each hand, so that the counts of the two hands are equal.
 */
export function processLines(facts: Pick<ChartFacts, Hand>): readonly ProcessLine[] {
  const lines: ProcessLine[] = [];
  let [left, right] = [0, 0];
  let before: { left: number; right: number } | undefined;
  while (left < facts.left.length || right < facts.right.length) {
    const leftStart = facts.left[left]?.start ?? Number.POSITIVE_INFINITY;
    const rightStart = facts.right[right]?.start ?? Number.POSITIVE_INFINITY;
    const start = Math.min(leftStart, rightStart);
    const takes = { left: leftStart - start <= togetherWithin, right: rightStart - start <= togetherWithin };
    const at: { left: number; right: number } = {
      left: takes.left ? left : (before?.left ?? 0),
      right: takes.right ? right : (before?.right ?? 0),
    };
    if (takes.left) left += 1;
    if (takes.right) right += 1;
    const [leftMotion, rightMotion] = [facts.left[at.left], facts.right[at.right]];
    if (leftMotion === undefined || rightMotion === undefined) {
      throw new RangeError('both hands must begin at the start of the chart');
    }
    lines.push({
      number: lines.length + 1,
      start,
      left: entry(leftMotion, !takes.left),
      right: entry(rightMotion, !takes.right),
    });
    before = at;
  }
  return lines;
}

function entry(motion: ChartMotion, goesOn: boolean): ProcessEntry {
  const symbol = motion.kind === 'unmarked' ? undefined : symbolOfMotion[motion.kind];
  return { motion, symbol, goesOn };
}

export interface SymbolCounts {
  readonly symbols: Readonly<Record<ProcessSymbol, number>>;
  readonly unmarked: number;
  readonly lines: number;
}

/** How often each symbol stands in the column of a hand. */
export function symbolCounts(lines: readonly ProcessLine[], hand: Hand): SymbolCounts {
  const symbols: Record<ProcessSymbol, number> = {
    operation: 0,
    transport: 0,
    delay: 0,
    hold: 0,
    inspection: 0,
  };
  let unmarked = 0;
  for (const line of lines) {
    const { symbol } = line[hand];
    if (symbol === undefined) unmarked += 1;
    else symbols[symbol] += 1;
  }
  return { symbols, unmarked, lines: lines.length };
}

export const symbolOrder: readonly ProcessSymbol[] = processSymbols.map((facts) => facts.symbol);
