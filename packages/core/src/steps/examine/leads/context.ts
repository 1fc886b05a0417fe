import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { type MethodReading, type Piece, segmentsOf, type Trace } from '../reading/index.ts';
import { cycleModel } from '../stake/index.ts';
import type { LeadContext } from './lead.ts';

export function leadContext(reading: MethodReading): LeadContext {
  const pieces = (hand: Hand) => reading.cycles.flatMap((cycle) => cycle[hand]);
  const segments = reading.cycles.map(segmentsOf);
  return {
    reading,
    cycles: reading.cycles,
    segments,
    models: reading.cycles.map((cycle, position) => cycleModel(cycle, segments[position])),
    pieces: { left: pieces('left'), right: pieces('right') },
  };
}

export function traceOf({ cycle, hand, from, to }: Piece): Trace {
  return { cycle, hand, from, to };
}

/** Sum of the durations. */
export function totalTime(pieces: readonly Piece[]): Micros {
  return micros(pieces.reduce((sum, piece) => sum + piece.duration, 0));
}

/** A sum over all chosen cycles as time a cycle. */
export function aCycle(context: LeadContext, total: number): Micros {
  return micros(Math.round(total / context.cycles.length));
}

/** In how many of the chosen cycles the pieces lie. */
export function cycleCount(pieces: readonly { readonly cycle: number }[]): number {
  return new Set(pieces.map((piece) => piece.cycle)).size;
}

/** Mean length of the chosen cycles. */
export function meanCycle(context: LeadContext): Micros {
  return aCycle(
    context,
    context.cycles.reduce((sum, cycle) => sum + cycle.duration, 0),
  );
}

/** Groups in the order in which their keys first occur. */
export function groupedBy<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** Every piece of both hands. */
export function allPieces(context: LeadContext): readonly Piece[] {
  const known = everyPiece.get(context);
  if (known !== undefined) return known;
  const made = hands.flatMap((hand) => context.pieces[hand]);
  everyPiece.set(context, made);
  return made;
}

const everyPiece = new WeakMap<LeadContext, readonly Piece[]>();

/** The piece before or after in the same hand and cycle. */
export function neighbour(context: LeadContext, piece: Piece, step: 1 | -1): Piece | undefined {
  return context.cycles[piece.cycle]?.[piece.hand][piece.position + step];
}

/** Below either of them a lead is noise: a share of the mean cycle, and microseconds a cycle (three frames at 60 a second). Ours. */
export const noiseFloor = { share: 0.01, time: 50_000 } as const;

/** What a rule says of the floor in its `limit`. */
export const noiseLimit =
  'What comes to less than 1 % of the cycle or less than 0.05 s a cycle is not reported: the limit is ours.';

/** Too little to be worth a line. @param time microseconds a cycle */
export function isNoise(context: LeadContext, time: number): boolean {
  return time < noiseFloor.time || time < noiseFloor.share * meanCycle(context);
}
