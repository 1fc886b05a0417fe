import type { Instance } from './instance.ts';

/** What tasks have to wait for: a slot for each group of tasks that wait for the same ones with the same lags. */
export interface Slots {
  /** Slot of each task, −1 where it waits for nothing that its hand does not wait for anyway. */
  readonly of: Int32Array;
  /** The waiting tasks of each slot; none for the slots of the eyes, which come first. */
  readonly members: readonly (readonly number[])[];
  /** For each task the slots of those that wait for it. */
  readonly lags: readonly (readonly { readonly slot: number; readonly lag: number }[])[];
}

/** Seen from the beginning of the cycle, or from its end: then those that come before wait for those that come after. */
export function slotsOf(instance: Instance, looks: number, backward: boolean): Slots {
  const { tasks } = instance;
  const waits = tasks.map((): { readonly task: number; readonly lag: number }[] => []);
  tasks.forEach(({ after }, later) => {
    for (const { task, lag } of after) {
      if (lag === 0 && isTied(instance, task, later)) continue;
      if (backward) waits[task]?.push({ task: later, lag });
      else waits[later]?.push({ task, lag });
    }
  });
  const members: number[][] = Array.from({ length: looks }, () => []);
  const lags = tasks.map((): { slot: number; lag: number }[] => []);
  const known = new Map<string, number>();
  const of = Int32Array.from(waits, (list, task) => {
    if (list.length === 0) return -1;
    const key = list.map((wait) => `${wait.task}+${wait.lag}`).join();
    const found = known.get(key);
    if (found !== undefined) {
      members[found]?.push(task);
      return found;
    }
    const slot = members.push([task]) - 1;
    known.set(key, slot);
    for (const wait of list) lags[wait.task]?.push({ slot, lag: wait.lag });
    return slot;
  });
  return { of, members, lags };
}

/** One task leaves in a hand what the other takes, and no other task has to do with it: the same hand does both in turn. */
function isTied({ tasks }: Instance, earlier: number, later: number): boolean {
  const loads = (task: number, when: 'before' | 'after') =>
    new Set(tasks[task]?.modes.flatMap(({ left, right }) => [left?.[when], right?.[when]]));
  for (const load of loads(earlier, 'after')) {
    if (load === undefined || load === 0 || !loads(later, 'before').has(load)) continue;
    const users = tasks.filter(
      (_, task) => loads(task, 'before').has(load) || loads(task, 'after').has(load),
    );
    const always = (task: number, when: 'before' | 'after') =>
      tasks[task]?.modes.every(({ left, right }) => left?.[when] === load || right?.[when] === load) === true;
    if (users.length === 2 && always(earlier, 'after') && always(later, 'before')) return true;
  }
  return false;
}
