import type { Instance } from './instance.ts';

/**
 * Which tasks share the eyes: looks whose places lie apart, directly or by way of other looked-at places, are one group.
 * A look that is apart from no other look asks nothing of the eyes.
 */
export interface EyeGroups {
  /** Group of each task, −1 where the eyes bind nothing. */
  readonly of: readonly number[];
  readonly count: number;
}

export function eyeGroups({ tasks, apart }: Pick<Instance, 'tasks' | 'apart'>): EyeGroups {
  const of = tasks.map(() => -1);
  let count = 0;
  const looked = tasks.flatMap(({ eyes }, task) => (eyes === undefined ? [] : [{ task, eyes }]));
  for (const { task, eyes } of looked) {
    if ((of[task] ?? -1) >= 0 || !looked.some((other) => apart(eyes, other.eyes))) continue;
    of[task] = count;
    const open = [eyes];
    for (let place = open.pop(); place !== undefined; place = open.pop()) {
      for (const other of looked) {
        if ((of[other.task] ?? -1) >= 0 || !apart(place, other.eyes)) continue;
        of[other.task] = count;
        open.push(other.eyes);
      }
    }
    count += 1;
  }
  return { of, count };
}
