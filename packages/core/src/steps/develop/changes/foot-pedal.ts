import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { alikeIn, withoutSteps } from './work-parts.ts';

/** Microseconds that a foot takes where the time of the hand is not known. Ours. */
const footTime = 500_000;

export const footPedal: ChangeRule = {
  code: 'foot-pedal',
  name: 'Foot pedal',
  what: 'A foot on a pedal does what a hand does at a lever, a button or a clamp now.',
  principle: 18,
  supposes:
    'The foot takes as long as the hand where the work gives its time, else half a second. Pedals are for seated or leaning work; local rules and qualified people settle that.',
  options: (work) =>
    work.steps
      .filter((step) => operates(work, step) && alikeIn(work, step.id)[0]?.id === step.id)
      .map(({ id, name }) => ({ about: id, words: `“${name}”` })),
  apply: (work, about) => {
    let next: Work | undefined;
    for (const { id } of alikeIn(work, about)) {
      const step = (next ?? work).steps.find((item) => item.id === id);
      if (step === undefined || !emptyHanded(step)) return undefined;
      next = byFoot(next ?? work, step);
      if (next === undefined) return undefined;
    }
    return next;
  },
};

/** A hand that comes and leaves with nothing and puts something to use. */
function operates(work: Work, step: WorkStep): boolean {
  const machine = work.places.find(({ id }) => id === step.place)?.kind === 'machine';
  return emptyHanded(step) && (machine || step.motions.some(({ kind }) => kind === 'U'));
}

function emptyHanded({ before, after, hand }: WorkStep): boolean {
  return before === undefined && after === undefined && hand !== 'both';
}

function byFoot(work: Work, step: WorkStep): Work | undefined {
  const known = step.motions.every(({ us }) => us !== undefined);
  const us = known ? step.motions.reduce((sum, motion) => sum + (motion.us ?? 0), 0) : footTime;
  if (step.held?.by !== 'hand') return withoutSteps(work, new Set([step.id]), { gap: us });
  // The hand that held the part holds it still, and the other is free.
  const { held, rightPlace: _, ...rest } = step;
  const holding: WorkStep = {
    ...rest,
    name: `Hold ${held.object}, foot on the pedal`,
    motions: [{ kind: 'H', object: held.object, us }],
    place: held.place,
    before: held.object,
    after: held.becomes ?? held.object,
    eyes: false,
  };
  return { ...work, steps: work.steps.map((item) => (item === step ? holding : item)) };
}
