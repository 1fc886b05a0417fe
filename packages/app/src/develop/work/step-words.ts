import type { Work, WorkStep } from '@evenhand/core/ground/study';

/** “Ring bin, looked at, leaves with ring · after Grasp body”. */
export function stepSentence(work: Work, step: WorkStep, several: boolean): string {
  const placeOf = (id: string) => work.places.find((place) => place.id === id)?.name ?? id;
  const nameOf = (id: string) => work.steps.find((other) => other.id === id)?.name ?? id;
  const { hand, held } = step;
  const where =
    step.rightPlace === undefined
      ? placeOf(step.place)
      : `${placeOf(step.place)} and ${placeOf(step.rightPlace)}`;
  const parts = [
    where,
    hand === 'either' ? undefined : hand === 'both' ? 'both hands' : `${hand} hand`,
    step.eyes ? 'looked at' : undefined,
    held === undefined
      ? undefined
      : `${held.object} held by ${held.by === 'hand' ? 'the other hand' : 'a fixture'}`,
    several ? `unit ${step.unit}` : undefined,
  ].filter((part) => part !== undefined);
  const needs = (step.follows ?? []).map((link) => nameOf(link.step));
  return `${parts.join(', ')}${needs.length === 0 ? '' : ` · after ${needs.join(', ')}`}`;
}

/** Names of parts and tools that the work speaks of, each once, for choosing instead of typing. */
export function objectsOf({ steps, objects = [] }: Work): readonly string[] {
  const named = steps.flatMap(({ before, after, held, motions }) => [
    before,
    after,
    held?.object,
    held?.becomes,
    ...motions.map(({ object }) => object),
  ]);
  const all = [...named, ...objects.map(({ name }) => name)].filter((name) => name !== undefined);
  return [...new Set(all)].sort();
}
