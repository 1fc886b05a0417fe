import { type MethodReading, type Piece, segmentsOf, stateOf } from '../../examine/index.ts';

/** Time of all cycles in which at least one hand works, microseconds: what follows the pace. */
export function pacedTime({ cycles }: MethodReading): number {
  let sum = 0;
  for (const cycle of cycles) {
    for (const { left, right, duration } of segmentsOf(cycle)) {
      if (works(left) || works(right)) sum += duration;
    }
  }
  return sum;
}

/** Time of all cycles that hands spend working, both hands added, microseconds. */
export function workedTime({ cycles }: MethodReading): number {
  let sum = 0;
  for (const { left, right } of cycles) {
    for (const pieces of [left, right]) for (const piece of pieces) if (works(piece)) sum += piece.duration;
  }
  return sum;
}

function works({ kind }: Piece): boolean {
  return stateOf(kind) === 'working';
}
