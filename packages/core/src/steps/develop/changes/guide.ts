import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { looked } from './work-parts.ts';

/** What is left of a position. Ours: half of it with a guide, 0.7 of it at a stop, known to a quarter. */
const left = { guide: { share: 0.5, spread: 0.25 }, stop: { share: 0.7, spread: 0.25 } } as const;

/** Shares of several changes of one motion come together. */
function eased(work: Work, { share, spread }: (typeof left)['guide' | 'stop']): Work | undefined {
  let found = false;
  const steps = work.steps.map((step): WorkStep => {
    if (!step.motions.some(({ kind }) => kind === 'P')) return step;
    found = true;
    return {
      ...step,
      eyes: step.eyes && looked(step.motions, 'P'),
      motions: step.motions.map((motion) => {
        if (motion.kind !== 'P') return motion;
        const known = motion.us === undefined ? {} : { us: Math.round(motion.us * share) };
        return {
          ...motion,
          ...known,
          share: (motion.share ?? 1) * share,
          spread: spreadOf(motion.spread, spread),
        };
      }),
    };
  });
  return found ? { ...work, steps } : undefined;
}

function spreadOf(one: number | undefined, other: number): number {
  return Math.hypot(one ?? 0, other);
}

export const guide: ChangeRule = {
  code: 'guide',
  name: 'Guide or funnel',
  what: 'A guide, funnel or chamfer leads the part to its place, so that it need not be aimed.',
  principle: 18,
  excludes: ['stop'],
  supposes: 'A guided position takes half of what it takes now, known to a quarter.',
  apply: (work) => eased(work, left.guide),
};

export const stop: ChangeRule = {
  code: 'stop',
  name: 'Stop',
  what: 'The part is pushed against a stop and sits right by itself, without a look.',
  principle: 18,
  excludes: ['guide'],
  supposes: 'A position against a stop takes seven tenths of what it takes now, known to a quarter.',
  apply: (work) => eased(work, left.stop),
};
