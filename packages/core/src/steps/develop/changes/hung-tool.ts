import type { WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { lays, toolsOf } from './tools.ts';
import { broughtTo, looked, withoutMotions } from './work-parts.ts';

/** A hung tool hangs so far from the middle of the work, millimetres. Ours. */
const hungAt = 150;

export const hungTool: ChangeRule = {
  code: 'hung-tool',
  name: 'Hung tool',
  what: 'The tool hangs on a balancer over the work, as it is used; let go, it swings back.',
  principle: 20,
  supposes: `The tool hangs ${hungAt} mm from the work and need not be laid down, only let go.`,
  apply: (work) => {
    const places = new Set(toolsOf(work).map(({ place }) => place));
    if (places.size === 0) return undefined;
    const nearer = broughtTo(work, hungAt, ({ id }) => places.has(id));
    const turned = withoutMotions(nearer ?? work, ['PP'], ({ place }) => places.has(place));
    const next = turned ?? nearer ?? work;
    let eased = false;
    const steps = next.steps.map((step): WorkStep => {
      const motions = step.motions.filter(({ kind }) => kind === 'RL');
      if (!places.has(step.place) || !lays(step) || motions.length === 0) return step;
      if (motions.length === step.motions.length) return step;
      eased = true;
      return { ...step, motions, eyes: step.eyes && looked(motions) };
    });
    return nearer === undefined && turned === undefined && !eased ? undefined : { ...next, steps };
  },
};
