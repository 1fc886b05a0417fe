import { type CycleReading, findElements, type MethodReading, type Piece } from '../../examine/index.ts';
import { sharedMotions } from '../pace/shared-motions.ts';
import { longestChain } from './chain.ts';

/** A stretch that both cycles have: an element, a motion, or the whole cycle. Microseconds since the start of its cycle. */
export interface SyncPart {
  readonly name: string;
  readonly before: { readonly start: number; readonly end: number };
  readonly after: { readonly start: number; readonly end: number };
}

/** How two cycles are shown in step. */
export interface CycleSync {
  readonly basis: 'elements' | 'motions' | 'phase';
  /** Stretches that belong together, in the order of both cycles; with the basis `phase` the whole cycle. */
  readonly parts: readonly SyncPart[];
  /** Elements of one cycle that are not in step with the other, by name. */
  readonly alone: { readonly before: readonly string[]; readonly after: readonly string[] };
  readonly words: string;
}

const basisWords: Readonly<Record<CycleSync['basis'], string>> = {
  elements:
    'In step by the elements that both methods have: each begins together, and the shorter one waits.',
  motions:
    'In step by the motions that both methods share, because they have no named element in common: each begins together, and the shorter one waits.',
  phase:
    'In step by the share of the cycle that has gone by: the methods have no named element and no motion in common.',
};

/**
 * Puts one cycle of each method in step: by elements of the same name where both have them, else by the motions that
 * both share, else by the share of the cycle that has gone by. What comes in another order cannot be kept in step and
 * stands alone; so much is kept as fills the most time.
 * @param cycles position of each cycle in its reading
 */
export function syncOf(
  before: MethodReading,
  after: MethodReading,
  cycles: { readonly before: number; readonly after: number },
): CycleSync {
  const [first, second] = [spansIn(before, cycles.before), spansIn(after, cycles.after)];
  const names = new Map(second.map((span) => [span.name, span]));
  const elements = longestChain(
    first.flatMap((span): SyncPart[] => {
      const other = names.get(span.name);
      return other === undefined ? [] : [{ name: span.name, before: span, after: other }];
    }),
  );
  if (elements.length > 0) {
    const kept = new Set(elements.map(({ name }) => name));
    const rest = (spans: readonly Span[]) => spans.map(({ name }) => name).filter((name) => !kept.has(name));
    return made('elements', elements, { before: rest(first), after: rest(second) });
  }
  const motions = longestChain(motionParts(before, after, cycles));
  if (motions.length > 0) return made('motions', motions);
  const whole = (cycle: CycleReading | undefined) => ({ start: 0, end: cycle?.duration ?? 0 });
  const [one, two] = [before.cycles[cycles.before], after.cycles[cycles.after]];
  return made('phase', [{ name: 'cycle', before: whole(one), after: whole(two) }]);
}

function made(
  basis: CycleSync['basis'],
  parts: readonly SyncPart[],
  alone: CycleSync['alone'] = { before: [], after: [] },
): CycleSync {
  return { basis, parts, alone, words: basisWords[basis] };
}

interface Span {
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** The elements of a cycle in their order of time; an element that comes twice is told by its first. */
function spansIn(reading: MethodReading, position: number): readonly Span[] {
  const cycle = reading.cycles[position];
  if (cycle === undefined || (reading.method.elements ?? []).length === 0) return [];
  const zero = reading.clock.timeOf(cycle.from);
  const spans = findElements(reading).elements.flatMap(({ name, spans: found }): Span[] => {
    const span = found[position];
    if (span?.from === undefined || span.to === undefined || span.time === 0) return [];
    return [
      { name, start: reading.clock.timeOf(span.from) - zero, end: reading.clock.timeOf(span.to) - zero },
    ];
  });
  return spans.sort((a, b) => a.start - b.start);
}

/** The shared motions as they come in the two cycles: the first with the first, the second with the second. */
function motionParts(
  before: MethodReading,
  after: MethodReading,
  cycles: { readonly before: number; readonly after: number },
): SyncPart[] {
  const inCycle = (pieces: readonly Piece[], position: number) =>
    pieces.filter(({ cycle }) => cycle === position).sort((a, b) => a.start - b.start);
  return sharedMotions(before, after).flatMap(({ name, before: one, after: two }) => {
    const others = inCycle(two.pieces, cycles.after);
    return inCycle(one.pieces, cycles.before).flatMap((piece, index): SyncPart[] => {
      const other = others[index];
      return other === undefined ? [] : [{ name, before: spanOf(piece), after: spanOf(other) }];
    });
  });
}

function spanOf({ start, end }: Piece): SyncPart['before'] {
  return { start, end };
}
