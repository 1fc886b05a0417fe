import { checkWork, type Work } from '../work/index.ts';
import { alignedSupply } from './aligned-supply.ts';
import { type ChangeId, type ChangeOption, type ChangeRule, changeCodes, type WorkChange } from './change.ts';
import { chute } from './chute.ts';
import { closerPlaces, gravityFeed } from './closer-places.ts';
import { combineSteps } from './combine-steps.ts';
import { combineTools } from './combine-tools.ts';
import { dropDelivery } from './drop-delivery.ts';
import { fixture } from './fixture.ts';
import { footPedal } from './foot-pedal.ts';
import { gang } from './gang.ts';
import { guide, stop } from './guide.ts';
import { hungTool } from './hung-tool.ts';
import { fourUnits, twoUnits } from './several-units.ts';
import { toolAtHand } from './tool-at-hand.ts';
import { withoutInspection } from './without-inspection.ts';
import { withoutStep } from './without-step.ts';

/** Every kind of change, in the order in which several are made together. */
export const changeRules: readonly ChangeRule[] = [
  withoutStep,
  withoutInspection,
  combineSteps,
  footPedal,
  combineTools,
  alignedSupply,
  guide,
  stop,
  toolAtHand,
  hungTool,
  fixture,
  closerPlaces,
  gravityFeed,
  dropDelivery,
  chute,
  twoUnits,
  fourUnits,
  gang,
];

/**
 * The changes of a work that can be told by an id, in the order in which they are made; those about several things once for
 * each. Whether one has something to change is seen when it is made.
 */
export function changesFor(work: Work): readonly WorkChange[] {
  return changeRules.flatMap((rule): WorkChange[] =>
    rule.options === undefined
      ? [changeFrom(rule, '', '')]
      : optionsOf(rule, work).map(({ about, words }) => changeFrom(rule, about, words)),
  );
}

/** The changes that every work can be asked for: those that are about the work as a whole. */
export const workChanges: readonly WorkChange[] = changeRules
  .filter(({ options }) => options === undefined)
  .map((rule) => changeFrom(rule, '', ''));

/** What several units would have to be done at once is known before they are. */
function optionsOf(rule: ChangeRule, work: Work): readonly ChangeOption[] {
  const own = rule.options?.(work) ?? [];
  if (rule !== gang) return own;
  const [hold, units] = [changeFrom(fixture, '', ''), changeFrom(twoUnits, '', '')];
  const then = changedBy(work, [units]) ?? changedBy(work, [hold, units]);
  const more = then === undefined ? [] : (rule.options?.(then) ?? []);
  return [...own, ...more.filter(({ about }) => !own.some((option) => option.about === about))];
}

/** Undefined for an id that names no kind of change. What it is about is called by the words of the work where it has them. */
export function changeOf(id: string, work: Work): WorkChange | undefined {
  const [code = '', ...rest] = id.split(':');
  const rule = changeRules.find((item) => item.code === code);
  const about = rest.join(':');
  if (rule === undefined || (about === '') !== (rule.options === undefined)) return undefined;
  const words = rule.options?.(work).find((option) => option.about === about)?.words;
  return changeFrom(rule, about, words ?? stepWords(work, about));
}

/** “Grasp collar” for its id; the name itself where it is no step. */
function stepWords({ steps }: Work, about: string): string {
  return about
    .split('+')
    .map((part) => {
      const step = steps.find(({ id }) => id === part);
      return step === undefined ? part : `“${step.name}”`;
    })
    .join(' and ');
}

function changeFrom(rule: ChangeRule, about: string, words: string): WorkChange {
  const { code, name, what, principle, supposes, asked = false } = rule;
  return {
    id: about === '' ? code : `${code}:${about}`,
    code,
    name: words === '' ? name : `${name}: ${words}`,
    what,
    principle,
    supposes,
    asked,
    apply: (work) => {
      const next = rule.apply(work, about);
      if (next === undefined) return undefined;
      // What can be tried before must be one that can be tried after.
      return checkWork(next).length > 0 && checkWork(work).length === 0 ? undefined : next;
    },
  };
}

/** Ids in the order in which the changes are made, each once. */
export function inOrder<T extends { readonly id: ChangeId; readonly code: WorkChange['code'] }>(
  changes: readonly T[],
): readonly T[] {
  const single = changes.filter(({ id }, index) => changes.findIndex((other) => other.id === id) === index);
  return single.sort(
    (a, b) =>
      changeCodes.indexOf(a.code) - changeCodes.indexOf(b.code) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
}

/** Two of them that cannot be made together; undefined when all can. */
export function clashOf(changes: readonly WorkChange[]): readonly [WorkChange, WorkChange] | undefined {
  for (const [index, one] of changes.entries()) {
    const { excludes = [] } = changeRules.find(({ code }) => code === one.code) ?? {};
    const other = changes.slice(index + 1).find(({ code }) => excludes.includes(code));
    if (other !== undefined) return [one, other];
  }
  return undefined;
}

/**
 * The work after all of these changes, in their order. Undefined when one has nothing to change, or two cannot be made
 * together.
 */
export function changedBy(work: Work, changes: readonly WorkChange[]): Work | undefined {
  if (clashOf(changes) !== undefined) return undefined;
  let next: Work | undefined = work;
  for (const change of inOrder(changes)) {
    next = next === undefined ? undefined : change.apply(next);
  }
  return next;
}
