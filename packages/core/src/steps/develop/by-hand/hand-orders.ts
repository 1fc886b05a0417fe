import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { type Instance, type Orders, roleOf, type Schedule } from '../compose/index.ts';

/**
 * What a person does to a composed method: the rows of both hands in another order or with other hands. Nothing here asks
 * whether it can be done; that is what `judgeOrders` says. Undefined where there is nothing to do.
 */

/** The row of a hand; what both hands take part in stands in the other row in the same order, for they do it together. */
function withRow(orders: Orders, hand: Hand, row: readonly number[]): Orders {
  const other = otherHand(hand);
  const shared = row.filter((task) => orders[other].includes(task));
  let next = 0;
  const follows = orders[other].map((task) => {
    if (!shared.includes(task)) return task;
    next += 1;
    return shared[next - 1] ?? task;
  });
  return { ...orders, [hand]: row, [other]: follows };
}

/** A step one place earlier (−1) or later (1) in the row of a hand. */
export function moveInRow(orders: Orders, hand: Hand, task: number, by: -1 | 1): Orders | undefined {
  const row = orders[hand];
  const index = row.indexOf(task);
  const other = row[index + by];
  if (index < 0 || other === undefined) return undefined;
  return withRow(orders, hand, row.with(index, other).with(index + by, task));
}

/** Two steps take each other's places in the row of a hand. */
export function exchanged(orders: Orders, hand: Hand, one: number, other: number): Orders | undefined {
  const row = orders[hand];
  const [a, b] = [row.indexOf(one), row.indexOf(other)];
  if (a < 0 || b < 0 || a === b) return undefined;
  return withRow(orders, hand, row.with(a, other).with(b, one));
}

/** A step that stands before another in the row of a hand; behind all others without one. */
export function movedBefore(
  orders: Orders,
  hand: Hand,
  task: number,
  before: number | undefined,
): Orders | undefined {
  const row = orders[hand];
  if (!row.includes(task) || task === before) return undefined;
  const rest = row.filter((other) => other !== task);
  const index = before === undefined ? rest.length : rest.indexOf(before);
  if (index < 0) return undefined;
  const moved = rest.toSpliced(index, 0, task);
  return moved.every((other, position) => other === row[position]) ? undefined : withRow(orders, hand, moved);
}

/**
 * Steps done by the other hand: what holds then works, and what works then holds. A step that only one hand does goes to
 * where its time lies in the row of the other; the order of each hand stays what it was otherwise.
 * @param schedule that of the orders, valid or not
 */
export function toOtherHand(
  instance: Instance,
  orders: Orders,
  schedule: Schedule,
  tasks: readonly number[],
): Orders | undefined {
  const changing = tasks.filter((task) => (instance.tasks[task]?.modes.length ?? 0) > 1);
  if (changing.length === 0) return undefined;
  const modes = orders.modes.map((mode, task) => (changing.includes(task) ? 1 - mode : mode));
  const startOf = (task: number) => schedule.placed[task]?.start ?? 0;
  const rowOf = (hand: Hand): readonly number[] => {
    const stays = orders[hand].filter((task) => takesPart(instance, modes, task, hand));
    const comes = orders[otherHand(hand)]
      .filter((task) => takesPart(instance, modes, task, hand) && !stays.includes(task))
      .sort((a, b) => startOf(a) - startOf(b) || a - b);
    return comes.reduce((row: readonly number[], task) => {
      const index = row.findIndex((other) => startOf(other) > startOf(task));
      return row.toSpliced(index < 0 ? row.length : index, 0, task);
    }, stays);
  };
  return { ...orders, modes, left: rowOf('left'), right: rowOf('right') };
}

function takesPart({ tasks }: Instance, modes: readonly number[], task: number, hand: Hand): boolean {
  const mode = tasks[task]?.modes[modes[task] ?? 0];
  return mode !== undefined && roleOf(mode, hand) !== undefined;
}

/**
 * The steps that hang together with one because a hand goes from one to the next with something in it, in either hand: what
 * goes to the other hand as a whole without a load left behind.
 */
export function carriedTogether(instance: Instance, orders: Orders, task: number): readonly number[] {
  const found = new Set([task]);
  for (const member of found) {
    for (const hand of hands) {
      const row = orders[hand];
      const index = row.indexOf(member);
      const role = roleIn(instance, orders, member, hand);
      if (index < 0 || role === undefined) continue;
      const [before, after] = [row.at(index - 1), row[(index + 1) % row.length]];
      if (role.before !== 0 && before !== undefined) found.add(before);
      if (role.after !== 0 && after !== undefined) found.add(after);
    }
  }
  return [...found].sort((a, b) => a - b);
}

function roleIn({ tasks }: Instance, { modes }: Orders, task: number, hand: Hand) {
  const mode = tasks[task]?.modes[modes[task] ?? 0];
  return mode === undefined ? undefined : roleOf(mode, hand);
}
