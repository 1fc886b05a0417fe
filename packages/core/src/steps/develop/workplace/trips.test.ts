import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchWork } from '../../../../../../tests/helpers/bench-works.ts';
import { emptyStudy, type Motion } from '../../../ground/study/index.ts';
import { readMethod } from '../../examine/index.ts';
import { compose } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { instanceOf, methodFromSchedule, type Work } from '../work/index.ts';
import {
  arrivals,
  handPaths,
  handTravel,
  positionsOf,
  type Trips,
  travelOver,
  tripsOfReading,
  tripsOfSchedule,
} from './trips.ts';

function composedTrips(work: Work): { schedule: Trips; record: Trips } {
  const times = predictWork(work, []);
  const instance = instanceOf(work, times);
  const made = compose(instance, { seed: 1, rounds: 10 });
  if (!made.ok) throw new Error(made.error.message);
  const { schedule } = made.value;
  const method = methodFromSchedule(work, times, instance, schedule, { id: 'm', name: 'composed' });
  const study = {
    ...emptyStudy('s', 'Couplings'),
    places: work.places.map(({ id, name, at }) => ({ id, name, ...(at === undefined ? {} : { at }) })),
    methods: [method],
  };
  const read = readMethod(study, 'm');
  if (!read.ok) throw new Error(read.error.message);
  return { schedule: tripsOfSchedule(work, instance, schedule), record: tripsOfReading(read.value) };
}

/** Moves that begin before the cycle stand at its end as well, so only where from and where to is compared. */
const sorted = ({ list }: Trips) =>
  list.map(({ hand, from, to, perCycle }) => `${hand} ${from} ${to} ${perCycle}`).sort();

describe('trips of the hands', () => {
  it.each([1, 2, 3, 4, 5, 6])('of a composed method (seed %d) are those of its two-hand chart', (seed) => {
    const { schedule, record } = composedTrips(benchWork(seed, 3, 8).work);
    expect(schedule.list.length).toBeGreaterThan(3);
    expect(sorted(record)).toEqual(sorted(schedule));
    expect(record.unknown).toBe(0);
  });

  const move = (kind: Motion['kind'], start: number, more: Partial<Motion>): Motion => ({
    id: `m${start}`,
    start,
    kind,
    said: 'marked',
    ...more,
  });
  const study = {
    ...emptyStudy('s', 'Couplings'),
    places: [
      { id: 'bin', name: 'Bin', at: { x: 300, y: 400 } },
      { id: 'nest', name: 'Nest', at: { x: 0, y: 0 } },
    ],
    methods: [
      {
        id: 'm',
        name: 'Present',
        kind: 'recorded' as const,
        base: { kind: 'micros' as const },
        unitsPerCycle: 1,
        left: { items: [move('UD', 0, {})], end: 400 },
        right: {
          items: [
            move('TE', 0, { to: 'bin' }),
            move('G', 10, {}),
            move('TL', 20, { to: 'nest' }),
            move('TE', 100, { to: 'bin' }),
            move('TL', 150, { from: 'bin', to: 'nest' }),
            move('TE', 180, {}),
          ],
          end: 400,
        },
        cycles: {
          items: [
            { id: 'c1', start: 0 },
            { id: 'c2', start: 100 },
          ],
          end: 200,
        },
      },
    ],
  };
  const read = readMethod(study, 'm');
  if (!read.ok) throw new Error(read.error.message);
  const trips = tripsOfReading(read.value);

  it('of a record are means over its cycles, and what has no end is counted apart', () => {
    expect(trips.list).toEqual([
      { hand: 'right', from: 'nest', to: 'bin', loaded: false, perCycle: 1 },
      { hand: 'right', from: 'bin', to: 'nest', loaded: true, perCycle: 1 },
    ]);
    expect(trips.unknown).toBe(0.5);
    expect(arrivals(trips).get('bin')).toEqual({ left: 0, right: 1 });
  });

  it('3-4-5: there and back over 300 by 400 mm are 1000 mm a cycle, 2 km in 2,000 cycles', () => {
    const { places } = study;
    const travel = handTravel(trips, (id) => places.find((place) => place.id === id)?.at);
    expect(travel).toEqual({ left: 0, right: 1000, unmeasured: 0.5 });
    expect(travelOver(1000, 14_400_000, 8 * 3_600_000_000)).toBeCloseTo(2000, 9);
    expect(() => travelOver(1000, 0, 1)).toThrow(RangeError);
  });

  it('paths there and back bend to different sides and keep their ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: 1, max: 500 }), (x, y) => {
        const at = (id: string) => (id === 'bin' ? { x, y } : { x: 0, y: 0 });
        const [there, back] = handPaths(trips, at);
        expect(there?.from).toEqual(back?.to);
        const side = (bend = { x: 0, y: 0 }) => Math.sign(x * bend.y - y * bend.x);
        expect(side(there?.bend) * side(back?.bend)).toBe(-1);
      }),
      { seed: 71, numRuns: 50 },
    );
  });

  it('positions come from the work by id', () => {
    const { work } = benchWork(1, 2, 8);
    expect(positionsOf(work)('fixture')).toEqual({ x: 0, y: 200 });
    expect(positionsOf(work)('nowhere')).toBeUndefined();
  });
});
