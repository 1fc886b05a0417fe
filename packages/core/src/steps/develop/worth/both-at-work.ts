import type { Hand } from '../../../ground/study/index.ts';
import type { Instance, Schedule } from '../compose/index.ts';
import type { Work } from '../work/index.ts';

/**
 * Work that was timed while the other hand held or stood idle goes slower when both hands work at once: the hand that is
 * seen second takes longer, found with objects moved from place to place by both hands (Srinivasan & Martin 2013, abstract;
 * the size is ours). Drawn evenly between these.
 */
export const bothHandsSlower = { least: 1, most: 1.15 } as const;

interface Span {
  readonly start: number;
  readonly end: number;
}

/** Share of the cycle, 0 to 1, in which both hands work: do steps of their own or move. A hand that holds or waits does not. */
export function shareOfBothAtWork(work: Work, instance: Instance, schedule: Schedule): number {
  const { period } = schedule;
  if (period <= 0) return 0;
  const [left, right] = [atWork(work, instance, schedule, 'left'), atWork(work, instance, schedule, 'right')];
  let shared = 0;
  for (const one of left) {
    for (const other of right) {
      // The other hand may be a cycle or more before or behind: every shift of it that meets this span.
      const last = Math.ceil((one.end - other.start) / period);
      for (let shift = Math.floor((one.start - other.end) / period); shift <= last; shift += 1) {
        const begin = Math.max(one.start, other.start + shift * period);
        shared += Math.max(0, Math.min(one.end, other.end + shift * period) - begin);
      }
    }
  }
  return Math.min(1, shared / period);
}

/** Spans in which a hand works or moves; it moves as soon as it is free. */
function atWork(work: Work, { tasks, travel }: Instance, schedule: Schedule, hand: Hand): readonly Span[] {
  const order = schedule[hand];
  return order.flatMap((task, index): Span[] => {
    const placed = schedule.placed[task];
    const next = order[(index + 1) % order.length] ?? task;
    const way = tasks[task]?.modes[placed?.mode ?? 0];
    const role = way?.[hand];
    const goal = tasks[next]?.modes[schedule.placed[next]?.mode ?? 0]?.[hand];
    if (placed === undefined || way === undefined || role === undefined || goal === undefined) return [];
    const end = placed.start + way.time;
    const moved = end + travel(hand, role.place, goal.place, role.after);
    const kind = work.steps[task]?.hand;
    // Of the ways to do a step that either hand can do the left hand comes first; the second role only holds.
    const own =
      kind === 'both' || kind === hand || (kind === 'either' && (placed.mode === 0) === (hand === 'left'));
    return [...(own ? [{ start: placed.start, end }] : []), { start: end, end: moved }];
  });
}

/** How many times longer a cycle takes, given how much slower two working hands are in this draw. */
export function slowedBy(share: number, slower: number): number {
  return 1 + (slower - 1) * share;
}
