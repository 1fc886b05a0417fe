import { type Micros, micros } from '../../../ground/base/index.ts';
import type { CycleModel } from './cycle-model.ts';
import { type Effect, type EffectTable, withEffects } from './effect.ts';
import { keptOrderCycle, mostTakenOut } from './kept-order.ts';
import { keptWorkBound, sharedWorkBound } from './shared-work.ts';

/** How far the work may be arranged anew: each hand keeps its own, or both hands share what remains. */
export type Arrangement = 'kept' | 'shared';

/** Seconds a cycle at stake: at least, if nothing else is rearranged; at most, if all goes well. 0 ≤ low ≤ high ≤ cycle. */
export interface Stake {
  readonly low: Micros;
  readonly high: Micros;
}

export const stakeRules: Readonly<Record<Arrangement, string>> = {
  kept: 'At least: the recorded cycle less the cycle in which every motion stays in its hand and begins only after all that had ended before it began; holds and waits last as long as what they wait for. At most: the time taken out, where both hands lose at once counted once, and never below what remains in the busier hand or in the longest chain of motions that one thing must go through.',
  shared:
    'At least: the recorded cycle less the cycle in which every motion stays in its hand and begins only after all that had ended before it began. At most: the recorded cycle less the longer of half the remaining work of both hands and the longest chain of motions that one thing must go through.',
};

/** What effects are worth in one cycle. */
export function stakeOf(model: CycleModel, effects: readonly Effect[], arrangement: Arrangement): Stake {
  if (effects.length === 0) return { low: micros(0), high: micros(0) };
  return withEffects(effects, (table) => stakeWith(model, table, arrangement));
}

function stakeWith(model: CycleModel, table: EffectTable, arrangement: Arrangement): Stake {
  const { cycle, segments } = model;
  const low = clamp(cycle.duration - keptOrderCycle(segments, table), 0, cycle.duration);
  const bound =
    arrangement === 'shared'
      ? sharedWorkBound(model, table)
      : Math.max(keptWorkBound(model, table), cycle.duration - mostTakenOut(segments, table));
  return { low, high: clamp(cycle.duration - bound, low, cycle.duration) };
}

function clamp(value: number, low: number, high: number): Micros {
  return micros(Math.round(Math.min(Math.max(value, low), high)));
}
