import type { Hand } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { type MethodReading, type Piece, segmentsOf, stateOf } from '../../examine/index.ts';
import { objectKey } from '../motion-key.ts';

/** What the motions of one kind with one object account for, added up over all cycles of a reading. */
export interface Charge {
  readonly kind: MotionKind;
  readonly object: string | undefined;
  /** Pieces of both hands; one that is cut by a cycle counts in both cycles. */
  readonly pieces: Piece[];
  /** Time that the hands spend on it, microseconds, both hands added. */
  handTime: number;
  /** Elapsed time charged to it, in half microseconds, for each hand. */
  readonly halves: Record<Hand, number>;
}

/**
 * Charges every moment of every cycle to the hand that works then, half to each hand when both work or neither does. The
 * charges of a cycle add up to its length exactly.
 */
export function chargesOf({ cycles }: MethodReading): ReadonlyMap<string, Charge> {
  const charges = new Map<string, Charge>();
  const chargeOf = (piece: Piece): Charge => {
    const key = `${piece.kind} ${objectKey(piece.object)}`;
    const known = charges.get(key);
    if (known !== undefined) return known;
    const { kind, object } = piece;
    const made: Charge = { kind, object, pieces: [], handTime: 0, halves: { left: 0, right: 0 } };
    charges.set(key, made);
    return made;
  };
  for (const cycle of cycles) {
    for (const piece of [...cycle.left, ...cycle.right]) {
      const charge = chargeOf(piece);
      charge.pieces.push(piece);
      charge.handTime += piece.duration;
    }
    for (const { left, right, duration } of segmentsOf(cycle)) {
      const [ofLeft, ofRight] = [works(left), works(right)];
      const share = ofLeft === ofRight ? 1 : ofLeft ? 2 : 0;
      chargeOf(left).halves.left += share * duration;
      chargeOf(right).halves.right += (2 - share) * duration;
    }
  }
  return charges;
}

function works({ kind }: Piece): boolean {
  return stateOf(kind) === 'working';
}
