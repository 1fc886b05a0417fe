import { type MethodReading, type Piece, segmentsOf, type Trace } from '../reading/index.ts';

export function traceOfPiece({ cycle, hand, from, to }: Piece): Trace {
  return { cycle, hand, from, to };
}

export function inOrder(pieces: readonly Piece[]): Trace[] {
  return [...pieces].sort((a, b) => a.cycle - b.cycle || a.from - b.from || a.to - b.to).map(traceOfPiece);
}

/** The stretches in which what both hands do fulfils a condition; neighbours are joined. */
export function tracesTogether(
  reading: MethodReading,
  fits: (left: Piece, right: Piece) => boolean,
): Trace[] {
  return reading.cycles.flatMap((cycle) => {
    const found: Trace[] = [];
    for (const { left, right, from, to } of segmentsOf(cycle)) {
      if (!fits(left, right)) continue;
      const last = found.at(-1);
      if (last?.to === from) found[found.length - 1] = { ...last, to };
      else found.push({ cycle: cycle.position, hand: 'both', from, to });
    }
    return found;
  });
}
