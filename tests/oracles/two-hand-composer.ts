import type { CycleKind, Instance, Mode, Role } from '@evenhand/core/develop';

/**
 * The shortest period by trying everything: every order that keeps the precedence, every way of each task. For works of up to
 * six steps or so. Undefined when there is no method. It shares no code with the composer.
 */
export function shortestByTrial(instance: Instance, kind: CycleKind): number | undefined {
  let best: number | undefined;
  eachOrder(instance, (order, modes) => {
    const period = leastPeriod(instance, kind, order, modes, best);
    if (period !== undefined) best = period;
  });
  return best;
}

/** The least that both hands travel in any method that repeats at a period. */
export function leastTravelByTrial(instance: Instance, kind: CycleKind, period: number): number {
  let best = Number.POSITIVE_INFINITY;
  eachOrder(instance, (order, modes) => {
    const rules = rulesOf(instance, kind, order, modes);
    if (rules === undefined) return;
    const travel = travelOf(instance, order, modes);
    if (travel < best && canRepeat(rules, instance.tasks.length * 2 + 2, period)) best = travel;
  });
  return best;
}

/** The least difference between the times that the hands are occupied, in any method of a period and a travel. */
export function leastApartByTrial(
  instance: Instance,
  kind: CycleKind,
  period: number,
  travel: number,
): number {
  let best = Number.POSITIVE_INFINITY;
  eachOrder(instance, (order, modes) => {
    const rules = rulesOf(instance, kind, order, modes);
    if (rules === undefined || travelOf(instance, order, modes) > travel) return;
    const apart = Math.abs(
      occupied(instance, order, modes, 'left') - occupied(instance, order, modes, 'right'),
    );
    if (apart < best && canRepeat(rules, instance.tasks.length * 2 + 2, period)) best = apart;
  });
  return best;
}

/** Time that a hand works, holds or travels in a cycle. */
export function occupied(
  instance: Instance,
  order: readonly number[],
  modes: readonly number[],
  hand: 'left' | 'right',
): number {
  const own = order.filter((task) => instance.tasks[task]?.modes[modes[task] ?? 0]?.[hand] !== undefined);
  const work = own.reduce((sum, task) => sum + (instance.tasks[task]?.modes[modes[task] ?? 0]?.time ?? 0), 0);
  return work + travelOfHand(instance, order, modes, hand);
}

function travelOf(instance: Instance, order: readonly number[], modes: readonly number[]): number {
  return travelOfHand(instance, order, modes, 'left') + travelOfHand(instance, order, modes, 'right');
}

function travelOfHand(
  instance: Instance,
  order: readonly number[],
  modes: readonly number[],
  hand: 'left' | 'right',
): number {
  const roles = order.flatMap((task) => instance.tasks[task]?.modes[modes[task] ?? 0]?.[hand] ?? []);
  return roles.reduce((all, role, index) => {
    const wraps = index === roles.length - 1;
    return all + (moveTime(instance, hand, role, roles[wraps ? 0 : index + 1] ?? role, wraps) ?? 0);
  }, 0);
}

function eachOrder(
  { tasks }: Instance,
  visit: (order: readonly number[], modes: readonly number[]) => void,
): void {
  const count = tasks.length;
  const seen = new Set<string>();
  const tryAll = (order: readonly number[], modes: readonly number[]): void => {
    const using = (hand: 'left' | 'right') =>
      order.filter((task) => tasks[task]?.modes[modes[task] ?? 0]?.[hand] !== undefined);
    const looks = order.filter((task) => tasks[task]?.eyes !== undefined);
    // Orders that differ in nothing that is done are one.
    const key = JSON.stringify([modes, using('left'), using('right'), looks]);
    if (seen.has(key)) return;
    seen.add(key);
    visit(order, modes);
  };
  const choose = (order: readonly number[], task: number, modes: readonly number[]): void => {
    if (task === count) return tryAll(order, modes);
    for (let mode = 0; mode < (tasks[task]?.modes.length ?? 0); mode += 1)
      choose(order, task + 1, [...modes, mode]);
  };
  const permute = (order: readonly number[]): void => {
    if (order.length === count) return choose(order, 0, []);
    for (let task = 0; task < count; task += 1) {
      if (order.includes(task)) continue;
      if (tasks[task]?.after.some((before) => !order.includes(before.task)) === true) continue;
      permute([...order, task]);
    }
  };
  permute([]);
}

/** `later` may not start before `moment` after the start of `earlier`; one period is taken off when it is in the next cycle. */
interface Rule {
  readonly earlier: number;
  readonly later: number;
  readonly moment: number;
  readonly next: boolean;
}

/** The least whole period that these orders allow, if it is shorter than what is known; undefined when it is not. */
function leastPeriod(
  instance: Instance,
  kind: CycleKind,
  order: readonly number[],
  modes: readonly number[],
  known: number | undefined,
): number | undefined {
  const rules = rulesOf(instance, kind, order, modes);
  if (rules === undefined) return undefined;
  const size = instance.tasks.length * 2 + 2;
  let [low, high] = [0, known === undefined ? rules.reduce((sum, { moment }) => sum + moment, 0) : known - 1];
  if (high < 0 || !canRepeat(rules, size, high)) return undefined;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (canRepeat(rules, size, middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Does the same cycle fit again and again at this period? Starts are pushed later until every rule holds, or without end. */
function canRepeat(rules: readonly Rule[], size: number, period: number): boolean {
  const start = new Array<number>(size).fill(0);
  for (let round = 0; round <= size; round += 1) {
    let pushed = false;
    for (const { earlier, later, moment, next } of rules) {
      const least = (start[earlier] ?? 0) + moment - (next ? period : 0);
      if (least <= (start[later] ?? 0)) continue;
      start[later] = least;
      pushed = true;
    }
    if (!pushed) return true;
  }
  return false;
}

/** Moments beside the tasks: one before all looks that share the eyes (by their first task), one for both hands together. */
function rulesOf(
  instance: Instance,
  kind: CycleKind,
  order: readonly number[],
  modes: readonly number[],
): Rule[] | undefined {
  const { tasks, gazeGap, spots } = instance;
  const modeOf = (task: number): Mode | undefined => tasks[task]?.modes[modes[task] ?? 0];
  const time = (task: number) => modeOf(task)?.time ?? 0;
  const rules: Rule[] = [];
  const together = tasks.length * 2 + 1;
  for (const hand of ['left', 'right'] as const) {
    const done = order.flatMap((task) => {
      const role = modeOf(task)?.[hand];
      return role === undefined ? [] : [{ task, role }];
    });
    for (const [index, one] of done.entries()) {
      const wraps = index === done.length - 1;
      const other = done[wraps ? 0 : index + 1];
      const move = other === undefined ? undefined : moveTime(instance, hand, one.role, other.role, wraps);
      if (other === undefined || move === undefined) return undefined;
      rules.push({ earlier: one.task, later: other.task, moment: time(one.task) + move, next: wraps });
      if (kind === 'open' || !wraps) continue;
      rules.push({ earlier: together, later: other.task, moment: 0, next: false });
      rules.push({ earlier: one.task, later: together, moment: time(one.task) + move, next: true });
    }
  }
  tasks.forEach(({ after }, later) => {
    for (const { task, lag } of after)
      rules.push({ earlier: task, later, moment: time(task) + lag, next: false });
  });
  for (const { claimedBy, releasedBy } of spots)
    rules.push({ earlier: releasedBy, later: claimedBy, moment: time(releasedBy), next: true });
  return [...rules, ...lookRules(instance, order, time, gazeGap)];
}

function lookRules(
  { tasks, apart }: Instance,
  order: readonly number[],
  time: (task: number) => number,
  gap: number,
): Rule[] {
  const rules: Rule[] = [];
  const looks = order.filter((task) => tasks[task]?.eyes !== undefined);
  const far = (a: number, b: number) => apart(tasks[a]?.eyes ?? 0, tasks[b]?.eyes ?? 0);
  looks.forEach((earlier, index) => {
    for (const later of looks.slice(index + 1))
      if (far(earlier, later)) rules.push({ earlier, later, moment: time(earlier) + gap, next: false });
  });
  for (const task of looks) {
    if (!looks.some((other) => far(task, other))) continue;
    const eyes = tasks.length + Math.min(...connected(looks, task, far));
    rules.push({ earlier: eyes, later: task, moment: 0, next: false });
    rules.push({ earlier: task, later: eyes, moment: time(task) + gap, next: true });
  }
  return rules;
}

/** All looks that a look is apart from, directly or by way of others. */
function connected(
  looks: readonly number[],
  from: number,
  far: (a: number, b: number) => boolean,
): Set<number> {
  const found = new Set([from]);
  for (const task of found) for (const other of looks) if (far(task, other)) found.add(other);
  return found;
}

function moveTime(
  { travel, home }: Instance,
  hand: 'left' | 'right',
  from: Role,
  to: Role,
  wraps: boolean,
): number | undefined {
  if (wraps && home !== 'free') {
    if (from.after !== 0 || to.before !== 0) return undefined;
    return travel(hand, from.place, home[hand], 0) + travel(hand, home[hand], to.place, 0);
  }
  return from.after === to.before ? travel(hand, from.place, to.place, from.after) : undefined;
}
