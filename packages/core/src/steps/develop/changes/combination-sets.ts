import type { Work } from '../work/index.ts';
import type { WorkChange } from './change.ts';
import { changedBy, clashOf, inOrder } from './rules.ts';

/** Changes that can be made together, and the work after them. */
export interface CombinationSet {
  /** Ids joined by commas: the same set always has the same. */
  readonly key: string;
  readonly changes: readonly WorkChange[];
  readonly work: Work;
}

/** Undefined when two of them exclude each other or one has nothing to change beside the others. */
export function setOf(work: Work, changes: readonly WorkChange[]): CombinationSet | undefined {
  if (clashOf(changes) !== undefined) return undefined;
  const ordered = inOrder(changes);
  const after = changedBy(work, ordered);
  if (after === undefined) return undefined;
  return { key: ordered.map(({ id }) => id).join(','), changes: ordered, work: after };
}

/** Every set that can be made of the changes beside those that are taken; undefined when there are more than `most`. */
export function allSets(
  work: Work,
  changes: readonly WorkChange[],
  taken: readonly WorkChange[],
  most: number,
): readonly CombinationSet[] | undefined {
  const found: CombinationSet[] = [];
  const choose = (index: number, chosen: readonly WorkChange[]): boolean => {
    if (clashOf(chosen) !== undefined) return true;
    const change = changes[index];
    if (change === undefined) {
      const set = setOf(work, chosen);
      if (set !== undefined) found.push(set);
      return found.length <= most;
    }
    return choose(index + 1, chosen) && choose(index + 1, [...chosen, change]);
  };
  return changes.length <= 20 && choose(0, taken) ? found : undefined;
}
