import { compose, instanceOf, predictWork, type Work, type WorkChange } from '@evenhand/core/develop';

export interface Combined {
  readonly changes: readonly string[];
  readonly effort: number;
  /** Microseconds a unit. */
  readonly unitTime: number;
}

/**
 * The slow second way: every subset of the changes, each applied in the order of the list, composed to its proof, and kept
 * where no other costs no more and takes less. No bound cuts anything, and which changes exclude each other is given.
 */
export function everyCombination(
  work: Work,
  changes: readonly WorkChange[],
  effortOf: (changes: readonly WorkChange[]) => number,
  excluded: readonly (readonly [string, string])[],
): readonly Combined[] {
  const all: Combined[] = [];
  for (let bits = 0; bits < 2 ** changes.length; bits += 1) {
    const chosen = changes.filter((_, index) => Math.floor(bits / 2 ** index) % 2 === 1);
    const ids: readonly string[] = chosen.map(({ id }) => id);
    if (excluded.some((pair) => pair.every((id) => ids.includes(id)))) continue;
    let after: Work | undefined = work;
    for (const change of chosen) after = after === undefined ? undefined : change.apply(after);
    if (after === undefined) continue;
    const composed = compose(instanceOf(after, predictWork(after, [])), { seed: 7 });
    if (!composed.ok) continue;
    if (!composed.value.proven) throw new Error(`not proven: ${ids.join(', ')}`);
    all.push({
      changes: ids,
      effort: effortOf(chosen),
      unitTime: composed.value.schedule.period / after.unitsPerCycle,
    });
  }
  return all.filter(
    (one) =>
      !all.some(
        (other) =>
          other.effort <= one.effort &&
          other.unitTime <= one.unitTime &&
          (other.effort < one.effort || other.unitTime < one.unitTime),
      ),
  );
}
