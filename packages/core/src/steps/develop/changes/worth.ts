import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { type Interval, quantileOf, seededRandom } from '../../../ground/numerics/index.ts';
import type { MethodReading } from '../../examine/index.ts';
import {
  type Composed,
  type CycleKind,
  compose,
  type Instance,
  ordersOf,
  scheduleOf,
} from '../compose/index.ts';
import {
  drawTimes,
  type PredictionBase,
  predictedConfidence,
  predictWork,
  type WorkTimes,
} from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { bothHandsSlower, shareOfBothAtWork, slowedBy } from '../worth/index.ts';
import type { ChangeId, WorkChange } from './change.ts';
import { changedBy, changesFor, inOrder } from './rules.ts';

/** A work with its times and the best method for it. */
export interface DevelopedMethod {
  readonly work: Work;
  readonly times: WorkTimes;
  readonly instance: Instance;
  readonly composed: Composed;
  /** Microseconds for one unit. */
  readonly unitTime: number;
}

export interface DevelopWish {
  /** Records that the times are taken from. */
  readonly readings: readonly MethodReading[];
  /** A time table that its owner has a licence for. */
  readonly table?: PredictionBase['table'];
  /** Records of other studies, for what these have not measured. */
  readonly library?: PredictionBase['library'];
  readonly kind?: CycleKind | undefined;
  readonly seed: number;
  readonly rounds?: number | undefined;
  readonly states?: number | undefined;
  readonly stop?: (() => boolean) | undefined;
  /** Draws of the intervals; 120 when left out. */
  readonly draws?: number | undefined;
}

/** The best method for a work as it stands. */
export function developed(work: Work, wish: DevelopWish): Result<DevelopedMethod, Finding> {
  const times = predictWork(work, wish.readings, { table: wish.table, library: wish.library });
  const instance = instanceOf(work, times);
  const { kind, seed, rounds, states, stop } = wish;
  const composed = compose(instance, { kind, seed, rounds, states, stop });
  if (!composed.ok) return composed;
  return ok({
    work,
    times,
    instance,
    composed: composed.value,
    unitTime: composed.value.schedule.period / work.unitsPerCycle,
  });
}

/** What a change, or several together, leave of the time for a unit. */
export interface ChangeWorth {
  readonly changes: readonly ChangeId[];
  readonly name: string;
  readonly method: DevelopedMethod;
  /**
   * Microseconds for a unit that are saved at work against the work as it is: the middle of the draws. Below 0 where it takes
   * longer. The composed times alone differ by more where both hands work at once, because the draws let them be slower then.
   */
  readonly saved: number;
  /** 90 % interval of what is saved, both drawn with the same errors of pace and times. */
  readonly interval: Interval;
}

export interface WorthList {
  readonly base: DevelopedMethod;
  /** Largest saving first; of changes that are taken already, on top of those. */
  readonly single: readonly ChangeWorth[];
}

/** What each change is worth, composed anew for each. What only a person may ask for is left to the person. */
export function worthOfChanges(
  work: Work,
  wish: DevelopWish,
  changes: readonly WorkChange[] = changesFor(work).filter(({ asked }) => !asked),
  taken: readonly WorkChange[] = [],
): Result<WorthList, Finding> {
  const base = developed(work, wish);
  if (!base.ok) return base;
  const more = changes.filter(({ id }) => !taken.some((other) => other.id === id));
  const single = more.flatMap((change): ChangeWorth[] => {
    const worth = worthOf(base.value, work, [...taken, change], wish);
    return worth === undefined ? [] : [worth];
  });
  single.sort((a, b) => b.saved - a.saved || a.name.localeCompare(b.name, 'en'));
  return ok({ base: base.value, single });
}

/** Undefined when a change has nothing to change, or what it leaves cannot be done. */
export function worthOf(
  base: DevelopedMethod,
  work: Work,
  changes: readonly WorkChange[],
  wish: DevelopWish,
): ChangeWorth | undefined {
  const changed = changedBy(work, changes);
  if (changed === undefined) return undefined;
  const method = developed(changed, wish);
  return method.ok ? worthFrom(base, method.value, changes, wish) : undefined;
}

export function worthFrom(
  base: DevelopedMethod,
  method: DevelopedMethod,
  changes: readonly WorkChange[],
  wish: DevelopWish,
): ChangeWorth {
  const ordered = inOrder(changes);
  return {
    changes: ordered.map(({ id }) => id),
    name: ordered.map(({ name }) => name).join(' + '),
    method,
    ...savedBetween(base, method, wish),
  };
}

/** Both methods drawn with the same seeds, so that the pace and what was measured err in both alike; orders are kept. */
export function savedBetween(
  base: DevelopedMethod,
  changed: DevelopedMethod,
  { seed, draws = 120 }: DevelopWish,
): { readonly saved: number; readonly interval: Interval } {
  const [one, two] = [drawer(base), drawer(changed)];
  const random = seededRandom(seed ^ 0x2545f491);
  const saved: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    const slower = 1 + (bothHandsSlower.most - 1) * random();
    saved.push(one(seed + 7919 * draw, slower) - two(seed + 7919 * draw, slower));
  }
  saved.sort((a, b) => a - b);
  const tail = (1 - predictedConfidence) / 2;
  return {
    saved: Math.round(quantileOf(saved, 0.5)),
    interval: {
      low: Math.round(quantileOf(saved, tail)),
      high: Math.round(quantileOf(saved, 1 - tail)),
      confidence: predictedConfidence,
    },
  };
}

/** Time for a unit of a draw. A method that lets one hand hold or idle through is not slowed by the other. */
function drawer({
  work,
  times,
  instance,
  composed,
}: DevelopedMethod): (seed: number, slower: number) => number {
  const orders = ordersOf(instance, composed.schedule);
  return (seed, slower) => {
    const drawn = instanceOf(work, drawTimes(times, seed));
    const schedule = scheduleOf(drawn, orders) ?? composed.schedule;
    return (
      (schedule.period * slowedBy(shareOfBothAtWork(work, drawn, schedule), slower)) / work.unitsPerCycle
    );
  };
}
