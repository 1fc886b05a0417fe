import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { Instance, PlacedTask, Role, Schedule } from './instance.ts';

/**
 * What a schedule breaks, told by running three cycles of it one after the other. It shares no code with the composer and
 * looks at nothing but moments: who is where, what is carried, what is looked at, what is occupied.
 */
export function checkSchedule(instance: Instance, schedule: Schedule): readonly Finding[] {
  const { tasks } = instance;
  const found: Finding[] = [];
  const say = (reason: string) => found.push(finding('develop/schedule', {}, { reason }));
  const name = (task: number) => `“${tasks[task]?.name ?? task}”`;
  if (schedule.placed.length !== tasks.length || schedule.placed.some(({ task }, index) => task !== index)) {
    say('not every step is placed once');
    return found;
  }
  const runs = schedule.placed.flatMap((placed) =>
    [0, 1, 2].map((turn): Run => {
      const start = placed.start + turn * schedule.period;
      return {
        placed,
        turn,
        start,
        end: start + (tasks[placed.task]?.modes[placed.mode]?.time ?? Number.NaN),
      };
    }),
  );
  if (runs.some(({ start, end }) => !(end >= start))) say('a step is done in a way that it does not have');
  for (const hand of ['left', 'right'] as const) checkHand(instance, schedule, runs, hand, say, name);
  for (const { placed, turn, start } of runs) {
    for (const { task, lag } of tasks[placed.task]?.after ?? []) {
      const before = runs.find((run) => run.placed.task === task && run.turn === turn);
      if (before !== undefined && start < before.end + lag)
        say(`${name(placed.task)} starts before ${name(task)} allows it`);
    }
  }
  checkEyes(instance, runs, say, name);
  for (const spot of instance.spots) {
    for (const turn of [0, 1]) {
      const release = runs.find((run) => run.placed.task === spot.releasedBy && run.turn === turn);
      const claim = runs.find((run) => run.placed.task === spot.claimedBy && run.turn === turn + 1);
      if (release !== undefined && claim !== undefined && claim.start < release.end)
        say(`${spot.name} is taken again before it is free`);
    }
  }
  return [...new Map(found.map((item) => [item.message, item])).values()];
}

interface Run {
  readonly placed: PlacedTask;
  readonly turn: number;
  readonly start: number;
  readonly end: number;
}

function checkHand(
  instance: Instance,
  schedule: Schedule,
  runs: readonly Run[],
  hand: Hand,
  say: (reason: string) => void,
  name: (task: number) => string,
): void {
  const roleIn = ({ placed }: Run): Role | undefined =>
    instance.tasks[placed.task]?.modes[placed.mode]?.[hand];
  const own = runs
    .filter((run) => roleIn(run) !== undefined)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  const listed = [...schedule[hand]].sort((a, b) => a - b);
  const used = own.filter(({ turn }) => turn === 0).map(({ placed }) => placed.task);
  if (listed.join() !== used.sort((a, b) => a - b).join())
    say(`the order of the ${hand} hand names other steps than it does`);
  const { home } = instance;
  for (const [index, run] of own.entries()) {
    const next = own[index + 1];
    const [from, to] = [roleIn(run), next === undefined ? undefined : roleIn(next)];
    if (next === undefined || from === undefined || to === undefined) continue;
    const wraps = next.turn !== run.turn;
    const away = home !== 'free' && wraps;
    if (away ? from.after !== 0 || to.before !== 0 : from.after !== to.before) {
      say(
        `the ${hand} hand carries ${instance.loads[from.after]} after ${name(run.placed.task)}, which does not fit ${name(next.placed.task)}`,
      );
    }
    const way = away
      ? instance.travel(hand, from.place, home[hand], 0) + instance.travel(hand, home[hand], to.place, 0)
      : instance.travel(hand, from.place, to.place, from.after);
    if (next.start < run.end + way) say(`the ${hand} hand cannot be at ${name(next.placed.task)} in time`);
  }
  if (schedule.kind === 'closed') checkBarrier(runs, schedule, say);
}

/** Of a closed cycle: everything of a cycle starts before anything of the next, and no hand is away when it does. */
function checkBarrier(runs: readonly Run[], { period }: Schedule, say: (reason: string) => void): void {
  const first = runs.filter(({ turn }) => turn === 0);
  const start = Math.min(...first.map((run) => run.start));
  if (first.some(({ end }) => end > start + period)) say('a step of a closed cycle runs into the next one');
}

function checkEyes(
  { tasks, apart, gazeGap }: Instance,
  runs: readonly Run[],
  say: (reason: string) => void,
  name: (task: number) => string,
): void {
  const looked = runs.filter(({ placed }) => tasks[placed.task]?.eyes !== undefined);
  for (const [index, one] of looked.entries()) {
    for (const other of looked.slice(index + 1)) {
      const [a, b] = [tasks[one.placed.task]?.eyes ?? 0, tasks[other.placed.task]?.eyes ?? 0];
      if (one.placed.task === other.placed.task || !apart(a, b)) continue;
      const [first, second] = one.start <= other.start ? [one, other] : [other, one];
      if (second.start < first.end + gazeGap)
        say(
          `${name(first.placed.task)} and ${name(second.placed.task)} must both be looked at, and lie too far apart`,
        );
    }
  }
}
