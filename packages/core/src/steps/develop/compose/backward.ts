import type { Role } from './instance.ts';
import { slotsOf } from './slots.ts';
import { both, classesOf, firstGains, impossible, setBit, type Tables } from './tables.ts';

/**
 * The same work seen from its end: what follows comes before, and the end of a task is where it starts. The search on
 * these tables commits tasks from the latest start to the earliest, and its moments are times from the start of a task to
 * the end of the cycle.
 */
export function backwardTables(t: Tables): Tables {
  const { count, words, instance } = t;
  const turned = (table: Int32Array, size: number) =>
    Int32Array.from(table, (_, at) => table[(at % size) * size + Math.floor(at / size)] as number);
  const setup = both((side) => turned(t.setup[side], t.roles[side]));
  const wrap = both((side) => turned(t.wrap[side], t.roles[side]));
  const before = new Int32Array(count * words);
  instance.tasks.forEach(({ after }, task) => {
    for (const { task: earlier } of after) setBit(before, earlier * words, task);
  });
  const slots = slotsOf(instance, t.looks, true);
  const longest = longestTimes(t);
  const out = both((side) => outWithTime(t, side, setup[side]));
  const ownColumns = t.kind === 'closed' ? 1 : 2;
  return {
    ...t,
    backward: true,
    roleClass: both((side) => classesOf(rolesOf(t, side), 'before')),
    full: both((side) => Uint8Array.from(rolesOf(t, side), ({ before: load }) => (load === 0 ? 0 : 1))),
    setup,
    wrap,
    leastOut: [out[0].least, out[1].least],
    mostOut: [out[0].most, out[1].most],
    leastIn: both((side) => leastOf(setup[side], wrap[side], t.roles[side])),
    firstGain: both((side) => firstGains(wrap[side], t.roles[side])),
    before,
    lagSlot: slots.of,
    lags: slots.lags,
    slotMembers: slots.members,
    slotReach: Int32Array.from(slots.members, (members, slot) =>
      slot < t.looks
        ? longestLooker(t, slot, longest)
        : members.reduce((most, task) => Math.max(most, longest[task] as number), 0),
    ),
    slots: slots.members.length,
    eyesFirst: t.gazeGap,
    eyesLast: 0,
    // A spot is taken, seen from behind, by what frees it.
    claims: t.releases.map((stays) => stays.map((stay) => ownColumns + stay)),
    releases: t.claims.map((columns) => columns.map((column) => column - ownColumns)),
    duals: { leave: t.duals.enter, enter: t.duals.leave, cost: t.duals.cost },
  };
}

function longestTimes(t: Tables): Int32Array {
  const longest = new Int32Array(t.count);
  t.wayTask.forEach((task, way) => {
    longest[task] = Math.max(longest[task] as number, t.wayTime[way] as number);
  });
  return longest;
}

function longestLooker(t: Tables, slot: number, longest: Int32Array): number {
  return longest.reduce(
    (most, time, task) =>
      (((t.lookers[slot * t.words + (task >> 5)] as number) >>> (task & 31)) & 1) === 1
        ? Math.max(most, time)
        : most,
    0,
  );
}

function rolesOf(t: Tables, side: 0 | 1): readonly Role[] {
  const roles: Role[] = [];
  t.wayTask.forEach((task, way) => {
    const mode = t.instance.tasks[task]?.modes[way - (t.wayFrom[task] as number)];
    const role = side === 0 ? mode?.left : mode?.right;
    if (role !== undefined) roles.push(role);
  });
  return roles;
}

/** Least and greatest way from a role to the far side of the next one. */
function outWithTime(t: Tables, side: 0 | 1, setup: Int32Array): { least: Int32Array; most: Int32Array } {
  const count = t.roles[side];
  const time = new Int32Array(count);
  t.wayRole[side].forEach((role, way) => {
    if (role >= 0) time[role] = t.wayTime[way] as number;
  });
  const least = new Int32Array(count).fill(impossible);
  const most = new Int32Array(count);
  for (let from = 0; from < count; from += 1) {
    for (let to = 0; to < count; to += 1) {
      const move = setup[from * count + to] as number;
      if (t.roleTask[side][from] === t.roleTask[side][to] || move >= impossible) continue;
      least[from] = Math.min(least[from] as number, move + (time[to] as number));
      most[from] = Math.max(most[from] as number, move + (time[to] as number));
    }
  }
  return { least, most };
}

function leastOf(setup: Int32Array, wrap: Int32Array, count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, to) => {
    let least = impossible;
    for (let from = 0; from < count; from += 1)
      least = Math.min(least, setup[from * count + to] as number, wrap[from * count + to] as number);
    return least;
  });
}
