/**
 * The shortest time in which two hands can do a few tasks, by trying every order and every choice of hand. A task may
 * begin only when all tasks named in its `after` are done. For at most seven tasks.
 */
export interface Task {
  readonly length: number;
  /** Positions of tasks that must be done before. */
  readonly after: readonly number[];
}

export function shortestTwoHanded(tasks: readonly Task[]): number {
  let best = Number.POSITIVE_INFINITY;
  const done: (number | undefined)[] = tasks.map(() => undefined);
  const place = (left: number, right: number, count: number): void => {
    if (Math.max(left, right) >= best) return;
    if (count === tasks.length) {
      best = Math.max(left, right);
      return;
    }
    tasks.forEach((task, index) => {
      if (done[index] !== undefined) return;
      const before = task.after.map((other) => done[other]);
      if (before.some((end) => end === undefined)) return;
      const ready = Math.max(0, ...before.map((end) => end ?? 0));
      for (const hand of ['left', 'right'] as const) {
        const end = Math.max(ready, hand === 'left' ? left : right) + task.length;
        done[index] = end;
        place(hand === 'left' ? end : left, hand === 'right' ? end : right, count + 1);
        done[index] = undefined;
      }
    });
  };
  place(0, 0, 0);
  return best;
}
