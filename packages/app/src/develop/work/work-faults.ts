import { checkWork, type Work } from '@evenhand/core/develop';

/** What is wrong with a work, each at the step where it is. */
export interface WorkFaults {
  readonly count: number;
  readonly ofStep: (id: string) => readonly string[];
  /** What belongs to no step. */
  readonly others: readonly string[];
}

export function workFaults(work: Work): WorkFaults {
  const bySteps = new Map<string, string[]>();
  const others: string[] = [];
  const found = checkWork(work);
  for (const { message, where } of found) {
    const index = /^\/steps\/(\d+)/.exec(where.pointer ?? '')?.[1];
    const step = index === undefined ? undefined : work.steps[Number(index)];
    if (step === undefined) others.push(message);
    else bySteps.set(step.id, [...(bySteps.get(step.id) ?? []), message]);
  }
  return { count: found.length, ofStep: (id) => bySteps.get(id) ?? [], others };
}
