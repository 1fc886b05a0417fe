import type { Work, WorkStep } from '../work/index.ts';

/** A tool is what is laid down where it was taken up. */
export interface Tool {
  readonly name: string;
  readonly place: string;
}

export function toolsOf(work: Work): readonly Tool[] {
  const taken = new Map<string, string>();
  const found = new Map<string, Tool>();
  for (const step of work.steps) if (takes(step)) taken.set(keyOf(step, step.after), step.place);
  for (const step of work.steps) {
    if (!lays(step) || taken.get(keyOf(step, step.before)) !== step.place) continue;
    const name = step.before ?? '';
    if (!found.has(name)) found.set(name, { name, place: step.place });
  }
  return [...found.values()];
}

function keyOf({ unit }: WorkStep, object: string | undefined): string {
  return `${unit} ${object ?? ''}`;
}

/** Takes something up with an empty hand. */
export function takes({ before, after, hand }: WorkStep): boolean {
  return before === undefined && after !== undefined && hand !== 'both';
}

/** Lays down all it carries. */
export function lays({ before, after, hand }: WorkStep): boolean {
  return before !== undefined && after === undefined && hand !== 'both';
}
