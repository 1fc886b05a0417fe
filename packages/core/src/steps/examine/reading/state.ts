import { type MotionKind, symbolOfMotion } from '../../../ground/tables/index.ts';

/** What a hand does, seen from the other hand: it works, it holds, or it stands idle. */
export type HandState = 'working' | 'holding' | 'idle' | 'unmarked';

/**
 * The state behind a motion, by the symbols of the two-handed process chart: the triangle is a hold, the D an idle hand,
 * everything else is work.
 */
export function stateOf(kind: MotionKind): HandState {
  if (kind === 'unmarked') return 'unmarked';
  const symbol = symbolOfMotion[kind];
  if (symbol === 'hold') return 'holding';
  return symbol === 'delay' ? 'idle' : 'working';
}
