import type { TimeStudyElement, TimeStudyReading } from '../../../ground/study/index.ts';

/** What is timed: elements of every cycle in their order, and those that come now and then. */
export interface WatchPlan {
  readonly order: readonly string[];
  readonly occasional: readonly string[];
}

/** A watch that runs on, or one that goes back to zero at each reading. */
export type WatchTiming = 'continuous' | 'repetitive';

export function watchPlan(elements: readonly Pick<TimeStudyElement, 'id' | 'occurs'>[]): WatchPlan {
  return {
    order: elements.filter(({ occurs }) => occurs === undefined).map(({ id }) => id),
    occasional: elements.filter(({ occurs }) => occurs !== undefined).map(({ id }) => id),
  };
}

/** Microseconds; together they are what passed from the beginning to the last press. */
export interface WatchSums {
  readonly readings: number;
  readonly foreign: number;
  readonly paused: number;
  /** Of missed, given up and unfinished elements. */
  readonly lost: number;
}

/** What was taken of one element in one cycle. */
export interface WatchReading {
  readonly element: string;
  /** As it goes into the time study; without a time when it was missed. */
  readonly reading: TimeStudyReading;
}

/** Elements that have no time each, and what they took together. */
export interface JointTime {
  readonly cycle: number;
  readonly elements: readonly string[];
  readonly us: number;
}

/** A stopwatch in use: plain data. Times are whole microseconds of one clock that never goes back. */
export interface WatchState {
  readonly plan: WatchPlan;
  readonly timing: WatchTiming;
  readonly phase: 'ready' | 'running' | 'paused' | 'ended';
  /** From 1. */
  readonly cycle: number;
  /** Elements of the order that were read, missed or skipped in this cycle. */
  readonly done: readonly string[];
  /** When the running element began. */
  readonly since: number;
  /** Paused and foreign time since then. */
  readonly off: number;
  /** Elements whose end was missed, the running one not among them: nobody knows when that one began. */
  readonly unsplit: JointTime | undefined;
  readonly foreign: { readonly since: number; readonly off: number } | undefined;
  readonly pausedSince: number | undefined;
  /** Of the running element, given before it ended. */
  readonly rating: number | undefined;
  readonly begun: number | undefined;
  readonly latest: number;
  readonly spent: WatchSums;
  /** How many foreign elements have ended. */
  readonly foreignCount: number;
  /** What was taken in this cycle, in the order of time. */
  readonly inCycle: readonly WatchReading[];
  readonly last: WatchReading | undefined;
  /** The elements whose end was missed last, with the time that they took together. */
  readonly joint: JointTime | undefined;
  /** The press that led here and the state before it. */
  readonly before: { readonly state: WatchState; readonly press: WatchCommand } | undefined;
}

/** What goes into the time study; `to` is null where it is taken out again. */
export type WatchChange =
  | {
      readonly kind: 'reading';
      readonly element: string;
      readonly cycle: number;
      readonly to: TimeStudyReading | null;
    }
  | {
      readonly kind: 'foreign';
      /** From 1, in the order in which they ended. */
      readonly count: number;
      readonly to: {
        readonly cycle: number;
        readonly element: string | undefined;
        readonly us: number;
      } | null;
    };

export type WatchCommand =
  | {
      readonly do: 'begin' | 'read' | 'miss' | 'skip' | 'foreign' | 'pause' | 'end' | 'new-cycle';
      readonly at: number;
    }
  /** What has just ended was this element; the expected one is still to come in this cycle. */
  | { readonly do: 'read-as'; readonly element: string; readonly at: number }
  | { readonly do: 'rate'; readonly of: 'running' | 'last'; readonly rating: number | undefined }
  /** Elements were added, taken away or put in another order meanwhile. */
  | { readonly do: 'plan'; readonly plan: WatchPlan }
  | { readonly do: 'take-back' };

export interface WatchStep {
  readonly state: WatchState;
  readonly changes: readonly WatchChange[];
  /** A sentence when the command could not be carried out; the state is then as it was. */
  readonly refused?: string;
  /** What was taken back. */
  readonly took?: WatchCommand;
}

/** @param start the first cycle that is timed, and elements of it that are not */
export function readyWatch(
  plan: WatchPlan,
  timing: WatchTiming,
  start: { readonly cycle?: number; readonly done?: readonly string[] } = {},
): WatchState {
  return {
    plan,
    timing,
    phase: 'ready',
    cycle: start.cycle ?? 1,
    done: start.done ?? [],
    since: 0,
    off: 0,
    unsplit: undefined,
    foreign: undefined,
    pausedSince: undefined,
    rating: undefined,
    begun: undefined,
    latest: 0,
    spent: { readings: 0, foreign: 0, paused: 0, lost: 0 },
    foreignCount: 0,
    inCycle: [],
    last: undefined,
    joint: undefined,
    before: undefined,
  };
}

/** The element that runs or, before the beginning, that will: the first of the order that is not done in this cycle. */
export function runningElement({ plan, done }: WatchState): string | undefined {
  return plan.order.find((id) => !done.includes(id));
}

/** The one after it, of the next cycle when it is the last. */
export function comingElement({ plan, done }: WatchState): string | undefined {
  return plan.order.filter((id) => !done.includes(id))[1] ?? plan.order[0];
}

/** How long the running element has taken, without what does not belong to it. */
export function runningTime(state: WatchState, now: number): number {
  if (state.phase === 'ready' || state.phase === 'ended') return 0;
  const until = state.foreign?.since ?? state.pausedSince ?? now;
  const foreignOff = state.foreign?.off ?? 0;
  return Math.max(0, until - state.since - (state.off - foreignOff));
}

/** How long the watch has run, pauses taken off; 0 before it began. */
export function elapsedTime({ begun, latest, phase, pausedSince, spent }: WatchState, now: number): number {
  if (begun === undefined) return 0;
  return Math.max(0, (phase === 'ended' ? latest : (pausedSince ?? now)) - begun - spent.paused);
}

/** What was read or missed last, the newest first, with the ratings that were given since. */
export function recentReadings(state: WatchState, count: number): readonly WatchReading[] {
  const found: WatchReading[] = [];
  let [link, last] = [state.before, state.last];
  while (link !== undefined && last !== undefined && found.length < count) {
    const { press, state: earlier } = link;
    if (press.do === 'read' || press.do === 'read-as' || press.do === 'miss') {
      found.push(last);
      last = earlier.last;
    }
    link = earlier.before;
  }
  return found;
}
