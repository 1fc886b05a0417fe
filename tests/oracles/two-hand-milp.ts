import type { CycleKind, Instance, Mode, Role } from '@evenhand/core/develop';
import loadHighs from 'highs';

/**
 * The shortest two-hand cycle as a mixed-integer program, written from the definition alone and solved by HiGHS: a binary
 * for each way of a task, for each succession on a hand and for each order of two looks, starts and the period as numbers.
 * Times of the instance must be whole milliseconds.
 */
export type MilpSolver = (instance: Instance, kind: CycleKind, known: number, seconds?: number) => MilpAnswer;

export interface MilpAnswer {
  readonly status: string;
  /** Microseconds, within the tolerance of the solver. */
  readonly period: number | undefined;
}

export async function milpSolver(): Promise<MilpSolver> {
  const highs = await loadHighs();
  return (instance, kind, known, seconds = 60) => {
    const text = programOf(instance, kind, known / 1000);
    const { Status, ObjectiveValue } = highs.solve(text, {
      time_limit: seconds,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-3,
      output_flag: false,
    });
    const period = Status === 'Optimal' ? ObjectiveValue * 1000 : undefined;
    return { status: Status, period };
  };
}

interface Node {
  readonly task: number;
  readonly mode: number;
  readonly role: Role;
  readonly time: number;
}

/** In the LP format, in milliseconds. A cycle of `known` exists, so nothing longer than 1.3 times that is looked at. */
function programOf(instance: Instance, kind: CycleKind, known: number): string {
  const { tasks } = instance;
  const rows: string[] = [];
  const binaries: string[] = [];
  const most = 1.3 * known;
  const lags = tasks.flatMap(({ after }) => after.map(({ lag }) => lag / 1000));
  const latest = 2 * most + Math.max(0, ...lags) + instance.gazeGap / 1000;
  const big = Math.ceil(latest + most);
  const row = (text: string) => rows.push(` r${rows.length}: ${text}`);
  const binary = (name: string) => {
    binaries.push(name);
    return name;
  };
  tasks.forEach(({ modes }, task) => {
    row(`${modes.map((_, mode) => binary(`x_${task}_${mode}`)).join(' + ')} = 1`);
  });
  for (const hand of ['left', 'right'] as const) addHand(instance, kind, hand, big, row, binary);
  tasks.forEach(({ after }, task) => {
    for (const { task: before, lag } of after)
      row(`s_${task} - s_${before}${minusTime(instance, before)} >= ${lag / 1000}`);
  });
  addEyes(instance, big, row, binary);
  for (const { claimedBy, releasedBy } of instance.spots)
    row(
      claimedBy === releasedBy
        ? `p${minusTime(instance, releasedBy)} >= 0`
        : `s_${claimedBy} + p - s_${releasedBy}${minusTime(instance, releasedBy)} >= 0`,
    );
  const bounds = tasks.map((_, task) => ` 0 <= s_${task} <= ${latest}`);
  return `Minimize\n o: p\nSubject To\n${rows.join('\n')}\nBounds\n 0 <= p <= ${most}\n${bounds.join('\n')}\nBinary\n ${binaries.join('\n ')}\nEnd\n`;
}

function addHand(
  { tasks, travel, home }: Instance,
  kind: CycleKind,
  hand: 'left' | 'right',
  big: number,
  row: (text: string) => void,
  binary: (name: string) => string,
): void {
  const nodes = tasks.flatMap(({ modes }, task) =>
    modes.flatMap((item: Mode, mode): Node[] => {
      const role = item[hand];
      return role === undefined ? [] : [{ task, mode, role, time: item.time / 1000 }];
    }),
  );
  const out: string[][] = nodes.map(() => []);
  const into: string[][] = nodes.map(() => []);
  const wraps: string[] = [];
  const arc = (name: string, a: number, b: number) => {
    binary(name);
    out[a]?.push(name);
    into[b]?.push(name);
  };
  nodes.forEach((one, a) => {
    nodes.forEach((other, b) => {
      const letter = hand[0];
      if (one.task !== other.task && one.role.after === other.role.before) {
        const move = travel(hand, one.role.place, other.role.place, one.role.after) / 1000;
        arc(`y${letter}_${a}_${b}`, a, b);
        row(`s_${other.task} - s_${one.task} - ${big} y${letter}_${a}_${b} >= ${one.time + move - big}`);
      }
      if (a !== b && one.task === other.task) return;
      let back: number | undefined;
      if (home !== 'free' && one.role.after === 0 && other.role.before === 0)
        back = travel(hand, one.role.place, home[hand], 0) + travel(hand, home[hand], other.role.place, 0);
      if (home === 'free' && one.role.after === other.role.before)
        back = travel(hand, one.role.place, other.role.place, one.role.after);
      if (back === undefined) return;
      const name = `w${letter}_${a}_${b}`;
      arc(name, a, b);
      wraps.push(name);
      const least = one.time + back / 1000 - big;
      if (kind === 'closed') row(`p - s_${one.task} - ${big} ${name} >= ${least}`);
      else if (a === b) row(`p - ${big} ${name} >= ${least}`);
      else row(`s_${other.task} + p - s_${one.task} - ${big} ${name} >= ${least}`);
    });
  });
  nodes.forEach(({ task, mode }, at) => {
    for (const list of [out[at] ?? [], into[at] ?? []])
      row(`${list.map((name) => `${name} + `).join('')}0 p - x_${task}_${mode} = 0`);
  });
  if (wraps.length > 0) row(`${wraps.join(' + ')} <= 1`);
}

function addEyes(
  instance: Instance,
  big: number,
  row: (text: string) => void,
  binary: (name: string) => string,
): void {
  const { tasks, apart } = instance;
  const gap = instance.gazeGap / 1000;
  const looks = tasks.flatMap(({ eyes }, task) => (eyes === undefined ? [] : [{ task, eyes }]));
  const group = new Map(looks.map(({ task }) => [task, task]));
  const bound = new Set<number>();
  for (const one of looks) {
    for (const other of looks) {
      if (one.task >= other.task || !apart(one.eyes, other.eyes)) continue;
      const [a, b] = [group.get(one.task), group.get(other.task)];
      for (const [task, own] of group) if (own === b) group.set(task, a ?? task);
      bound.add(one.task).add(other.task);
      const order = binary(`g_${one.task}_${other.task}`);
      row(
        `s_${other.task} - s_${one.task}${minusTime(instance, one.task)} - ${big} ${order} >= ${gap - big}`,
      );
      row(`s_${one.task} - s_${other.task}${minusTime(instance, other.task)} + ${big} ${order} >= ${gap}`);
    }
  }
  for (const task of bound) {
    const eyes = `e_${group.get(task)}`;
    row(`s_${task} - ${eyes} >= 0`);
    row(`${eyes} + p - s_${task}${minusTime(instance, task)} >= ${gap}`);
  }
}

/** The time of a task by the way that is chosen, to be taken away. */
function minusTime({ tasks }: Instance, task: number): string {
  return (tasks[task]?.modes ?? []).map(({ time }, mode) => ` - ${time / 1000} x_${task}_${mode}`).join('');
}
