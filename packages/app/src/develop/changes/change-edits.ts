import type { ChangeId, CostRange } from '@evenhand/core/develop';
import type { SingleEdit } from '@evenhand/core/ground/edit';
import type { KeptChange, KeptWork } from '@evenhand/core/ground/study';

/** What a change costs, as an edit of the study; without a cost it is taken away. Undefined where nothing would change. */
export function setCost(kept: KeptWork, id: ChangeId, cost: CostRange | undefined): SingleEdit | undefined {
  const was = kept.changes?.find(({ change }) => change === id) ?? null;
  const { cost: _, costRange: __, ...rest } = was ?? { change: id };
  if (cost === undefined) {
    if (was?.cost === undefined) return undefined;
    const settled = Object.keys(rest).length > 1;
    return { type: 'work-change.set', work: kept.id, to: settled ? rest : null, was };
  }
  const { low, likely, high } = cost;
  const range = low === high ? {} : { costRange: { low, high } };
  const to: KeptChange = { ...rest, cost: likely, ...range };
  return { type: 'work-change.set', work: kept.id, to, was };
}

export function setCurrency(kept: KeptWork, text: string): SingleEdit | undefined {
  const [was, to] = [kept.currency ?? null, text.trim().slice(0, 10) || null];
  if (was === to) return undefined;
  return { type: 'work.change', work: kept.id, to: { currency: to }, was: { currency: was } };
}
