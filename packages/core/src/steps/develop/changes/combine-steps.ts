import type { StepMotion, Work, WorkStep } from '../work/index.ts';
import type { ChangeOption, ChangeRule } from './change.ts';
import { alikeIn, looked, withoutSteps } from './work-parts.ts';

/** How well it is known that a motion done for both steps takes as long as for one. Ours. */
const spread = 0.25;

export const combineSteps: ChangeRule = {
  code: 'combine-steps',
  name: 'Two steps in one',
  what: 'Two steps at one place are done in one, with a tool or a part that is made for both.',
  principle: 19,
  supposes:
    'What both steps have is done once and takes as long as in the longer of them, known to a quarter.',
  asked: true,
  options: (work) => pairsOf(work),
  apply: (work, about) => {
    const [first = '', second = ''] = about.split('+');
    let next: Work | undefined;
    for (const { id } of alikeIn(work, first)) {
      const a = (next ?? work).steps.find((step) => step.id === id);
      const b = (next ?? work).steps.find(
        (step) => alikeIn(work, second).some((other) => other.id === step.id) && step.unit === a?.unit,
      );
      if (a !== undefined && b !== undefined && fits(a, b)) next = joined(next ?? work, a, b);
    }
    return next;
  },
};

/** Pairs of steps of the first unit of their kind. */
function pairsOf(work: Work): readonly ChangeOption[] {
  const seen = new Set<string>();
  return work.steps.flatMap((b) =>
    (b.follows ?? []).flatMap(({ step }): ChangeOption[] => {
      const a = work.steps.find(({ id }) => id === step);
      if (a === undefined || !fits(a, b) || !shareKind(a, b)) return [];
      const words = `“${a.name}” and “${b.name}”`;
      if (seen.has(words)) return [];
      seen.add(words);
      return [{ about: `${a.id}+${b.id}`, words }];
    }),
  );
}

/** One hand can go on from the first to the second where it is. */
function fits(a: WorkStep, b: WorkStep): boolean {
  const called = a.held === undefined ? undefined : (a.held.becomes ?? a.held.object);
  const links = b.follows?.find(({ step }) => step === a.id);
  return (
    links !== undefined &&
    (links.lag ?? 0) === 0 &&
    a.place === b.place &&
    a.rightPlace === b.rightPlace &&
    a.hand === b.hand &&
    a.unit === b.unit &&
    a.after === b.before &&
    a.held?.by === b.held?.by &&
    called === b.held?.object
  );
}

/** Something is saved only where both have a motion of a kind. */
function shareKind(a: WorkStep, b: WorkStep): boolean {
  return a.motions.some(({ kind }) => b.motions.some((other) => other.kind === kind));
}

function joined(work: Work, a: WorkStep, b: WorkStep): Work | undefined {
  const motions = unbroken(a, b);
  const lastName = b.held?.becomes ?? a.held?.becomes;
  const { after: _, ...first } = a;
  const both: WorkStep = {
    ...first,
    name: `${a.name} and ${b.name}`.slice(0, 200),
    motions,
    ...(b.after === undefined ? {} : { after: b.after }),
    ...(a.held === undefined
      ? {}
      : { held: { ...a.held, ...(lastName === undefined ? {} : { becomes: lastName }) } }),
    eyes: (a.eyes || b.eyes) && looked(motions),
  };
  const steps = work.steps.map((step) => (step.id === a.id ? both : step));
  return withoutSteps({ ...work, steps }, new Set([b.id]), { instead: new Map([[b.id, a.id]]) });
}

/** A hand that lets go in the first and grasps again in the second does neither between the two. */
function unbroken(a: WorkStep, b: WorkStep): WorkStep['motions'] {
  const goesOn = a.after === undefined && a.motions.at(-1)?.kind === 'RL' && b.motions[0]?.kind === 'G';
  const [first, second] = goesOn ? [a.motions.slice(0, -1), b.motions.slice(1)] : [a.motions, b.motions];
  const motions = union(first, second);
  return motions.length === 0 ? b.motions : motions;
}

/** Motions of both in the order of the first, then what only the second has; each kind as often as in the one that has it more often. */
function union(a: readonly StepMotion[], b: readonly StepMotion[]): StepMotion[] {
  const left = [...b];
  const both = a.map((motion): StepMotion => {
    const index = left.findIndex(({ kind }) => kind === motion.kind);
    const other = index < 0 ? undefined : left.splice(index, 1)[0];
    if (other === undefined) return motion;
    const longer = (other.us ?? 0) > (motion.us ?? 0) ? other : motion;
    return { ...longer, share: longer.share ?? 1, spread: Math.hypot(longer.spread ?? 0, spread) };
  });
  const release = both.findIndex(({ kind }) => kind === 'RL');
  // What is let go is let go last.
  return release < 0 ? [...both, ...left] : [...both.slice(0, release), ...left, ...both.slice(release)];
}
