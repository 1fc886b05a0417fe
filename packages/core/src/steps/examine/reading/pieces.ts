import { lastAtOrBefore, type Micros, micros } from '../../../ground/base/index.ts';
import { endOf, type Hand, type Method, type MethodClock, type Motion } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';

/** The part of a motion that lies in one cycle, or a stretch of it that nobody has marked. */
export interface Piece {
  readonly hand: Hand;
  /** Position of its cycle in the reading, from 0. */
  readonly cycle: number;
  /** Position among the pieces of its hand in the cycle, from 0. */
  readonly position: number;
  /** `unmarked` also where a row does not reach, and for a proposal that does not count. */
  readonly kind: MotionKind;
  /** Undefined where the row does not reach. */
  readonly motion: Motion | undefined;
  readonly object: string | undefined;
  /** Boundaries of the method: frames of its film, or microseconds. */
  readonly from: number;
  readonly to: number;
  /** Real time since the start of the cycle. */
  readonly start: Micros;
  readonly end: Micros;
  readonly duration: Micros;
  /** The motion began before the cycle; only the part inside counts. */
  readonly cut: boolean;
}

export interface CyclePieces {
  /** The pieces of each hand fill the cycle without a gap. */
  readonly left: readonly Piece[];
  readonly right: readonly Piece[];
  /** Time that counts in each hand: all but `unmarked`. */
  readonly marked: Readonly<Record<Hand, Micros>>;
  /** Motions left out because nobody confirmed them. */
  readonly proposals: number;
}

type Stretch = { readonly from: number; readonly to: number };

export interface Cut {
  readonly method: Method;
  readonly clock: MethodClock;
  readonly span: Stretch;
  /** Position of the cycle in the reading. */
  readonly cycle: number;
  /** Proposed motions count. */
  readonly proposed: boolean;
}

/** Cuts both rows of a method to one cycle. */
export function cyclePieces(cut: Cut): CyclePieces {
  const left = handPieces(cut, 'left');
  const right = handPieces(cut, 'right');
  const proposals = [...left, ...right].filter(
    ({ kind, motion }) => kind === 'unmarked' && motion !== undefined && motion.kind !== 'unmarked',
  ).length;
  return { left, right, marked: { left: markedTime(left), right: markedTime(right) }, proposals };
}

function markedTime(pieces: readonly Piece[]): Micros {
  return micros(pieces.reduce((sum, piece) => sum + (piece.kind === 'unmarked' ? 0 : piece.duration), 0));
}

function handPieces(cut: Cut, hand: Hand): Piece[] {
  const row = cut.method[hand];
  const { from, to } = cut.span;
  const found: Piece[] = [];
  const zero = cut.clock.timeOf(from);
  const add = (motion: Motion | undefined, start: number, end: number) =>
    found.push(pieceOf(cut, hand, found.length, motion, start, end, zero));
  let at = from;
  const first = lastAtOrBefore(row.items, from, (item) => item.start);
  for (let index = Math.max(0, first); index < row.items.length; index += 1) {
    const motion = row.items[index] as Motion;
    if (motion.start >= to) break;
    const end = endOf(row, index);
    if (end <= from) continue;
    if (motion.start > at) add(undefined, at, motion.start);
    at = Math.min(end, to);
    add(motion, Math.max(motion.start, from), at);
  }
  if (at < to) add(undefined, at, to);
  return found;
}

function pieceOf(
  { clock, cycle, proposed, span }: Cut,
  hand: Hand,
  position: number,
  motion: Motion | undefined,
  from: number,
  to: number,
  zero: number,
): Piece {
  const counts = motion !== undefined && (motion.said !== 'proposed' || proposed);
  const start = micros(clock.timeOf(from) - zero);
  const end = micros(clock.timeOf(to) - zero);
  return {
    hand,
    cycle,
    position,
    kind: counts ? motion.kind : 'unmarked',
    motion,
    object: motion?.object,
    from,
    to,
    start,
    end,
    duration: micros(end - start),
    cut: counts && motion.kind !== 'unmarked' && motion.start < span.from,
  };
}
