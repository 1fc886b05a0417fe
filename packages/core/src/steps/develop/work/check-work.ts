import { type Finding, type FindingPlace, finding } from '../../../ground/findings/index.ts';
import type { Work, WorkStep } from './work-schema.ts';

/** What the shape of a work cannot say, each with the name of the step. Empty when the work can be tried. */
export function checkWork(work: Work): readonly Finding[] {
  return [
    ...doubleIds(work),
    ...unknownNames(work),
    ...circles(work),
    ...carrying(work),
    ...units(work),
    ...times(work),
    ...sizes(work),
    ...tooFar(work),
  ];
}

function at(index: number, field = ''): FindingPlace {
  return { pointer: `/steps/${index}${field}` };
}

function doubleIds({ places, steps }: Work): Finding[] {
  const twice = (list: readonly { readonly id: string }[], where: string) => {
    const seen = new Set<string>();
    return list.flatMap(({ id }, index): Finding[] => {
      if (!seen.has(id)) {
        seen.add(id);
        return [];
      }
      return [finding('study/duplicate-id', { pointer: `/${where}/${index}/id` }, { id })];
    });
  };
  return [...twice(places, 'places'), ...twice(steps, 'steps')];
}

function unknownNames(work: Work): Finding[] {
  const places = new Set(work.places.map(({ id }) => id));
  const steps = new Set(work.steps.map(({ id }) => id));
  const found: Finding[] = [];
  work.steps.forEach((step, index) => {
    for (const place of [step.place, step.rightPlace, step.held?.place]) {
      if (place !== undefined && !places.has(place))
        found.push(finding('develop/unknown-place', at(index), { step: `“${step.name}”`, place }));
    }
    for (const { step: before } of step.follows ?? []) {
      if (!steps.has(before))
        found.push(finding('develop/unknown-step', at(index, '/follows'), { step: step.name, before }));
    }
  });
  for (const { name, claimedBy, releasedBy } of work.spots ?? []) {
    for (const step of [claimedBy, releasedBy]) {
      if (!steps.has(step)) found.push(finding('develop/unknown-step', {}, { step: name, before: step }));
    }
  }
  if (work.home !== 'free') {
    for (const place of [work.home.left, work.home.right]) {
      if (!places.has(place))
        found.push(
          finding(
            'develop/unknown-place',
            { pointer: '/home' },
            { step: 'The start of the hands (home)', place },
          ),
        );
    }
  }
  return found;
}

/** Steps that wait for each other in a circle, told once for each circle. */
function circles({ steps }: Work): Finding[] {
  const index = new Map(steps.map(({ id }, position) => [id, position]));
  const state = new Uint8Array(steps.length);
  const found: Finding[] = [];
  const visit = (position: number, path: readonly number[]): void => {
    if (state[position] === 2) return;
    if (state[position] === 1) {
      const circle = path.slice(path.indexOf(position));
      const names = [...circle, position].map((item) => `“${steps[item]?.name ?? ''}”`).join(' after ');
      found.push(finding('develop/circle', { pointer: `/steps/${position}/follows` }, { steps: names }));
      return;
    }
    state[position] = 1;
    for (const { step } of steps[position]?.follows ?? []) {
      const before = index.get(step);
      if (before !== undefined) visit(before, [...path, position]);
    }
    state[position] = 2;
  };
  steps.forEach((_, position) => {
    visit(position, []);
  });
  return found;
}

/** A hand that takes part in a step: what it carries before and after. */
interface Carried {
  readonly before: string | undefined;
  readonly after: string | undefined;
}

function carriedIn({ hand, before, after, held }: WorkStep): readonly Carried[] {
  const working = { before, after };
  if (hand === 'both') return [working, working];
  if (held?.by !== 'hand') return [working];
  return [working, { before: held.object, after: held.becomes ?? held.object }];
}

/** Within a unit a thing must be taken up as often as it is put down, else the next cycle cannot begin as this one did. */
function carrying({ steps }: Work): Finding[] {
  const found: Finding[] = [];
  const balance = new Map<string, number>();
  const key = (unit: number, object: string) => `${unit} ${object}`;
  for (const step of steps) {
    for (const { before, after } of carriedIn(step)) {
      if (before === after) continue;
      for (const [object, sign] of [[before, -1] as const, [after, 1] as const]) {
        if (object === undefined) continue;
        const name = key(step.unit, object);
        balance.set(name, (balance.get(name) ?? 0) + sign);
      }
    }
  }
  steps.forEach((step, index) => {
    for (const { before, after } of carriedIn(step)) {
      if (before === after) continue;
      if (after !== undefined && (balance.get(key(step.unit, after)) ?? 0) > 0) {
        balance.delete(key(step.unit, after));
        found.push(finding('develop/never-put-down', at(index), { step: step.name, object: after }));
      }
      if (before !== undefined && (balance.get(key(step.unit, before)) ?? 0) < 0) {
        balance.delete(key(step.unit, before));
        found.push(finding('develop/never-taken-up', at(index), { step: step.name, object: before }));
      }
    }
    if (step.held?.by === 'hand' && step.hand === 'both')
      found.push(finding('develop/no-hand', at(index), { step: step.name, object: step.held.object }));
  });
  return found;
}

function units({ steps, unitsPerCycle }: Work): Finding[] {
  return steps.flatMap(({ name, unit }, index): Finding[] =>
    unit <= unitsPerCycle
      ? []
      : [finding('develop/unit-beyond', at(index, '/unit'), { step: name, unit, units: unitsPerCycle })],
  );
}

/** The first unit of the cycle that no step belongs to: only a device that makes several at once leaves one. */
export function unitsWithoutSteps({ steps, unitsPerCycle: units }: Work): readonly Finding[] {
  const known = new Set(steps.map(({ unit }) => unit));
  for (let unit = 1; unit <= units; unit += 1)
    if (!known.has(unit)) return [finding('develop/unit-without-steps', {}, { unit, units })];
  return [];
}

/** Targets and fits that are finer are taken for slips, millimetres; the laws of movement were measured far above. Ours. */
const least = { width: 0.1, clearance: 0.001 } as const;

function sizes({ places, steps }: Work): Finding[] {
  const absurd = (what: string, mm: number, pointer: string, limit: number) =>
    finding('develop/absurd-size', { pointer }, { what, mm, least: limit });
  return [
    ...places.flatMap(({ name, width }, index): Finding[] =>
      width === undefined || width >= least.width
        ? []
        : [absurd(`The target at “${name}”`, width, `/places/${index}/width`, least.width)],
    ),
    ...steps.flatMap(({ name, motions }, index) =>
      motions.flatMap(({ clearance: play }, motion): Finding[] => {
        if (play === undefined || play >= least.clearance) return [];
        const { pointer = '' } = at(index, `/motions/${motion}/clearance`);
        return [absurd(`The clearance in “${name}”`, play, pointer, least.clearance)];
      }),
    ),
  ];
}

/** An hour for one motion is taken for a slip. Ours. */
const longestMotion = 3_600_000_000;

function times({ steps }: Work): Finding[] {
  return steps.flatMap((step, index) =>
    step.motions.flatMap(({ us }, motion): Finding[] =>
      us !== undefined && us >= longestMotion
        ? [finding('develop/absurd-time', at(index, `/motions/${motion}/us`), { step: step.name })]
        : [],
    ),
  );
}

/** Nobody reaches farther over a bench than this, millimetres from its near edge or its middle. Ours. */
const farthest = 1200;

function tooFar({ places }: Work): Finding[] {
  return places.flatMap(({ name, at: point }, index): Finding[] => {
    if (point === undefined || Math.hypot(point.x, point.y) <= farthest) return [];
    const distance = Math.round(Math.hypot(point.x, point.y));
    return [finding('develop/out-of-reach', { pointer: `/places/${index}/at` }, { place: name, distance })];
  });
}
