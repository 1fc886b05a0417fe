import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeOption, ChangeRule } from './change.ts';
import { lays, takes, toolsOf } from './tools.ts';
import { withoutSteps } from './work-parts.ts';

export const combineTools: ChangeRule = {
  code: 'combine-tools',
  name: 'Two tools in one',
  what: 'One tool does what two do now, and stays in the hand from one use to the other.',
  principle: 19,
  options: (work) => {
    const tools = toolsOf(work);
    return tools.flatMap(({ name }, index) =>
      tools
        .slice(index + 1)
        .map(
          (other): ChangeOption => ({ about: `${name}+${other.name}`, words: `${name} and ${other.name}` }),
        ),
    );
  },
  apply: (work, about) => {
    const tools = toolsOf(work);
    for (const a of tools) {
      const b = tools.find(({ name }) => `${a.name}+${name}` === about);
      if (b !== undefined) return oneTool(work, a.name, b.name);
    }
    return undefined;
  },
};

/** Of each unit, one take-up and one laying down between the two uses go; the place of the tool that is used first stays. */
function oneTool(work: Work, one: string, other: string): Work | undefined {
  const earlier = earlierOf(work);
  const gone = new Set<string>();
  let place: string | undefined;
  for (const unit of new Set(work.steps.map((step) => step.unit))) {
    const find = (tool: string, fits: (step: WorkStep) => boolean) =>
      work.steps.filter((step) => step.unit === unit && fits(step) && (step.before ?? step.after) === tool);
    const usesOf = (tool: string) => work.steps.filter((step) => step.unit === unit && step.before === tool);
    const first = usesOf(other).some((use) => usesOf(one).some(({ id }) => earlier(use.id, id)))
      ? other
      : one;
    const second = first === one ? other : one;
    const [laid, taken] = [find(first, lays), find(second, takes)];
    const [lay, take] = [laid[0], taken[0]];
    if (lay === undefined || take === undefined || laid.length > 1 || taken.length > 1) return undefined;
    place = find(first, takes)[0]?.place;
    gone.add(lay.id).add(take.id);
  }
  const name = `${one} and ${other}`.slice(0, 200);
  const called = (object: string | undefined) => (object === one || object === other ? name : object);
  const steps = work.steps.map((step): WorkStep => {
    const [before, after] = [called(step.before), called(step.after)];
    const back = lays(step) && before === name;
    return {
      ...step,
      ...(before === undefined ? {} : { before }),
      ...(after === undefined ? {} : { after }),
      // It is laid down where it is taken up.
      place: back ? (place ?? step.place) : step.place,
    };
  });
  return withoutSteps({ ...work, steps }, gone);
}

/** Whether the first must have ended before the second begins. */
function earlierOf(work: Work): (one: string, other: string) => boolean {
  const follows = new Map(work.steps.map((step) => [step.id, (step.follows ?? []).map((link) => link.step)]));
  const reach = (from: string, to: string, seen: Set<string>): boolean =>
    (follows.get(from) ?? []).some((step) => {
      if (step === to) return true;
      if (seen.has(step)) return false;
      seen.add(step);
      return reach(step, to, seen);
    });
  return (one, other) => reach(other, one, new Set());
}
