import { impossible, type Tables } from './tables.ts';

/**
 * What a full hand must wait for. Where it carries something that only tasks with predecessors to come can take, it stands
 * until the other hand has done those; the sooner this is counted, the fewer states are followed that lead nowhere.
 */
export interface Waiting {
  /** Ways that can follow a role on its hand, where nothing else but they can; undefined where the hand may do other things. */
  readonly follow: readonly [
    readonly (readonly number[] | undefined)[],
    readonly (readonly number[] | undefined)[],
  ];
  /** Least time from the end of one role of a hand to the start of another, with what may lie between; from · roles + to. */
  readonly reach: readonly [Float64Array, Float64Array];
}

/** For each role after which a hand is full the ways that can follow it on that hand; none for the others. */
export function fullFollowers(t: Tables, side: 0 | 1): readonly (readonly number[])[] {
  const count = t.roles[side];
  const wayOf = wayOfRole(t, side);
  return Array.from({ length: count }, (_, role) => {
    if (t.full[side][role] === 0) return [];
    const ways: number[] = [];
    for (let to = 0; to < count; to += 1) {
      const fits = (t.setup[side][role * count + to] as number) < impossible;
      if (fits && t.roleTask[side][to] !== t.roleTask[side][role]) ways.push(wayOf[to] as number);
    }
    return ways;
  });
}

function wayOfRole(t: Tables, side: 0 | 1): Int32Array {
  const wayOf = new Int32Array(t.roles[side]);
  t.wayRole[side].forEach((role, way) => {
    if (role >= 0) wayOf[role] = way;
  });
  return wayOf;
}

/** Beyond so many roles the paths between all of them take too long to find. */
const mostRoles = 160;

export function waitingOf(t: Tables): Waiting | undefined {
  if (Math.max(...t.roles) > mostRoles) return undefined;
  return { follow: [followers(t, 0), followers(t, 1)], reach: [reaches(t, 0), reaches(t, 1)] };
}

function followers(t: Tables, side: 0 | 1): (readonly number[] | undefined)[] {
  const count = t.roles[side];
  return fullFollowers(t, side).map((ways, role) => {
    if (t.full[side][role] === 0) return undefined;
    const back = t.wrap[side].subarray(role * count, (role + 1) * count);
    if (back.some((time) => time < impossible)) return undefined;
    // Other tasks that wait for this one may not be held back by what its hand waits for.
    const own = t.roleTask[side][role] as number;
    const tasks = new Set(ways.map((way) => t.wayTask[way] as number));
    for (let task = 0; task < t.count; task += 1)
      if (isBefore(t, own, task) && !tasks.has(task)) return undefined;
    return ways;
  });
}

export function isBefore(t: Tables, earlier: number, task: number): boolean {
  return (((t.before[task * t.words + (earlier >> 5)] as number) >>> (earlier & 31)) & 1) === 1;
}

/** Shortest paths after Floyd and Warshall. */
function reaches(t: Tables, side: 0 | 1): Float64Array {
  const count = t.roles[side];
  const time = new Int32Array(count);
  t.wayRole[side].forEach((role, way) => {
    if (role >= 0) time[role] = t.wayTime[way] as number;
  });
  const reach = Float64Array.from(t.setup[side], (move) =>
    move >= impossible ? Number.POSITIVE_INFINITY : move,
  );
  for (let middle = 0; middle < count; middle += 1) {
    for (let from = 0; from < count; from += 1) {
      const begun = (reach[from * count + middle] as number) + (time[middle] as number);
      if (!Number.isFinite(begun)) continue;
      for (let to = 0; to < count; to += 1) {
        const all = begun + (reach[middle * count + to] as number);
        if (all < (reach[from * count + to] as number)) reach[from * count + to] = all;
      }
    }
  }
  return reach;
}

/** Least time from the end of the other hand's last role until a task can begin that is to be done by it first. */
export function leastUntil(t: Tables, waiting: Waiting, task: number, other: 0 | 1, last: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let way = t.wayFrom[task] as number; way < (t.wayFrom[task + 1] as number); way += 1) {
    const role = t.wayRole[other][way] as number;
    if (role < 0 || (t.wayRole[1 - other] as Int32Array)[way] !== -1) continue;
    const reach = waiting.reach[other][last * t.roles[other] + role] as number;
    least = Math.min(least, reach + (t.wayTime[way] as number));
  }
  return least;
}
