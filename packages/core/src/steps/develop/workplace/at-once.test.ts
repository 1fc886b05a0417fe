import { describe, expect, it } from 'vitest';
import { benchWork } from '../../../../../../tests/helpers/bench-works.ts';
import { seededRandom } from '../../../ground/numerics/index.ts';
import { checkSchedule, compose, type Orders, ordersOf } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { figureAtOnce } from './at-once.ts';

function best(work: Work) {
  const instance = instanceOf(work, predictWork(work, []));
  const made = compose(instance, { seed: 1 });
  if (!made.ok) throw new Error(made.error.message);
  return { instance, composed: made.value };
}

function movedBy(work: Work, seed: number): Work {
  const random = seededRandom(seed);
  const off = () => Math.round((random() - 0.5) * 240);
  return {
    ...work,
    places: work.places.map((place) =>
      place.at === undefined || place.stays === true
        ? place
        : { ...place, at: { x: place.at.x + off(), y: Math.max(20, place.at.y + off()) } },
    ),
  };
}

describe('a figure at once while a place is moved', () => {
  it.each([1, 2, 3])('is a method that can be done, and never below the proven one, seed %d', (seed) => {
    const { work } = benchWork(seed, 3, 8);
    const { instance, composed } = best(work);
    const known = [ordersOf(instance, composed.schedule)];
    expect(figureAtOnce(work, [], known)?.schedule.period).toBe(composed.schedule.period);
    for (const step of [1, 2, 3]) {
      const moved = movedBy(work, 100 * seed + step);
      const found = figureAtOnce(moved, [], known);
      if (found === undefined) throw new Error('no figure');
      expect(checkSchedule(found.instance, found.schedule)).toEqual([]);
      const anew = best(moved);
      expect(anew.composed.proven).toBe(true);
      expect(found.schedule.period).toBeGreaterThanOrEqual(anew.composed.schedule.period);
      // With the orders of the new best method among those that are known it is that one.
      const both = [...known, ordersOf(anew.instance, anew.composed.schedule)];
      expect(figureAtOnce(moved, [], both)?.schedule.period).toBe(anew.composed.schedule.period);
    }
  });

  it('orders of a work with other steps are left out', () => {
    const { work } = benchWork(1, 3, 8);
    const { instance, composed } = best(work);
    const orders = ordersOf(instance, composed.schedule);
    const other: Orders = { ...orders, modes: orders.modes.slice(1) };
    expect(figureAtOnce(work, [], [other])).toBeUndefined();
    expect(figureAtOnce(work, [], [other, orders])?.from).toBe(1);
  });
});
