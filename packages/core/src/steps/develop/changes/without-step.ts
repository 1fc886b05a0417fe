import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { alikeIn, withoutSteps } from './work-parts.ts';

export const withoutStep: ChangeRule = {
  code: 'without-step',
  name: 'Step left out',
  what: 'The step is not done any more, in any unit.',
  principle: undefined,
  supposes: 'The unit is as good without it. Somebody who answers for the quality agrees.',
  asked: true,
  options: ({ steps }) =>
    steps
      .filter(
        (step, index) =>
          !steps.slice(0, index).some((other) => other.name === step.name && other.unit !== step.unit),
      )
      .map(({ id, name }) => ({ about: id, words: `“${name}”` })),
  apply: (work, about) => {
    const gone = alikeIn(work, about);
    return gone.length === 0 ? undefined : withoutSteps(renamedWithout(work, gone), idsOf(gone));
  },
};

function idsOf(steps: readonly WorkStep[]): ReadonlySet<string> {
  return new Set(steps.map(({ id }) => id));
}

/** What a step that is left out would have called otherwise keeps its name in the steps after it. */
function renamedWithout(work: Work, gone: readonly WorkStep[]): Work {
  const renames = gone.flatMap(({ unit, before, after, held }) => {
    const names: { unit: number; from: string; to: string }[] = [];
    if (before !== undefined && after !== undefined && before !== after)
      names.push({ unit, from: after, to: before });
    if (held?.becomes !== undefined && held.becomes !== held.object)
      names.push({ unit, from: held.becomes, to: held.object });
    return names;
  });
  if (renames.length === 0) return work;
  const ids = idsOf(gone);
  return {
    ...work,
    steps: work.steps.map((step) => {
      if (ids.has(step.id)) return step;
      const called = (name: string | undefined) =>
        renames.find(({ unit, from }) => unit === step.unit && from === name)?.to ?? name;
      const [before, after] = [called(step.before), called(step.after)];
      const object = called(step.held?.object);
      const becomes = called(step.held?.becomes);
      return {
        ...step,
        ...(before === undefined ? {} : { before }),
        ...(after === undefined ? {} : { after }),
        ...(step.held === undefined || object === undefined
          ? {}
          : { held: { ...step.held, object, ...(becomes === undefined ? {} : { becomes }) } }),
      };
    }),
  };
}
