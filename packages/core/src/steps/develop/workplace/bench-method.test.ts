import { describe, expect, it } from 'vitest';
import { benchWork } from '../../../../../../tests/helpers/bench-works.ts';
import { checkSchedule, compose, type Instance } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { benchMethod } from './bench-method.ts';
import { type BenchSpot, type LayoutLimits, layoutSpace, sizeOf } from './bench-spots.ts';
import { layoutTravel } from './layout-travel.ts';
import type { ReachChoice } from './people.ts';
import { areaOf, type BenchPoint } from './working-areas.ts';

const instanceAt = (work: Work): Instance => instanceOf(work, predictWork(work, []));
const reach: ReachChoice = { people: 'men', posture: 'sitting' };

/** The work with ways that are out of reach taken out; undefined where a step has none left. */
function withinReach(work: Work): Instance | undefined {
  const instance = instanceAt(work);
  const can = (hand: 'left' | 'right', place: number | undefined) => {
    const at = place === undefined ? undefined : work.places[place]?.at;
    return at === undefined || areaOf({ name: '', at }, hand, reach).reached;
  };
  const tasks = instance.tasks.map((task) => ({
    ...task,
    modes: task.modes.filter(({ left, right }) => can('left', left?.place) && can('right', right?.place)),
  }));
  return tasks.some(({ modes }) => modes.length === 0) ? undefined : { ...instance, tasks };
}

/** Every layout composed by itself, nothing carried over from one to the next. */
function shortestByTrial(work: Work, spots: readonly BenchSpot[], kind: 'open' | 'closed'): number {
  const movable = work.places.filter(({ stays }) => stays !== true);
  const fixed = work.places.filter(({ stays }) => stays === true);
  let least = Number.POSITIVE_INFINITY;
  const clear = (one: Work['places'][number], a: BenchPoint, other: Work['places'][number], b: BenchPoint) =>
    Math.abs(a.x - b.x) >= (sizeOf(one).x + sizeOf(other).x) / 2 + 20 ||
    Math.abs(a.y - b.y) >= (sizeOf(one).y + sizeOf(other).y) / 2 + 20;
  const go = (put: readonly Work['places'][number][]) => {
    const place = movable[put.length];
    if (place === undefined) {
      const instance = withinReach({ ...work, places: [...put, ...fixed] });
      if (instance === undefined) return;
      const made = compose(instance, { kind, seed: 1, rounds: 0 });
      if (made.ok) least = Math.min(least, made.value.schedule.period);
      return;
    }
    for (const { at } of spots) {
      if ([...put, ...fixed].every((other) => other.at !== undefined && clear(place, at, other, other.at)))
        go([...put, { ...place, at }]);
    }
  };
  go([]);
  return least;
}

const limitsOf = (spots: readonly BenchSpot[]): LayoutLimits => ({ reach, spots });

describe('layout and method together against every layout composed by itself', () => {
  it.each([
    { seed: 1, parts: 1, spots: 5, kind: 'open' as const },
    { seed: 2, parts: 1, spots: 5, kind: 'closed' as const },
    { seed: 3, parts: 2, spots: 5, kind: 'open' as const },
    { seed: 4, parts: 2, spots: 4, kind: 'closed' as const },
    { seed: 5, parts: 1, spots: 6, kind: 'open' as const },
    { seed: 6, parts: 2, spots: 5, kind: 'open' as const },
  ])('seed $seed, $parts parts on $spots spots, $kind cycle: the same period, proven', (what) => {
    const { work, spots } = benchWork(what.seed, what.parts, what.spots);
    const made = benchMethod(work, { limits: limitsOf(spots), instanceAt, kind: what.kind, seed: 1 });
    if (!made.ok) throw new Error(made.error.message);
    const { schedule, bound, proven, instance } = made.value;
    expect(schedule.period).toBe(shortestByTrial(work, spots, what.kind));
    expect([bound, proven]).toEqual([schedule.period, true]);
    expect(checkSchedule(instance, schedule)).toEqual([]);
    // The instance is that of the layout which comes out, made anew.
    const anew = instanceAt(made.value.work);
    expect(checkSchedule(anew, schedule)).toEqual([]);
  });
});

describe('laws of layout and method together', () => {
  const { work, spots } = benchWork(11, 3, 7);
  const wish = { limits: limitsOf(spots), instanceAt, seed: 1 };
  const run = (more: Partial<Parameters<typeof benchMethod>[1]>) => {
    const made = benchMethod(work, { ...wish, ...more });
    if (!made.ok) throw new Error(made.error.message);
    return made.value;
  };
  const whole = run({});

  it('the same seed gives the same answer', () => {
    expect({ ...run({}), instance: undefined }).toEqual({ ...whole, instance: undefined });
  });

  it('no longer than the method for the bench as it is', () => {
    const now = withinReach(work);
    const made = now === undefined ? undefined : compose(now, { seed: 1 });
    if (made?.ok !== true) throw new Error('the bench as it is has no method');
    expect(whole.schedule.period).toBeLessThanOrEqual(made.value.schedule.period);
  });

  it('stopped early it says what is not proven, and its bound holds', () => {
    for (const layouts of [0, 1, 5, 20]) {
      const early = run({ layouts, starts: 1 });
      expect(early.bound).toBeLessThanOrEqual(whole.schedule.period);
      expect(early.schedule.period).toBeGreaterThanOrEqual(whole.schedule.period);
      if (!early.proven) expect(early.words).toMatch(/not proven/);
      expect(checkSchedule(instanceAt(early.work), early.schedule)).toEqual([]);
    }
  });

  it('every better pair is told on the way', () => {
    const periods: number[] = [];
    run({ onBetter: ({ schedule }) => periods.push(schedule.period) });
    expect(periods).toEqual([...periods].sort((a, b) => b - a));
    expect(periods.at(-1)).toBe(whole.schedule.period);
  });
});

describe('moves between spots', () => {
  it('of a whole layout are those of the instance made for it; of an open one no move is longer', () => {
    const { work, spots } = benchWork(21, 2, 6);
    const space = layoutSpace(work, limitsOf(spots), () => true);
    const travel = layoutTravel(work, space, { ...reach, people: 'men' }, instanceAt);
    const open = travel.instanceFor(space.items.map(() => spots.map((_, spot) => spot)));
    for (const spotOf of [
      [0, 1, 2, 3],
      [5, 3, 0, 4],
      [2, 5, 4, 1],
    ]) {
      const found = travel.instanceFor(spotOf.map((spot) => [spot]));
      const direct = instanceAt(space.moved(spotOf));
      if (found === undefined || open === undefined) throw new Error('out of reach');
      for (const hand of ['left', 'right'] as const) {
        direct.places.forEach((_, from) => {
          direct.places.forEach((__, to) => {
            for (const load of [0, 1]) {
              const time = direct.travel(hand, from, to, load);
              expect(found.travel(hand, from, to, load)).toBe(time);
              expect(open.travel(hand, from, to, load)).toBeLessThanOrEqual(time);
            }
            expect(found.apart(from, to)).toBe(direct.apart(from, to));
            if (open.apart(from, to)) expect(direct.apart(from, to)).toBe(true);
          });
        });
      }
    }
  });
});
