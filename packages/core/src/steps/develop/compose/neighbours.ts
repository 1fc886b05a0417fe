import { setBit, type Tables } from './tables.ts';

/** What stays of a known cycle: ways of the fixed tasks and, for each hand, their order. */
export interface Neighbourhood {
  readonly allowed: Uint8Array;
  readonly before: Int32Array;
}

/** Frees some tasks of a cycle; all others keep their way and their order on each hand. */
export function freed(t: Tables, ways: readonly number[], free: ReadonlySet<number>): Neighbourhood {
  const allowed = new Uint8Array(t.wayTask.length);
  const before = t.before.slice();
  const last = [-1, -1];
  for (const way of ways) {
    const task = t.wayTask[way] as number;
    if (free.has(task)) {
      allowed.fill(1, t.wayFrom[task] as number, t.wayFrom[task + 1] as number);
      continue;
    }
    allowed[way] = 1;
    for (const side of [0, 1] as const) {
      if ((t.wayRole[side][way] as number) < 0) continue;
      const earlier = last[side] as number;
      if (earlier >= 0) setBit(before, task * t.words, earlier);
      last[side] = task;
    }
  }
  return { allowed, before };
}

/** All ways of all tasks, but none starts before another that comes `span` places or more ahead of it in an order. */
export function near(t: Tables, order: readonly number[], span: number): Neighbourhood {
  const before = t.before.slice();
  order.forEach((task, position) => {
    for (const earlier of order.slice(0, Math.max(0, position - span + 1)))
      setBit(before, task * t.words, earlier);
  });
  return { allowed: new Uint8Array(t.wayTask.length).fill(1), before };
}

/** The tasks as they are listed, but none before one that it waits for; what waits for itself is left out. */
export function listedOrder({ instance: { tasks } }: Tables): readonly number[] {
  const order: number[] = [];
  const done = new Set<number>();
  for (let more = true; more; ) {
    more = false;
    tasks.forEach(({ after }, task) => {
      if (done.has(task) || after.some(({ task: earlier }) => !done.has(earlier))) return;
      done.add(task);
      order.push(task);
      more = true;
    });
  }
  return order;
}

/**
 * Tasks that belong together because one leaves in a hand what only another takes: to free one without the other would
 * leave nothing to choose.
 */
export function jobsOf(t: Tables): readonly (readonly number[])[] {
  const { tasks } = t.instance;
  const job = tasks.map((_, task) => task);
  const root = (task: number): number => {
    let at = task;
    while (job[at] !== at) at = job[at] as number;
    return at;
  };
  const holder = new Map<number, number>();
  tasks.forEach(({ modes }, task) => {
    for (const { left, right } of modes) {
      for (const role of [left, right]) {
        if (role === undefined || role.before === role.after) continue;
        for (const load of [role.before, role.after]) {
          if (load === 0) continue;
          const other = holder.get(load);
          if (other === undefined) holder.set(load, task);
          else job[root(task)] = root(other);
        }
      }
    }
  });
  const jobs = new Map<number, number[]>();
  tasks.forEach((_, task) => {
    const own = root(task);
    const list = jobs.get(own);
    if (list === undefined) jobs.set(own, [task]);
    else list.push(task);
  });
  return [...jobs.values()];
}

/** Whole jobs, either next to each other in the cycle or from anywhere, up to a number of tasks. */
export function chooseFree(
  t: Tables,
  jobs: readonly (readonly number[])[],
  ways: readonly number[],
  size: number,
  random: () => number,
): ReadonlySet<number> {
  const jobOf = new Map(jobs.flatMap((job) => job.map((task) => [task, job] as const)));
  const free = new Set<number>();
  const take = (way: number | undefined) => {
    for (const task of jobOf.get(t.wayTask[way ?? 0] ?? 0) ?? []) free.add(task);
  };
  const pick = () => Math.floor(random() * ways.length);
  if (random() < 0.5) {
    const from = pick();
    for (let step = 0; step < ways.length && free.size < size; step += 1)
      take(ways[(from + step) % ways.length]);
  } else while (free.size < Math.min(size, t.count)) take(ways[pick()]);
  return free;
}
