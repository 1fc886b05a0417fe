import { describe, expect, it } from 'vitest';
import { benchWork } from '../../../../../../tests/helpers/bench-works.ts';
import type { Work } from '../work/index.ts';
import { gridSpots, type LayoutLimits, sizeOf } from './bench-spots.ts';
import { bestPlaces } from './best-places.ts';
import { usualReach } from './people.ts';
import { handTravel, positionsOf, type Trips } from './trips.ts';
import { areaOf, type BenchPoint } from './working-areas.ts';

const wish = { seed: 1, starts: 3, moves: 200 };
/** Each part goes to the fixture by one hand; body and exit by the left, parts by the right; one trip between two bins. */
function tripsFor({ places }: Work): Trips {
  const list = places
    .filter(({ id }) => id !== 'fixture')
    .flatMap(({ id }, index) => {
      const hand = index % 2 === 0 ? ('left' as const) : ('right' as const);
      return [
        { hand, from: 'fixture', to: id, loaded: false, perCycle: 1 + (index % 3) },
        { hand, from: id, to: 'fixture', loaded: true, perCycle: 1 },
      ];
    });
  return {
    list: [...list, { hand: 'left', from: 'body-bin', to: 'exit', loaded: false, perCycle: 2 }],
    unknown: 0,
  };
}

/** Every placing of the movable places tried, with the limits written anew from their words. */
function leastTravelByTrial(
  work: Work,
  trips: Trips,
  { spots, reach, sides, gap = 20 }: LayoutLimits,
): number {
  const movable = work.places.filter(({ kind }) => kind !== 'fixture');
  const candidates = [
    ...spots.map(({ at }) => at),
    ...movable.flatMap(({ at }) => (at === undefined ? [] : [at])),
  ];
  const put = new Map<string, BenchPoint>(
    work.places.filter(({ kind }) => kind === 'fixture').map(({ id, at }) => [id, at ?? { x: 0, y: 0 }]),
  );
  const apart = (a: BenchPoint, b: BenchPoint, width: number, depth: number) =>
    Math.abs(a.x - b.x) >= width + gap || Math.abs(a.y - b.y) >= depth + gap;
  let least = Number.POSITIVE_INFINITY;
  const go = (index: number) => {
    const place = movable[index];
    if (place === undefined) {
      let sum = 0;
      for (const { from, to, perCycle } of trips.list) {
        const [a, b] = [put.get(from), put.get(to)];
        if (a !== undefined && b !== undefined)
          sum += perCycle * Math.round(Math.hypot(a.x - b.x, a.y - b.y));
      }
      least = Math.min(least, sum);
      return;
    }
    for (const at of candidates) {
      const side = sides?.[place.id];
      if ((side === 'left' && at.x > 0) || (side === 'right' && at.x < 0)) continue;
      const used = trips.list.filter(({ from, to }) => from === place.id || to === place.id);
      if (used.some(({ hand }) => !areaOf({ name: '', at }, hand, reach).reached)) continue;
      const clear = [...put].every(([id, point]) => {
        const other = work.places.find((known) => known.id === id) ?? place;
        const [one, two] = [sizeOf(place), sizeOf(other)];
        return apart(at, point, (one.x + two.x) / 2, (one.y + two.y) / 2);
      });
      if (!clear) continue;
      put.set(place.id, at);
      go(index + 1);
      put.delete(place.id);
    }
  };
  go(0);
  return least;
}

describe('best places against every placing tried', () => {
  it.each([1, 2, 3, 4, 5, 6])('seed %d: the same least travel, proven, with sides and gaps', (seed) => {
    const { work, spots } = benchWork(seed, 2, 7);
    const trips = tripsFor(work);
    const limits: LayoutLimits = {
      reach: usualReach,
      spots,
      sides: seed % 2 === 0 ? { exit: 'left', 'bin-1': 'right' } : {},
      gap: 10 * seed,
    };
    const made = bestPlaces(work, trips, limits, wish);
    const least = leastTravelByTrial(work, trips, limits);
    if (!made.ok) {
      expect(least).toBe(Number.POSITIVE_INFINITY);
      return;
    }
    expect([made.value.travel, made.value.bound, made.value.proven]).toEqual([least, least, true]);
    const { left, right } = handTravel(trips, positionsOf(made.value.work));
    // Distances count in whole millimetres, half a millimetre off each at the most.
    const count = trips.list.reduce((sum, { perCycle }) => sum + perCycle, 0);
    expect(Math.abs(left + right - least)).toBeLessThanOrEqual(count / 2);
  });
});

describe('the limits of a layout', () => {
  const { work, spots } = benchWork(3, 3, 8);
  const trips = tripsFor(work);
  const limits: LayoutLimits = { reach: usualReach, spots };

  it('what stays is not moved, and what is moved is told with where from', () => {
    const made = bestPlaces(work, trips, limits, wish);
    if (!made.ok) throw new Error(made.error.message);
    const at = positionsOf(made.value.work);
    expect(at('fixture')).toEqual({ x: 0, y: 200 });
    for (const { place, from, to } of made.value.moved) {
      expect(from).toEqual(positionsOf(work)(place));
      expect(at(place)).toEqual(to);
    }
    expect(made.value.travel).toBeLessThanOrEqual(made.value.now ?? 0);
  });

  it('more spots never make it longer, and everything stays in reach', () => {
    const few = bestPlaces(work, trips, limits, wish);
    const more = bestPlaces(work, trips, { ...limits, spots: [...spots, ...gridSpots(usualReach)] }, wish);
    if (!few.ok || !more.ok) throw new Error('no layout');
    expect(more.value.travel).toBeLessThanOrEqual(few.value.travel);
    expect(more.value.bound).toBeLessThanOrEqual(more.value.travel);
    for (const { hand, to } of trips.list) {
      const point = positionsOf(more.value.work)(to) ?? { x: 0, y: 9999 };
      expect(areaOf({ name: to, at: point }, hand, usualReach).reached).toBe(true);
    }
  });

  it.each([
    ['nothing may be moved', { ...limits, movable: [] }, 'develop/nothing-movable'],
    [
      'a place that fits nowhere is named',
      {
        ...limits,
        spots: [],
        sides: { exit: 'left', 'bin-1': 'left', 'bin-2': 'left', 'bin-3': 'left', 'body-bin': 'left' },
        gap: 900,
      } as LayoutLimits,
      'develop/no-spot',
    ],
  ])('%s', (_, wrong, code) => {
    const made = bestPlaces(work, trips, wrong, wish);
    expect(made.ok ? '' : made.error.code).toBe(code);
  });

  it('together they can be too much though each finds a spot', () => {
    const made = bestPlaces(work, trips, { ...limits, gap: 120 }, wish);
    expect(made.ok ? '' : made.error.code).toMatch(/develop\/no-(layout|spot)/);
  });
});
