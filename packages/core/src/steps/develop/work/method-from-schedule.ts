import type { Hand, Method, Motion } from '../../../ground/study/index.ts';
import type { Instance, Schedule } from '../compose/index.ts';
import type { WorkTimes } from '../predict/index.ts';
import type { Work, WorkStep } from './work-schema.ts';

/** A stretch of one hand on the time of the cycle, microseconds; it may run beyond the period into the next cycle. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly kind: Motion['kind'];
  readonly object?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly note?: string | undefined;
}

/**
 * One cycle of a composed method as a record would have it: the motions of each step, moves between places, holds and waits.
 * A hand moves as soon as it is free and waits where it arrives. What runs beyond the end of the cycle stands at its
 * beginning, for the cycle repeats.
 */
export function methodFromSchedule(
  work: Work,
  times: WorkTimes,
  instance: Instance,
  schedule: Schedule,
  facts: { readonly id: string; readonly name: string; readonly note?: string | undefined },
): Method {
  const row = (hand: Hand) => ({
    items: folded(handStretches(work, times, instance, schedule, hand), schedule.period).map(
      ({ start, kind, object, from, to, note }, index): Motion => ({
        id: `${hand[0]}${index + 1}`,
        start,
        kind,
        ...(object === undefined ? {} : { object }),
        ...(from === undefined ? {} : { from }),
        ...(to === undefined ? {} : { to }),
        ...(note === undefined ? {} : { note }),
        said: 'proposed',
      }),
    ),
    end: schedule.period,
  });
  const confirmed = (made: ReturnType<typeof row>) => ({
    ...made,
    // A composed method is what somebody designed: there is nothing to confirm on a film.
    items: made.items.map((item) => ({ ...item, said: 'marked' as const })),
  });
  return {
    id: facts.id,
    name: facts.name,
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: work.unitsPerCycle,
    left: confirmed(row('left')),
    right: confirmed(row('right')),
    cycles: { items: [{ id: 'c1', start: 0 }], end: schedule.period },
    ...(facts.note === undefined ? {} : { note: facts.note }),
  };
}

function handStretches(
  work: Work,
  times: WorkTimes,
  { tasks }: Instance,
  { period, placed, ...orders }: Schedule,
  hand: Hand,
): readonly Stretch[] {
  const order = orders[hand];
  if (order.length === 0) return [{ start: 0, end: period, kind: 'UD', note: 'not used' }];
  return order.flatMap((task, index): Stretch[] => {
    const step = work.steps[task];
    const at = placed[task];
    const nextTask = order[index + 1] ?? order[0] ?? task;
    const next = work.steps[nextTask];
    const nextAt = placed[nextTask];
    if (step === undefined || at === undefined || next === undefined || nextAt === undefined) return [];
    const end = at.start + (tasks[task]?.modes[at.mode]?.time ?? 0);
    const follows = nextAt.start + (index === order.length - 1 ? period : 0);
    const own = stepStretches(step, times, hand, at, end);
    return [
      ...own,
      ...gapStretches(
        work,
        times,
        hand,
        { task, end, mode: at.mode },
        { task: nextTask, start: follows, mode: nextAt.mode },
      ),
    ];
  });
}

/** Whether a hand works or holds in a way of doing a step. */
function works(step: WorkStep, mode: number, hand: Hand): boolean {
  if (step.hand === 'both' || step.hand === hand) return true;
  if (step.hand === 'either') return (mode === 0) === (hand === 'left');
  return false;
}

function stepStretches(
  step: WorkStep,
  times: WorkTimes,
  hand: Hand,
  { start, mode }: { readonly start: number; readonly mode: number },
  end: number,
): Stretch[] {
  if (!works(step, mode, hand)) {
    return [{ start, end, kind: 'H', object: step.held?.object, to: step.held?.place }];
  }
  const motions = times.steps.get(step.id)?.motions ?? [];
  let at = start;
  return step.motions.map(({ kind, object }, index): Stretch => {
    const from = at;
    const last = index === step.motions.length - 1;
    at = last ? end : Math.min(end, at + (motions[index]?.us ?? 0));
    const place = hand === 'right' ? (step.rightPlace ?? step.place) : step.place;
    return {
      start: from,
      end: at,
      kind,
      object,
      ...(kind === 'G' ? { from: place } : { to: place }),
      ...(index === 0 ? { note: step.name } : {}),
    };
  });
}

interface End {
  readonly task: number;
  readonly mode: number;
}

/** From the end of one step to the start of the next: the move, then what is left as a wait. */
function gapStretches(
  work: Work,
  times: WorkTimes,
  hand: Hand,
  from: End & { readonly end: number },
  to: End & { readonly start: number },
): Stretch[] {
  const [before, after] = [work.steps[from.task], work.steps[to.task]];
  if (before === undefined || after === undefined || to.start <= from.end) return [];
  const [start, goal] = [placeIn(before, from.mode, hand), placeIn(after, to.mode, hand)];
  const load = works(before, from.mode, hand) ? before.after : (before.held?.becomes ?? before.held?.object);
  const stays = start === goal && load !== undefined;
  const move = stays ? 0 : Math.min(to.start - from.end, times.travel(hand, start, goal, load).us);
  const arrived = from.end + move;
  const object = load ?? after.motions.find((motion) => motion.object !== undefined)?.object;
  return [
    ...(move > 0
      ? [
          {
            start: from.end,
            end: arrived,
            kind: load === undefined ? ('TE' as const) : ('TL' as const),
            object,
            from: start,
            to: goal,
          },
        ]
      : []),
    ...(to.start > arrived
      ? [
          load === undefined
            ? { start: arrived, end: to.start, kind: 'UD' as const, to: goal }
            : { start: arrived, end: to.start, kind: 'H' as const, object: load, to: goal },
        ]
      : []),
  ];
}

function placeIn(step: WorkStep, mode: number, hand: Hand): string {
  if (!works(step, mode, hand)) return step.held?.place ?? step.place;
  return hand === 'right' && step.hand === 'both' ? (step.rightPlace ?? step.place) : step.place;
}

/** Stretches laid on the circle of one period, without gaps, neighbours of one kind and thing joined. */
function folded(stretches: readonly Stretch[], period: number): readonly Stretch[] {
  const parts: Stretch[] = [];
  for (const stretch of stretches) {
    if (stretch.end <= stretch.start) continue;
    const turns = Math.floor(stretch.start / period);
    const [start, end] = [stretch.start - turns * period, stretch.end - turns * period];
    if (end <= period) parts.push({ ...stretch, start, end });
    else {
      parts.push({ ...stretch, start, end: period });
      parts.push({ ...stretch, start: 0, end: Math.min(period, end - period) });
    }
  }
  parts.sort((a, b) => a.start - b.start);
  const filled: Stretch[] = [];
  let at = 0;
  for (const part of parts) {
    if (part.start > at) filled.push({ start: at, end: part.start, kind: 'UD' });
    const last = filled.at(-1);
    const same =
      last !== undefined &&
      last.kind === part.kind &&
      last.object === part.object &&
      last.to === part.to &&
      part.note === undefined;
    if (same && last !== undefined) filled[filled.length - 1] = { ...last, end: part.end };
    else if (part.end > at) filled.push(part);
    at = Math.max(at, part.end);
  }
  if (at < period) filled.push({ start: at, end: period, kind: 'UD' });
  return filled;
}
