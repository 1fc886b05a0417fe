import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { MethodInput, ProposeInput } from './method-input.ts';
import type { Proposal, ProposedMotion } from './proposal.ts';
import { channel, channels, handSignals, quantile, type Signals, signalsOf } from './signals.ts';

const step = 1 / 30;
/** Shorter pieces are taken for noise, in seconds. */
const shortest = 0.12;

interface Piece {
  readonly from: number;
  to: number;
  readonly moving: boolean;
  /** Share of the piece in which the hand is open; NaN where unknown. */
  open: number;
}

/**
 * A first row for each hand when no cycle is confirmed: moving or still, open or closed. It names what that can tell:
 * transport, grasp, release, hold, idle. Everything is uncertain and says so.
 */
export function roughRows(input: ProposeInput, method: MethodInput, before: readonly Finding[]): Proposal {
  const signals = signalsOf(input.track, method.seconds, step);
  const rows: Record<Hand, ProposedMotion[]> = { left: [], right: [] };
  const spans: { from: number; to: number }[] = [];
  for (const { start, end } of method.free) {
    const span = { from: method.boundaryAt(start), to: method.boundaryAt(end) };
    spans.push(span);
    for (const hand of hands)
      for (const motion of handRow(signals, hand, { start, end })) {
        const at = Math.max(span.from, method.boundaryAt(motion.at));
        if (at >= span.to) continue;
        if ((rows[hand].at(-1)?.start ?? -1) >= at) rows[hand].pop();
        rows[hand].push({ start: at, kind: motion.kind, confidence: motion.confidence });
      }
  }
  const findings = [...before, finding('propose/no-cycle', {}, { method: method.method.name })];
  return { cycles: [], ...rows, spans, kept: method.kept, findings };
}

interface RoughMotion {
  readonly at: number;
  readonly kind: MotionKind;
  readonly confidence: number;
}

function handRow(
  signals: Signals,
  hand: Hand,
  { start, end }: { start: number; end: number },
): RoughMotion[] {
  const { data, opens, seen } = handSignals(signals, hand);
  const first = Math.max(0, Math.round((start - signals.from) / step));
  const last = Math.min(signals.count, Math.round((end - signals.from) / step));
  if (seen < 0.02 || last <= first) return [{ at: start, kind: 'unmarked', confidence: 0.01 }];
  const value = (point: number, of: number) => data[point * channels + of] as number;
  const speeds = Array.from(
    { length: signals.count },
    (_, point) => Math.exp(value(point, channel.speed)) - 0.06,
  );
  const limit = 0.22 * Math.max(0.05, quantile(speeds.filter(Number.isFinite), 0.95));
  const wide = opens
    ? split(Array.from({ length: signals.count }, (_, point) => value(point, channel.open)))
    : Number.NaN;
  const pieces: Piece[] = [];
  for (let point = first; point < last; point += 1) {
    const speed = speeds[point] as number;
    const before = pieces.at(-1);
    const moving = Number.isNaN(speed)
      ? (before?.moving ?? false)
      : speed > (before?.moving ? 0.7 : 1) * limit;
    if (before !== undefined && before.moving === moving) before.to = point + 1;
    else pieces.push({ from: point, to: point + 1, moving, open: Number.NaN });
  }
  const joined = withoutShort(pieces);
  for (const piece of joined) piece.open = openShare(piece, (point) => value(point, channel.open), wide);
  return joined.flatMap((piece, index) =>
    named(piece, joined[index - 1], joined[index + 1], signals, value, wide),
  );
}

function withoutShort(pieces: readonly Piece[]): Piece[] {
  const kept: Piece[] = [];
  for (const piece of pieces) {
    const before = kept.at(-1);
    const short = (piece.to - piece.from) * step < shortest;
    if (before !== undefined && (short || before.moving === piece.moving)) before.to = piece.to;
    else kept.push({ ...piece });
  }
  return kept;
}

function openShare({ from, to }: Piece, open: (point: number) => number, wide: number): number {
  let number = 0;
  let above = 0;
  for (let point = from; point < to; point += 1) {
    if (Number.isNaN(open(point))) continue;
    number += 1;
    if (open(point) > wide) above += 1;
  }
  return number === 0 || Number.isNaN(wide) ? Number.NaN : above / number;
}

/** The level that parts two heaps best: the largest variance between them (Otsu 1979, IEEE Trans. SMC 9:62). */
function split(values: readonly number[]): number {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  const total = sorted.reduce((sum, value) => sum + value, 0);
  let below = 0;
  let best = -1;
  let level = Number.NaN;
  for (let index = 1; index < sorted.length; index += 1) {
    below += sorted[index - 1] as number;
    const gap = below / index - (total - below) / (sorted.length - index);
    const between = index * (sorted.length - index) * gap * gap;
    if (between > best) {
      best = between;
      level = ((sorted[index - 1] as number) + (sorted[index] as number)) / 2;
    }
  }
  return level;
}

function named(
  piece: Piece,
  before: Piece | undefined,
  after: Piece | undefined,
  signals: Signals,
  value: (point: number, of: number) => number,
  wide: number,
): RoughMotion[] {
  const at = signals.from + piece.from * signals.step;
  const open = piece.open;
  if (piece.moving) {
    if (Number.isNaN(open)) return [{ at, kind: 'TE', confidence: 0.35 }];
    return [{ at, kind: open > 0.5 ? 'TE' : 'TL', confidence: 0.4 + 0.4 * Math.abs(2 * open - 1) }];
  }
  if (Number.isNaN(open)) return [{ at, kind: 'UD', confidence: 0.25 }];
  const [came, goes] = [before?.open ?? Number.NaN, after?.open ?? Number.NaN];
  if (came > 0.5 && goes <= 0.5) return [{ at, kind: 'G', confidence: 0.6 }];
  if (came <= 0.5 && goes > 0.5) return letGo(piece, at, signals, value, wide);
  return [{ at, kind: open > 0.5 ? 'UD' : 'H', confidence: 0.5 }];
}

/** Still while it opens: a hold, where that is long enough, and the release where the hand opens. */
function letGo(
  piece: Piece,
  at: number,
  signals: Signals,
  value: (point: number, of: number) => number,
  wide: number,
): RoughMotion[] {
  let opening = piece.to - 1;
  while (opening > piece.from && value(opening - 1, channel.open) > wide) opening -= 1;
  const begins = Math.max(piece.from, opening - Math.round(0.1 / step));
  if ((begins - piece.from) * step < shortest * 2) return [{ at, kind: 'RL', confidence: 0.55 }];
  return [
    { at, kind: 'H', confidence: 0.5 },
    { at: signals.from + begins * signals.step, kind: 'RL', confidence: 0.5 },
  ];
}
