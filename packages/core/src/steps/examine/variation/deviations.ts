import { micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { Alignment, AlignRow } from '../elements/index.ts';
import type { CycleReading, MethodReading, Piece } from '../reading/index.ts';
import { tokenFrom, tokenWords } from '../sequences/token.ts';
import { patternNames, patternOf } from './patterns.ts';
import type { HandCycle } from './typical.ts';
import type { Deviation, DeviationPattern, PatternCount } from './variation-types.ts';

/** Motions between two pairs that answer to one another: those of the typical cycle and those of the other one. */
interface Gap {
  readonly typical: readonly [from: number, to: number];
  readonly other: readonly [from: number, to: number];
}

/** Where a cycle differs from the typical one in one hand, in order of time. */
export function deviationsOf(
  hand: Hand,
  typical: HandCycle,
  other: HandCycle,
  alignment: Alignment,
): Deviation[] {
  return gapsOf(typical.row, other.row, alignment).flatMap((gap) => {
    const told = {
      extra: isMarked(hand, typical, gap.typical) ? other.row.pieces.slice(...gap.other) : [],
      missing: isMarked(hand, other, gap.other) ? typical.row.pieces.slice(...gap.typical) : [],
    };
    if (told.extra.length + told.missing.length === 0) return [];
    return [deviationFrom(hand, other, gap.other, told)];
  });
}

function gapsOf(typical: AlignRow, other: AlignRow, { counterpart }: Alignment): Gap[] {
  const gaps: Gap[] = [];
  let [i, j] = [0, 0];
  const close = (toI: number, toJ: number) => {
    if (toI > i || toJ > j) gaps.push({ typical: [i, toI], other: [j, toJ] });
  };
  counterpart.forEach((partner, index) => {
    // A pair with another object is a difference too.
    if (partner < 0) return;
    close(index, partner);
    [i, j] = [index, partner];
    if (typical.tokens[index] !== other.tokens[partner]) close(index + 1, partner + 1);
    [i, j] = [index + 1, partner + 1];
  });
  close(counterpart.length, other.tokens.length);
  return gaps;
}

/** Every part between the motions beside a gap is marked, so that nothing can hide there. */
function isMarked(hand: Hand, { cycle, row }: HandCycle, [from, to]: Gap['other']): boolean {
  const before = row.pieces[from - 1]?.position ?? -1;
  const after = row.pieces[to]?.position ?? cycle[hand].length;
  return after - before - 1 === to - from;
}

function deviationFrom(
  hand: Hand,
  { cycle, row }: HandCycle,
  [from, to]: Gap['other'],
  { extra, missing }: Pick<Deviation, 'extra' | 'missing'>,
): Deviation {
  const before = row.pieces.slice(Math.max(0, from - 2), from);
  const after = row.pieces.slice(to, to + 2);
  const pattern = patternOf({ extra, missing, before, after });
  const shown = extra.length > 0 ? extra : [before.at(-1), after[0]].filter((piece) => piece !== undefined);
  return {
    cycle: cycle.position,
    hand,
    pattern,
    extra,
    missing,
    time: micros(extra.reduce((sum, { duration }) => sum + duration, 0)),
    words: wordsOf(pattern, extra, missing),
    trace: traceOver(cycle, hand, shown),
  };
}

function traceOver(cycle: CycleReading, hand: Hand, pieces: readonly Piece[]): Deviation['trace'] {
  const from = pieces[0]?.from ?? cycle.from;
  const to = pieces.at(-1)?.to ?? cycle.to;
  return { cycle: cycle.position, hand, from, to };
}

function wordsOf(pattern: DeviationPattern, extra: readonly Piece[], missing: readonly Piece[]): string {
  const list = (pieces: readonly Piece[]) =>
    pieces.map((piece) => tokenWords(tokenFrom(piece, 'kind-object'), (id) => id)).join(', ');
  if (extra.length === 0) return `${patternNames.missing}: ${list(missing)}`;
  const without = missing.length === 0 ? '' : `; without ${list(missing)}`;
  return `${patternNames[pattern]}: ${list(extra)}${without}`;
}

/** How often each pattern occurs, the most time first. */
export function patternCounts(reading: MethodReading, deviations: readonly Deviation[]): PatternCount[] {
  const groups = new Map<DeviationPattern, Deviation[]>();
  for (const item of deviations) {
    const group = groups.get(item.pattern);
    if (group === undefined) groups.set(item.pattern, [item]);
    else group.push(item);
  }
  const numberOf = (position: number) => reading.cycles[position]?.number ?? 0;
  return [...groups]
    .map(([pattern, group]) => ({
      pattern,
      name: patternNames[pattern],
      count: group.length,
      cycles: [...new Set(group.map(({ cycle }) => numberOf(cycle)))].sort((a, b) => a - b),
      time: micros(group.reduce((sum, { time }) => sum + time, 0)),
    }))
    .sort((a, b) => b.time - a.time || b.count - a.count || (a.pattern < b.pattern ? -1 : 1));
}
