import { impossible, type Tables } from './tables.ts';

/** What a task takes at least of one hand, whichever way it is done. */
export function forcedWork(t: Tables, side: 0 | 1): Int32Array {
  return Int32Array.from({ length: t.count }, (_, task) => {
    let least = impossible;
    for (let way = t.wayFrom[task] as number; way < (t.wayFrom[task + 1] as number); way += 1) {
      const role = t.wayRole[side][way] as number;
      least = Math.min(least, role < 0 ? 0 : (t.wayTime[way] as number) + (t.leastIn[side][role] as number));
    }
    // A task that nothing leads to is found out by the search, which ends without a method.
    return least >= impossible ? 0 : least;
  });
}

/** Roles with which a hand may begin its cycle: some role at the end of one leads to them. */
export function mayBegin(t: Tables, side: 0 | 1): Uint8Array {
  const count = t.roles[side];
  return Uint8Array.from({ length: count }, (_, to) => {
    for (let from = 0; from < count; from += 1)
      if ((t.wrap[side][from * count + to] as number) < impossible) return 1;
    return 0;
  });
}
