import type { ChangeId, WorkChange } from './change.ts';

/** What something costs once, in the currency of whoever asks. Low ≤ likely ≤ high. */
export interface CostRange {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export type Costs = ReadonlyMap<ChangeId, CostRange>;

/** The costs of several changes added up, low to low and high to high; undefined where one is not known. */
export function costOf(changes: readonly WorkChange[], costs: Costs): CostRange | undefined {
  let [low, likely, high] = [0, 0, 0];
  for (const { id } of changes) {
    const cost = costs.get(id);
    if (cost === undefined) return undefined;
    low += cost.low;
    likely += cost.likely;
    high += cost.high;
  }
  return { low, likely, high };
}
