import {
  type ChangeId,
  type ChangeWorth,
  type Composed,
  changeOf,
  compose,
  type DevelopedMethod,
  instanceOf,
  type Library,
  methodFromSchedule,
  type Orders,
  ordersOf,
  type PeriodInterval,
  periodInterval,
  predictWork,
  type Work,
  worthOf,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import { ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Interval } from '@evenhand/core/ground/numerics';
import type { Method, Study } from '@evenhand/core/ground/study';

/** What a composed method is called until a person gives it another name. */
const composedName = 'Composed method';

/** A composed method as plain data, so that it can come from another thread. Times in microseconds. */
export interface PlainMethod {
  readonly work: Work;
  readonly method: Method;
  readonly orders: Orders;
  readonly period: number;
  readonly unitTime: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly words: string;
  readonly expected: PeriodInterval | undefined;
  readonly notes: readonly string[];
  /** Where the time of each step comes from, by its id. */
  readonly sources: Readonly<Record<string, StepSource>>;
}

/** The time of a step and of each of its motions, microseconds, each with where it comes from. */
export interface StepSource {
  readonly us: number;
  readonly motions: readonly {
    readonly us: number;
    readonly words: string;
    /** Measured in another study. */
    readonly elsewhere: boolean;
  }[];
}

export interface PlainWorth {
  readonly changes: readonly ChangeId[];
  readonly name: string;
  readonly saved: number;
  readonly interval: Interval;
  readonly method: PlainMethod;
}

export interface DevelopAsked {
  readonly study: Study;
  readonly methodId: string;
  readonly work: Work;
  readonly kind: 'open' | 'closed';
  /** Records of other studies that a person chose. */
  readonly library?: Library | undefined;
  /** Milliseconds that one method may take before the best so far has to do. */
  readonly patience: number;
}

/** Milliseconds for a method on the desk, and for one that is searched for longer. Ours. */
export const usualPatience = 6000;
export const longPatience = 60_000;

export function wishOf({ study, methodId, kind, patience, library }: DevelopAsked, now: () => number) {
  const reading = readMethod(study, methodId);
  const end = now() + patience;
  return {
    readings: reading.ok ? [reading.value] : [],
    kind,
    library,
    seed: 1,
    rounds: 30,
    states: patience > usualPatience ? 2_000_000 : 250_000,
    stop: () => now() > end,
  };
}

export type Answered<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: string };

/** One question: the work as it stands is worked out once, and every change is held against it. */
export interface DevelopSession {
  readonly base: Answered<PlainMethod>;
  /** What these changes together leave; undefined where they have nothing to change. */
  readonly worth: (changes: readonly ChangeId[]) => PlainWorth | undefined;
}

/** @param onBetter called with every better method and bound, at most ten times a second */
export function developSession(
  asked: DevelopAsked,
  now: () => number,
  onBetter: (method: PlainMethod) => void = () => {},
): DevelopSession {
  const made = firstMethod(asked, now, onBetter);
  if (!made.ok) return { base: { ok: false, reason: made.error.message }, worth: () => undefined };
  return {
    base: { ok: true, value: plainMethod(made.value, composedName) },
    worth: (changes) => {
      const wanted = changes.flatMap((id) => changeOf(id, asked.work) ?? []);
      // What was taken before the work changed may be about a step that is gone.
      if (wanted.length < changes.length) return undefined;
      const worth = worthOf(made.value, asked.work, wanted, wishOf(asked, now));
      return worth === undefined ? undefined : plainOf(worth);
    },
  };
}

function firstMethod(
  { work, ...asked }: DevelopAsked,
  now: () => number,
  onBetter: (method: PlainMethod) => void,
): Result<DevelopedMethod, Finding> {
  const wish = wishOf({ work, ...asked }, now);
  const times = predictWork(work, wish.readings, { library: wish.library });
  const instance = instanceOf(work, times);
  const methodOf = (composed: Composed): DevelopedMethod => ({
    work,
    times,
    instance,
    composed,
    unitTime: composed.schedule.period / work.unitsPerCycle,
  });
  let told = now();
  const tell = (composed: Composed) => {
    if (composed.proven || now() - told < 100) return;
    told = now();
    onBetter(plainMethod(methodOf(composed), composedName, false));
  };
  const composed = compose(instance, { ...wish, onBetter: tell });
  return composed.ok ? ok(methodOf(composed.value)) : composed;
}

function plainOf({ changes, name, saved, interval, method }: ChangeWorth): PlainWorth {
  return { changes, name, saved, interval, method: plainMethod(method, `Composed: ${name}`) };
}

function plainMethod(
  { work, times, instance, composed, unitTime }: DevelopedMethod,
  name: string,
  withInterval = true,
): PlainMethod {
  const { schedule, bound, proven, words } = composed;
  const orders = ordersOf(instance, schedule);
  return {
    work,
    method: methodFromSchedule(work, times, instance, schedule, {
      id: 'composed',
      name: name.slice(0, 200),
      note: words,
    }),
    orders,
    period: schedule.period,
    unitTime,
    bound,
    proven,
    words,
    expected: withInterval ? periodInterval(work, times, orders, { draws: 120 }) : undefined,
    notes: times.notes.map(({ message }) => message),
    sources: Object.fromEntries(
      [...times.steps].map(([id, { us, motions }]) => [
        id,
        {
          us,
          motions: motions.map((motion) => ({
            us: motion.us,
            words: motion.words,
            elsewhere: motion.source.kind === 'measured' && motion.source.where === 'library',
          })),
        },
      ]),
    ),
  };
}
