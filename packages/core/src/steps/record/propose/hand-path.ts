import type { ConfirmedCycle } from './confirmed.ts';
import type { FoundCycle } from './cycle-path.ts';
import type { HandSignals, Signals } from './signals.ts';
import { momentsOf, type UnlikeWeights, unlike } from './unlike.ts';

export interface HandPathWeights extends UnlikeWeights {
  /** Cost of standing still in the confirmed cycle, and of passing over a point of it, for a point of the film. */
  readonly still: number;
  readonly over: number;
  /** Spread about the common path of both hands, in seconds; of long cycles as a share of the confirmed one. */
  readonly apart: number;
  readonly apartShare: number;
}

export const handPathWeights: HandPathWeights = {
  place: 12,
  velocity: 2.5,
  speed: 1.8,
  open: 2.5,
  opens: 0,
  most: 3,
  still: 0.12,
  over: 0.12,
  apart: 1.2,
  apartShare: 0.1,
};

/**
 * Where one hand alone is in the confirmed cycle, for each time of a found one: both hands seldom keep exactly the same
 * step. The common path of both hands holds it back.
 */
export function handPath(
  signals: Signals,
  hand: HandSignals,
  confirmed: ConfirmedCycle,
  found: FoundCycle,
  weights: HandPathWeights = handPathWeights,
): Float64Array {
  const { step, from, count } = signals;
  const base = Math.max(0, Math.round((confirmed.start - from) / step));
  const length = Math.min(found.times.length, count - base);
  const first = Math.max(0, Math.round((found.start - from) / step));
  const span = Math.min(count, Math.round((found.end - from) / step)) - first;
  if (length < 3 || span < 3 || hand.seen < 0.02) return found.times;
  const apart = Math.max(weights.apart, weights.apartShare * (confirmed.end - confirmed.start));
  const reach = Math.max(10, Math.round((2.5 * apart) / step));
  const moments = momentsOf(hand, weights);
  const middle = new Int32Array(length);
  for (let at = 0; at < length; at += 1)
    middle[at] = Math.round(((found.times[at] as number) - from) / step) - first;
  const cost = new Float64Array(length * span).fill(Number.POSITIVE_INFINITY);
  const back = new Uint8Array(length * span);
  for (let at = 0; at < length; at += 1) {
    const low = Math.max(0, Math.min(span - 1, (middle[at] as number) - reach));
    const high = Math.min(span - 1, Math.max(0, (middle[at] as number) + reach));
    for (let point = low; point <= high; point += 1) {
      const cell = at * span + point;
      const off = ((point - (middle[at] as number)) * step) / apart;
      const own = unlike(moments, base + at, first + point) + 0.02 * off * off;
      let best = at === 0 ? weights.over * point * 0.3 : Number.POSITIVE_INFINITY;
      if (at === 0 && point === 0) best = 0;
      let way = 0;
      if (at > 0 && point > 0) best = cost[cell - span - 1] as number;
      if (at > 0 && (cost[cell - span] as number) + weights.over < best) {
        best = (cost[cell - span] as number) + weights.over;
        way = 1;
      }
      if (point > 0 && (cost[cell - 1] as number) + weights.still < best) {
        best = (cost[cell - 1] as number) + weights.still;
        way = 2;
      }
      cost[cell] = best + own;
      back[cell] = way;
    }
  }
  return walked(found, { cost, back, length, span, start: from + first * step, step });
}

interface Walk {
  readonly cost: Float64Array;
  readonly back: Uint8Array;
  readonly length: number;
  readonly span: number;
  readonly start: number;
  readonly step: number;
}

function walked(found: FoundCycle, { cost, back, length, span, start, step }: Walk): Float64Array {
  const times = Float64Array.from(found.times);
  let at = length - 1;
  let point = span - 1;
  for (let other = span - 1; other >= Math.max(0, span - 8); other -= 1)
    if ((cost[at * span + other] as number) < (cost[at * span + point] as number)) point = other;
  if (!Number.isFinite(cost[at * span + point])) return times;
  while (at >= 0 && point >= 0) {
    times[at] = start + point * step;
    const way = at === 0 ? 2 : (back[at * span + point] as number);
    if (at === 0) break;
    if (way !== 2) at -= 1;
    if (way !== 1) point -= 1;
  }
  return times;
}
