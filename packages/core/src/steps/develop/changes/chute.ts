import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { looked } from './work-parts.ts';

export const chute: ChangeRule = {
  code: 'chute',
  name: 'Chute under the work',
  what: 'What is finished is let go where it was worked on, and a chute under it takes it away.',
  principle: 13,
  excludes: ['drop-delivery'],
  supposes: 'The piece may fall.',
  apply: (work) => {
    let found = false;
    const steps = work.steps.map((step): WorkStep => {
      const place = leavesAt(work, step);
      if (place === undefined || place === step.place) return step;
      found = true;
      const [first] = step.motions;
      const kept = step.motions.filter(({ kind }) => kind === 'RL');
      const motions = kept.length > 0 || first === undefined ? kept : [{ ...first, kind: 'RL' as const }];
      return { ...step, place, motions, eyes: step.eyes && looked(motions) };
    });
    return found ? { ...work, steps } : undefined;
  },
};

/** Where what the step lays down at an exit was finished; undefined of any other step. */
function leavesAt(work: Work, step: WorkStep): string | undefined {
  const { before, after, unit, hand } = step;
  const exit = work.places.find(({ id }) => id === step.place)?.kind === 'exit';
  if (!exit || hand === 'both' || before === undefined || after !== undefined) return undefined;
  const giver = work.steps.find((other) => {
    if (other.unit !== unit || other.id === step.id) return false;
    const changed = other.held?.by === 'hand' && (other.held.becomes ?? other.held.object) === before;
    return (other.after === before && other.before !== before) || changed;
  });
  if (giver === undefined) return undefined;
  return giver.after === before ? giver.place : giver.held?.place;
}
