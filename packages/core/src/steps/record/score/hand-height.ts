import { type MotionKind, motionKinds } from '../../../ground/tables/index.ts';

/**
 * How high a motion stands on the axis, as a share of the room. The hand at work stands full, the hand that only holds
 * lower, the idle hand lowest: valleys in the skyline show where a hand does nothing before a code is read. This says
 * what the hand does, by the motions' own definitions; it is no grouping into effective and ineffective, on which
 * authors differ.
 */
export function handHeight(kind: MotionKind): number {
  if (kind === 'UD' || kind === 'AD' || kind === 'R') return 0.36;
  return kind === 'H' ? 0.66 : 1;
}

/** `handHeight` by the place of the kind in `motionKinds`. */
export const heightOfPlace: readonly number[] = motionKinds.map(handHeight);
