import {
  type ChangeId,
  type CostRange,
  type Costs,
  changeOf,
  changesFor,
  combinationsOf,
  type FrontPoint,
} from '@evenhand/core/develop';
import type { Interval } from '@evenhand/core/ground/numerics';
import { type Answered, type DevelopAsked, wishOf } from '../developed-plain.ts';

/** A combination of the front as plain data. Times in microseconds a unit. */
export interface PlainPoint {
  readonly changes: readonly ChangeId[];
  readonly name: string;
  readonly unitTime: number;
  readonly proven: boolean;
  readonly saved: number;
  readonly interval: Interval;
  readonly cost: CostRange | undefined;
  readonly more: FrontPoint['more'];
}

export interface PlainFront {
  /** Time for a unit of the work as it is. */
  readonly base: number;
  readonly points: readonly PlainPoint[];
  readonly axis: 'cost' | 'changes';
  readonly withoutCost: readonly string[];
  readonly exact: boolean;
  readonly words: string;
}

export interface FrontAsked extends DevelopAsked {
  /** Changes that every combination has. */
  readonly taken: readonly ChangeId[];
  readonly more: readonly ChangeId[];
  readonly costs: readonly (readonly [ChangeId, CostRange])[];
}

/** States that the proof of one combination may keep: there are many of them. Ours. */
const provingStates = 120_000;

/** Every combination of the changes that are tried, or of those whose cost is known. */
export function frontOfWork(
  asked: FrontAsked,
  now: () => number,
  onTried: (tried: number) => void,
): Answered<PlainFront> {
  const { work } = asked;
  const costs: Costs = new Map(asked.costs);
  const named = [...asked.more, ...costs.keys()].flatMap((id) => changeOf(id, work) ?? []);
  const usual = changesFor(work).filter(
    (change) => !change.asked && !named.some(({ id }) => id === change.id),
  );
  const taken = asked.taken.flatMap((id) => changeOf(id, work) ?? []);
  const found = combinationsOf(work, [...usual, ...named], {
    ...wishOf(asked, now),
    states: provingStates,
    taken,
    costs,
    onTried,
  });
  if (!found.ok) return { ok: false, reason: found.error.message };
  const { base, front, axis, withoutCost, exact, words } = found.value;
  return {
    ok: true,
    value: {
      base: base.unitTime,
      points: front.map(plainPoint),
      axis,
      withoutCost: withoutCost.map(({ name }) => name),
      exact,
      words,
    },
  };
}

function plainPoint({ worth, cost, more }: FrontPoint): PlainPoint {
  const { changes, name, method, saved, interval } = worth;
  return {
    changes,
    name: name || 'As it is',
    unitTime: method.unitTime,
    proven: method.composed.proven,
    saved,
    interval,
    cost,
    more,
  };
}
