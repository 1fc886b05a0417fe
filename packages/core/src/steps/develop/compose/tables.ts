import type { Hand } from '../../../ground/study/index.ts';
import { type Duals, dualsOf } from './duals.ts';
import { eyeGroups } from './eyes.ts';
import { type CycleKind, type Instance, type Role, roleOf, setupTime } from './instance.ts';
import { type Slots, slotsOf } from './slots.ts';

/** What cannot be: a setup between loads that do not fit. Sums of a few of it stay whole 32-bit numbers. */
export const impossible = 2 ** 29;
export const hands: readonly Hand[] = ['left', 'right'];

/**
 * An instance laid out in typed arrays for the search. Tasks, ways (one mode of one task) and roles (one hand of one way)
 * are numbers; a done set is `words` 32-bit words.
 */
export interface Tables {
  readonly instance: Instance;
  readonly kind: CycleKind;
  readonly count: number;
  readonly words: number;
  /** Everything is seen from the end of the cycle: see backward.ts. */
  readonly backward: boolean;
  /** Ways of task t are wayFrom[t] up to wayFrom[t + 1]. */
  readonly wayFrom: Int32Array;
  readonly wayTask: Int32Array;
  readonly wayTime: Int32Array;
  /** Role of each hand in a way, −1 where it takes no part. */
  readonly wayRole: readonly [Int32Array, Int32Array];
  readonly roleTask: readonly [Int32Array, Int32Array];
  readonly roles: readonly [number, number];
  /** Roles of a hand after which it is at the same place with the same load. */
  readonly roleClass: readonly [Int32Array, Int32Array];
  /** Roles after which a hand is full. */
  readonly full: readonly [Uint8Array, Uint8Array];
  /** setup[hand][from · roles + to] within a cycle, and wrap from the last role of a cycle to the first of the next. */
  readonly setup: readonly [Int32Array, Int32Array];
  readonly wrap: readonly [Int32Array, Int32Array];
  /** Least and greatest possible setup out of a role within a cycle; `impossible` and 0 where nothing can follow. */
  readonly leastOut: readonly [Int32Array, Int32Array];
  readonly mostOut: readonly [Int32Array, Int32Array];
  /** Least setup before a role, whatever comes before it. */
  readonly leastIn: readonly [Int32Array, Int32Array];
  /**
   * firstGain[hand][a · roles + b]: by how much a hand that began with role a may have begun its cycle later than one
   * that began with b and be as good at every possible end; below −`impossible` when it may not be compared.
   */
  readonly firstGain: readonly [Int32Array, Int32Array];
  /** Tasks that must be done before each, `words` words a task. */
  readonly before: Int32Array;
  /** Slots of what waits for each task, with the lag. */
  readonly lags: Slots['lags'];
  /** Slot in which is kept what a task waits for, −1 for none. The slots of the looks come first. */
  readonly lagSlot: Int32Array;
  /** All tasks that a slot holds back; none for those of the looks. */
  readonly slotMembers: Slots['members'];
  /** How long the longest task that a slot can hold back takes, where the clock bears on its other side; else 0. */
  readonly slotReach: Int32Array;
  /** Class of looked-at places of each task, −1 where the eyes bind nothing. Its slot is its number. */
  readonly look: Int32Array;
  readonly looks: number;
  readonly apart: readonly Int32Array[];
  /** Tasks that look at a place apart from each class, `words` words a class. */
  readonly lookers: Int32Array;
  readonly gazeGap: number;
  /** Where the gap between the looks of two cycles is counted: before the first one or after the last one. */
  readonly eyesFirst: number;
  readonly eyesLast: number;
  readonly slots: number;
  /** Columns: what comes again in the next cycle each for itself. Of a closed cycle both hands share the first one. */
  readonly columns: number;
  readonly handColumn: readonly [number, number];
  /** Column of the eyes for each task, −1 for none. */
  readonly eyesColumn: Int32Array;
  readonly claims: readonly (readonly number[])[];
  /** Rows (counted after those of the hands) whose end is kept to the end of the cycle, with the column each returns to. */
  readonly stays: number;
  readonly stayColumn: Int32Array;
  readonly releases: readonly (readonly number[])[];
  readonly eyesStay: Int32Array;
  readonly duals: Duals;
}

export function tablesOf(instance: Instance, kind: CycleKind): Tables {
  const { tasks } = instance;
  const words = Math.max(1, Math.ceil(tasks.length / 32));
  const ways = waysOf(instance);
  const earlier = closureOf(instance, words);
  const setup = both((side) => setupTable(instance, side, ways, earlier, false));
  const wrap = both((side) => setupTable(instance, side, ways, earlier, true));
  const roles: [number, number] = [ways.roles[0].length, ways.roles[1].length];
  const out = both((side) => outOf(setup[side], roles[side], ways.roleTask[side]));
  const before = new Int32Array(tasks.length * words);
  tasks.forEach(({ after }, task) => {
    for (const { task: earlier } of after) setBit(before, task * words, earlier);
  });
  return {
    instance,
    kind,
    count: tasks.length,
    words,
    backward: false,
    wayFrom: ways.wayFrom,
    wayTask: ways.wayTask,
    wayTime: ways.wayTime,
    wayRole: ways.wayRole,
    roleTask: ways.roleTask,
    roles,
    roleClass: both((side) => classesOf(ways.roles[side], 'after')),
    full: both((side) => Uint8Array.from(ways.roles[side], ({ after }) => (after === 0 ? 0 : 1))),
    setup,
    wrap,
    leastOut: [out[0].least, out[1].least],
    mostOut: [out[0].most, out[1].most],
    leastIn: both((side) => leastBefore(setup[side], wrap[side], roles[side])),
    firstGain: both((side) => firstGains(wrap[side], roles[side])),
    before,
    ...waits(instance, words),
    ...resources(instance, kind, wrap),
    duals: dualsOf(instance, ways, setup, wrap),
  };
}

export function both<T>(make: (side: 0 | 1) => T): [T, T] {
  return [make(0), make(1)];
}

export function setBit(bits: Int32Array, from: number, bit: number): void {
  bits[from + (bit >> 5)] = (bits[from + (bit >> 5)] as number) | (1 << (bit & 31));
}

export interface WayTables {
  readonly wayFrom: Int32Array;
  readonly wayTask: Int32Array;
  readonly wayTime: Int32Array;
  readonly wayRole: readonly [Int32Array, Int32Array];
  readonly roleTask: readonly [Int32Array, Int32Array];
  readonly roles: readonly [readonly Role[], readonly Role[]];
}

function waysOf({ tasks }: Instance): WayTables {
  const ways = tasks.flatMap(({ modes }, task) => modes.map((mode) => ({ task, mode })));
  const roles: [Role[], Role[]] = [[], []];
  const roleTask: [number[], number[]] = [[], []];
  const wayRole = both((side) =>
    Int32Array.from(ways, ({ task, mode }) => {
      const role = roleOf(mode, side === 0 ? 'left' : 'right');
      if (role === undefined) return -1;
      roleTask[side].push(task);
      return roles[side].push(role) - 1;
    }),
  );
  const wayFrom = new Int32Array(tasks.length + 1);
  tasks.forEach(({ modes }, task) => {
    wayFrom[task + 1] = (wayFrom[task] as number) + modes.length;
  });
  return {
    wayFrom,
    wayTask: Int32Array.from(ways, ({ task }) => task),
    wayTime: Int32Array.from(ways, ({ mode }) => mode.time),
    wayRole,
    roleTask: both((side) => Int32Array.from(roleTask[side])),
    roles,
  };
}

export function classesOf(roles: readonly Role[], when: 'before' | 'after'): Int32Array {
  const known = new Map<string, number>();
  return Int32Array.from(roles, (role) => {
    const name = `${role.place}|${role[when]}`;
    const found = known.get(name) ?? known.size;
    known.set(name, found);
    return found;
  });
}

/** All tasks that come before each, directly or by way of others, `words` words a task. */
function closureOf({ tasks }: Instance, words: number): Int32Array {
  const all = new Int32Array(tasks.length * words);
  tasks.forEach(({ after }, task) => {
    for (const { task: before } of after) setBit(all, task * words, before);
  });
  for (let middle = 0; middle < tasks.length; middle += 1) {
    for (let task = 0; task < tasks.length; task += 1) {
      if (!hasBit(all, task * words, middle)) continue;
      for (let word = 0; word < words; word += 1)
        all[task * words + word] =
          (all[task * words + word] as number) | (all[middle * words + word] as number);
    }
  }
  return all;
}

export function hasBit(bits: Int32Array, from: number, bit: number): boolean {
  return (((bits[from + (bit >> 5)] as number) >>> (bit & 31)) & 1) === 1;
}

/**
 * Setups between the roles of a hand. A task never follows one that must come after it; and the last of a cycle is not one
 * that must come before the first, which would then be done before it on the same hand.
 */
function setupTable(
  instance: Instance,
  side: 0 | 1,
  { roles, roleTask }: WayTables,
  earlier: Int32Array,
  wraps: boolean,
): Int32Array {
  const hand = side === 0 ? 'left' : 'right';
  const words = earlier.length / Math.max(1, instance.tasks.length);
  const own = roles[side];
  const table = new Int32Array(own.length ** 2);
  own.forEach((from, a) => {
    own.forEach((to, b) => {
      const [one, other] = [roleTask[side][a] as number, roleTask[side][b] as number];
      const barred = wraps ? hasBit(earlier, other * words, one) : hasBit(earlier, one * words, other);
      table[a * own.length + b] = barred
        ? impossible
        : (setupTime(instance, hand, from, to, wraps) ?? impossible);
    });
  });
  return table;
}

function outOf(setup: Int32Array, count: number, task: Int32Array): { least: Int32Array; most: Int32Array } {
  const least = new Int32Array(count).fill(impossible);
  const most = new Int32Array(count);
  for (let from = 0; from < count; from += 1) {
    for (let to = 0; to < count; to += 1) {
      const time = setup[from * count + to] as number;
      if (task[from] === task[to] || time >= impossible) continue;
      least[from] = Math.min(least[from] as number, time);
      most[from] = Math.max(most[from] as number, time);
    }
  }
  return { least, most };
}

function leastBefore(setup: Int32Array, wrap: Int32Array, count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, to) => {
    let least = impossible;
    for (let from = 0; from < count; from += 1) {
      least = Math.min(least, setup[from * count + to] as number, wrap[from * count + to] as number);
    }
    return least;
  });
}

export function firstGains(wrap: Int32Array, count: number): Int32Array {
  const gains = new Int32Array(count * count);
  for (let a = 0; a < count; a += 1) {
    for (let b = 0; b < count; b += 1) {
      let gain = impossible;
      for (let last = 0; last < count; last += 1) {
        const [mine, other] = [wrap[last * count + a] as number, wrap[last * count + b] as number];
        if (other < impossible) gain = Math.min(gain, other - mine);
      }
      gains[a * count + b] = gain;
    }
  }
  return gains;
}

/** Lags and looks: the slots of what a later task may have to wait for though its hand is ready. */
function waits(instance: Instance, words: number) {
  const { tasks } = instance;
  const groups = eyeGroups(instance);
  const classes: number[] = [];
  const alike = (a: number, b: number) =>
    !instance.apart(a, b) &&
    tasks.every(({ eyes }) => eyes === undefined || instance.apart(a, eyes) === instance.apart(b, eyes));
  const look = Int32Array.from(tasks, ({ eyes }, task) => {
    if (eyes === undefined || (groups.of[task] ?? -1) < 0) return -1;
    const known = classes.findIndex((place) => place === eyes || alike(place, eyes));
    return known >= 0 ? known : classes.push(eyes) - 1;
  });
  const apart = classes.map((one) =>
    Int32Array.from(classes.flatMap((other, index) => (instance.apart(one, other) ? [index] : []))),
  );
  const lookers = new Int32Array(classes.length * words);
  look.forEach((own, task) => {
    for (const other of own < 0 ? [] : (apart[own] ?? [])) setBit(lookers, other * words, task);
  });
  const slots = slotsOf(instance, classes.length, false);
  return {
    look,
    looks: classes.length,
    apart,
    lookers,
    gazeGap: instance.gazeGap,
    eyesFirst: 0,
    eyesLast: instance.gazeGap,
    lagSlot: slots.of,
    lags: slots.lags,
    slotMembers: slots.members,
    slotReach: new Int32Array(slots.members.length),
    slots: slots.members.length,
  };
}

/** What comes again in the next cycle. */
function resources(instance: Instance, kind: CycleKind, wrap: readonly [Int32Array, Int32Array]) {
  const { tasks, spots } = instance;
  const groups = eyeGroups(instance);
  const handColumn: [number, number] = kind === 'closed' ? [0, 0] : [0, 1];
  const own = kind === 'closed' ? 1 : 2;
  // A hand of a closed cycle that always takes as long to return as a look to elsewhere takes binds the eyes by itself.
  const least = Math.min(...wrap.map((table) => table.reduce((a, b) => Math.min(a, b), impossible)));
  const eyes = kind === 'closed' && least >= instance.gazeGap ? 0 : groups.count;
  // Every spot of a closed cycle is free when both hands have returned.
  const kept = kind === 'closed' ? [] : spots;
  const stays = eyes + kept.length;
  return {
    columns: own + stays,
    handColumn,
    eyesColumn: Int32Array.from(tasks, (_, task) => {
      const group = groups.of[task] ?? -1;
      return eyes === 0 || group < 0 ? -1 : own + group;
    }),
    eyesStay: Int32Array.from(tasks, (_, task) => (eyes === 0 ? -1 : (groups.of[task] ?? -1))),
    claims: tasks.map((_, task) =>
      kept.flatMap(({ claimedBy }, spot) => (claimedBy === task ? [own + eyes + spot] : [])),
    ),
    releases: tasks.map((_, task) =>
      kept.flatMap(({ releasedBy }, spot) => (releasedBy === task ? [eyes + spot] : [])),
    ),
    stays,
    stayColumn: Int32Array.from({ length: stays }, (_, stay) => own + stay),
  };
}
