import type { Hand } from '../../../ground/study/index.ts';

/**
 * What one hand does in a task: where, and what it carries before and after; load 0 is an empty hand. One role may follow
 * another on a hand only if the load fits.
 */
export interface Role {
  readonly place: number;
  readonly before: number;
  readonly after: number;
}

/** One way of doing a task. With both roles both hands take part from its start to its end. */
export interface Mode {
  readonly left?: Role | undefined;
  readonly right?: Role | undefined;
  /** Microseconds, 0 or more. */
  readonly time: number;
}

export interface Task {
  readonly name: string;
  /** At least one; each has a role. */
  readonly modes: readonly Mode[];
  /** Tasks that must have ended before it starts, with what a machine or process takes in between, microseconds. */
  readonly after: readonly { readonly task: number; readonly lag: number }[];
  /** The place that must be looked at from its start to its end. */
  readonly eyes?: number | undefined;
}

/** Something that serves one unit at a time: a fixture, a machine. It binds the next cycle as well. */
export interface Spot {
  readonly name: string;
  /** Taken when this task starts. */
  readonly claimedBy: number;
  /** Free when this task ends. */
  readonly releasedBy: number;
}

/** A two-hand scheduling problem: what must be done in one cycle. Times are whole microseconds. */
export interface Instance {
  readonly tasks: readonly Task[];
  /** Names of the places. */
  readonly places: readonly string[];
  /** Names of the loads; the first is the empty hand. */
  readonly loads: readonly string[];
  /** From one place to another with a load. From a place to itself it need not be 0. */
  readonly travel: (hand: Hand, from: number, to: number, load: number) => number;
  /** Two looked-at places that cannot be seen at once. */
  readonly apart: (one: number, other: number) => boolean;
  /** From one looked-at place to another that is apart. */
  readonly gazeGap: number;
  readonly spots: readonly Spot[];
  /** Where the hands begin and end each cycle: anywhere, or at these places with empty hands. */
  readonly home: 'free' | Readonly<Record<Hand, number>>;
}

/**
 * `open`: each hand, the eyes and every spot begin their next cycle as soon as they are ready: the true steady state.
 * `closed`: both hands wait for each other between two cycles.
 */
export type CycleKind = 'open' | 'closed';

export interface PlacedTask {
  readonly task: number;
  readonly mode: number;
  /** Microseconds; the earliest task starts at 0. */
  readonly start: number;
}

/** A cyclic two-hand schedule: the same again after each period. */
export interface Schedule {
  readonly kind: CycleKind;
  readonly period: number;
  /** One for each task, by its number. */
  readonly placed: readonly PlacedTask[];
  /** Tasks of each hand in the order of the cycle. */
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Time that both hands travel in a cycle. */
  readonly travel: number;
}

export function roleOf(mode: Mode, hand: Hand): Role | undefined {
  return hand === 'left' ? mode.left : mode.right;
}

/**
 * Time from the end of one role to the start of another on one hand; undefined when what is carried does not fit. A hand
 * that goes on at the same place pays only what the instance says of staying.
 */
export function setupTime(
  { travel, home }: Pick<Instance, 'travel' | 'home'>,
  hand: Hand,
  from: Role,
  to: Role,
  throughHome = false,
): number | undefined {
  if (throughHome && home !== 'free') {
    if (from.after !== 0 || to.before !== 0) return undefined;
    return travel(hand, from.place, home[hand], 0) + travel(hand, home[hand], to.place, 0);
  }
  return from.after === to.before ? travel(hand, from.place, to.place, from.after) : undefined;
}
