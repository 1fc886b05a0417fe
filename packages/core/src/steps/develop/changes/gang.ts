import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeOption, ChangeRule } from './change.ts';
import { likenessOf, withoutSteps } from './work-parts.ts';

/** How well it is known that all at once take as long as one. Ours. */
const spread = 0.25;

/** Steps that can be done for all at once: groups of alike steps that hang together by what is carried. */
interface Gang {
  readonly about: string;
  readonly words: string;
  readonly groups: readonly (readonly WorkStep[])[];
}

export const gang: ChangeRule = {
  code: 'gang',
  name: 'Slide or gang device',
  what: 'A slide, a comb or a gang tool takes and places all pieces of a kind at once.',
  principle: 18,
  supposes:
    'All at once take as long as one takes now, known to a quarter. Whatever fills the device is not part of the cycle.',
  asked: true,
  options: (work) => gangsOf(work).map(({ about, words }): ChangeOption => ({ about, words })),
  apply: (work, about) => {
    const found = gangsOf(work).find((item) => item.about === about);
    if (found === undefined) return undefined;
    const instead = new Map<string, string>();
    const kept = new Set<string>();
    for (const [first, ...others] of found.groups) {
      if (first === undefined) continue;
      kept.add(first.id);
      for (const { id } of others) instead.set(id, first.id);
    }
    const steps = work.steps.map((step) => (kept.has(step.id) ? allAtOnce(step) : step));
    return withoutSteps({ ...work, steps }, new Set(instead.keys()), { instead });
  },
};

function allAtOnce(step: WorkStep): WorkStep {
  return {
    ...step,
    name: `${step.name}, all at once`.slice(0, 200),
    motions: step.motions.map((motion) => ({
      ...motion,
      share: motion.share ?? 1,
      spread: Math.hypot(motion.spread ?? 0, spread),
    })),
  };
}

function gangsOf(work: Work): readonly Gang[] {
  const groups = groupsOf(work);
  const found: Gang[] = [];
  const seen = new Set<readonly WorkStep[]>();
  for (const group of groups) {
    if (seen.has(group)) continue;
    const all = hangingTogether(group, groups, work);
    for (const one of all ?? []) seen.add(one);
    const [first] = group;
    if (all === undefined || first === undefined) continue;
    const objects = [...new Set(all.flatMap(([step]) => (step === undefined ? [] : loadsOf(step))))];
    const size = all[0]?.length ?? 0;
    const left = work.steps.length - all.reduce((sum, { length }) => sum + length - 1, 0);
    // Where everything is done at once for all units, nothing of the units is left.
    if (left * size <= work.steps.length) continue;
    const about = objects[0] ?? first.id;
    found.push({ about, words: objects[0] ?? `“${first.name}”`, groups: all });
  }
  return found;
}

/** Alike steps in the order of units and list, two or more. */
function groupsOf(work: Work): readonly (readonly WorkStep[])[] {
  const groups = new Map<string, WorkStep[]>();
  for (const step of [...work.steps].sort((a, b) => a.unit - b.unit)) {
    if (step.hand === 'both') continue;
    const key = likenessOf(step);
    groups.set(key, [...(groups.get(key) ?? []), step]);
  }
  return [...groups.values()].filter(({ length }) => length > 1);
}

/** What a step takes up, lays down or changes in a hand. */
function loadsOf({ before, after, held }: WorkStep): string[] {
  const own = before === after ? [] : [before, after];
  const other = held?.by === 'hand' ? [held.object, held.becomes] : [];
  return [...own, ...other].filter((object) => object !== undefined);
}

/** The group with all that handle the same loads; undefined when one of those is not there as often. */
function hangingTogether(
  group: readonly WorkStep[],
  groups: readonly (readonly WorkStep[])[],
  work: Work,
): readonly (readonly WorkStep[])[] | undefined {
  const all = [group];
  const loads = new Set(group.flatMap(loadsOf));
  for (let index = 0; index < all.length; index += 1) {
    for (const step of work.steps) {
      if (!loadsOf(step).some((load) => loads.has(load))) continue;
      const own = groups.find((one) => one.includes(step));
      if (own === undefined || own.length !== group.length) return undefined;
      if (all.includes(own)) continue;
      all.push(own);
      for (const load of own.flatMap(loadsOf)) loads.add(load);
    }
  }
  return all;
}
