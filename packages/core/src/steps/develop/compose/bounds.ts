import type { Hand } from '../../../ground/study/index.ts';
import { percentText } from '../../../ground/units/index.ts';
import type { Tables } from './tables.ts';

/** What a cycle cannot be shorter than, and why. `order` stands for all rules together. */
export type Binding =
  | { readonly kind: 'hands' }
  | { readonly kind: 'hand'; readonly hand: Hand }
  | { readonly kind: 'eyes' }
  | { readonly kind: 'spot'; readonly name: string }
  | { readonly kind: 'chain'; readonly tasks: readonly string[] }
  | { readonly kind: 'order' };

export interface SingleBound {
  readonly binding: Binding;
  /** Microseconds. */
  readonly bound: number;
}

/** Bounds that rest on one thing each, the largest first. `forced` is what each hand must do whatever is chosen. */
export function singleBounds(t: Tables, forced: readonly [number, number]): readonly SingleBound[] {
  const work = t.duals.cost.reduce((sum, cost) => sum + cost, 0);
  const paths = chainsOf(t);
  const found: SingleBound[] = [
    { binding: { kind: 'hands' }, bound: Math.ceil(work / 2) },
    { binding: { kind: 'hand', hand: 'left' }, bound: forced[0] },
    { binding: { kind: 'hand', hand: 'right' }, bound: forced[1] },
    { binding: { kind: 'eyes' }, bound: eyesBound(t) },
  ];
  for (const { name, claimedBy, releasedBy } of t.instance.spots) {
    const bound = longestBetween(t, claimedBy, releasedBy);
    found.push({ binding: { kind: 'spot', name }, bound });
  }
  if (t.kind === 'closed') {
    const last = paths.reduce((best, path) => (path.time > best.time ? path : best), {
      time: 0,
      tasks: [] as number[],
    });
    const tasks = last.tasks.map((task) => t.instance.tasks[task]?.name ?? '');
    found.push({ binding: { kind: 'chain', tasks }, bound: last.time });
  }
  return found.sort((a, b) => b.bound - a.bound);
}

function leastTime({ instance }: Tables, task: number): number {
  return Math.min(...(instance.tasks[task]?.modes ?? []).map(({ time }) => time));
}

/** The longest chain of tasks that wait for each other up to each task, its own time included. */
function chainsOf(t: Tables): readonly { readonly time: number; readonly tasks: number[] }[] {
  const { tasks } = t.instance;
  const known: ({ time: number; tasks: number[] } | undefined)[] = tasks.map(() => undefined);
  const chainTo = (task: number): { time: number; tasks: number[] } => {
    const found = known[task];
    if (found !== undefined) return found;
    // Steps that wait for each other in a circle are no chain; the search tells them.
    known[task] = { time: 0, tasks: [] };
    let best: { time: number; tasks: number[] } = { time: 0, tasks: [] };
    for (const { task: before, lag } of tasks[task]?.after ?? []) {
      const { time, tasks: list } = chainTo(before);
      if (time + lag > best.time) best = { time: time + lag, tasks: list };
    }
    const made = { time: best.time + leastTime(t, task), tasks: [...best.tasks, task] };
    known[task] = made;
    return made;
  };
  return tasks.map((_, task) => chainTo(task));
}

/** The longest chain from the start of one task to the end of another; 0 when neither waits for the other. */
function longestBetween(t: Tables, from: number, to: number): number {
  const known = new Map<number, number>([[from, leastTime(t, from)]]);
  const reach = (task: number): number => {
    const found = known.get(task);
    if (found !== undefined) return found;
    known.set(task, Number.NEGATIVE_INFINITY);
    let best = Number.NEGATIVE_INFINITY;
    for (const { task: before, lag } of t.instance.tasks[task]?.after ?? [])
      best = Math.max(best, reach(before) + lag);
    best += leastTime(t, task);
    known.set(task, best);
    return best;
  };
  return Math.max(0, reach(to));
}

/**
 * Looked-at places that all lie apart from each other are looked at one after the other, each for at least half of its
 * looks (two hands), with a change of the gaze to each.
 */
function eyesBound(t: Tables): number {
  const total = new Float64Array(t.looks);
  const longest = new Float64Array(t.looks);
  t.look.forEach((look, task) => {
    if (look < 0) return;
    const time = leastTime(t, task);
    total[look] = (total[look] as number) + time;
    longest[look] = Math.max(longest[look] as number, time);
  });
  const weight = Array.from(total, (sum, look) => Math.max(sum / 2, longest[look] as number) + t.gazeGap);
  const chosen: number[] = [];
  for (const look of [...weight.keys()].sort((a, b) => (weight[b] as number) - (weight[a] as number)))
    if (chosen.every((other) => t.apart[look]?.includes(other) === true)) chosen.push(look);
  if (chosen.length < 2) return Math.max(0, ...longest);
  return Math.ceil(chosen.reduce((sum, look) => sum + (weight[look] as number), 0));
}

/** Words on what a bound rests on; `period` is that of the method beside it. */
export function bindingWords({ binding, bound }: SingleBound, period: number, proven: boolean): string {
  const reason = reasonWords(binding);
  if (proven && bound >= period) return `There is no shorter method with these times: ${reason}.`;
  const rest = percentText(1 - bound / period, 1);
  if (proven)
    return `There is no shorter method with these times; every other order and share of the work was ruled out. What binds most by itself: ${reason} (alone it would allow ${rest} less).`;
  return `Whether there is a shorter method is not known. What binds most by itself: ${reason}.`;
}

function reasonWords(binding: Binding): string {
  switch (binding.kind) {
    case 'hands':
      return 'the work of both hands together with the least moves between the steps, shared out evenly';
    case 'hand':
      return `the work that only the ${binding.hand} hand can do`;
    case 'eyes':
      return 'what the eyes must look at one after the other';
    case 'spot':
      return `the time that ${binding.name} is taken for each unit`;
    case 'chain':
      return `the steps that wait for each other, from “${binding.tasks[0] ?? ''}” to “${binding.tasks.at(-1) ?? ''}”`;
    case 'order':
      return 'all rules together';
  }
}
