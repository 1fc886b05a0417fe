import { type Micros, micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { percentText, timeText } from '../../../ground/units/index.ts';
import type { Piece, Segment, Trace } from '../reading/index.ts';
import { aCycle, cycleCount, meanCycle } from './context.ts';
import type { LeadContext } from './lead.ts';

export { otherHand } from '../../../ground/study/index.ts';

/** A run of neighbouring segments of one cycle that have something in common. */
export interface Stretch extends Trace {
  readonly duration: Micros;
}

export interface Stretches {
  /** In order of time. */
  readonly list: readonly Stretch[];
  /** Over all cycles, microseconds. */
  readonly total: Micros;
  /** Time of each piece of either hand that lies in them. */
  readonly within: ReadonlyMap<Piece, number>;
}

/** Where the two hands do what is asked for, over all cycles. */
export function stretchesOf(
  context: LeadContext,
  hand: Hand | 'both',
  fits: (segment: Segment) => boolean,
): Stretches {
  const list: Stretch[] = [];
  const fitting: Segment[] = [];
  let total = 0;
  let within: Stretches['within'] | undefined;
  context.segments.forEach((segments, cycle) => {
    for (const segment of segments) {
      if (segment.duration === 0 || !fits(segment)) continue;
      total += segment.duration;
      fitting.push(segment);
      extend(list, { cycle, hand, from: segment.from, to: segment.to, duration: segment.duration });
    }
  });
  return {
    list,
    total: micros(total),
    // Asked for only where there is a lead, and a table of every piece is dear.
    get within() {
      within ??= timesWithin(fitting);
      return within;
    },
  };
}

function timesWithin(segments: readonly Segment[]): ReadonlyMap<Piece, number> {
  const times = new Map<Piece, number>();
  for (const { duration, left, right } of segments) {
    times.set(left, (times.get(left) ?? 0) + duration);
    times.set(right, (times.get(right) ?? 0) + duration);
  }
  return times;
}

function extend(list: Stretch[], next: Stretch): void {
  const last = list.at(-1);
  if (last === undefined || last.cycle !== next.cycle || last.to !== next.from) list.push(next);
  else list[list.length - 1] = { ...last, to: next.to, duration: micros(last.duration + next.duration) };
}

export function traceOfStretch({ cycle, hand, from, to }: Stretch): Trace {
  return { cycle, hand, from, to };
}

/** "0.35 s a cycle, 12 % of it". @param total over all cycles, microseconds */
export function timeWords(context: LeadContext, total: number): string {
  const time = aCycle(context, total);
  return `${timeText(time, 'seconds')} a cycle, ${percentText(cycleShare(context, total), 0)} of it`;
}

/** Share of all chosen cycles, 0 to 1. @param total over all cycles, microseconds */
export function cycleShare(context: LeadContext, total: number): number {
  return aCycle(context, total) / Math.max(1, meanCycle(context));
}

/** "in 3 of 7 cycles". */
export function cycleWords(context: LeadContext, where: readonly { readonly cycle: number }[]): string {
  return `in ${cycleCount(where)} of ${context.cycles.length} cycles`;
}

/** In order of time, the left hand first. */
export function inOrder<T extends Trace>(traces: readonly T[]): T[] {
  return [...traces].sort((a, b) => a.cycle - b.cycle || a.from - b.from || (a.hand < b.hand ? -1 : 1));
}
