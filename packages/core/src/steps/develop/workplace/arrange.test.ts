import { describe, expect, it } from 'vitest';
import { graspStep } from '../../../../../../tests/helpers/bench-works.ts';
import { checkSchedule, compose } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { arranged } from './arrange.ts';
import { cornersOf, roomOf, sizeOf } from './bench-spots.ts';
import { reachOfBench } from './people.ts';
import { reachWords } from './reach-words.ts';
import { areaOf } from './working-areas.ts';

const work: Work = {
  workFormat: 1,
  title: 'Ring on body',
  unitsPerCycle: 1,
  home: 'free',
  bench: { width: 1000, depth: 500, people: 'women' },
  places: [
    { id: 'bodies', name: 'Body bin', kind: 'bin', at: { x: -420, y: 430 } },
    { id: 'rings', name: 'Ring bin', kind: 'bin', at: { x: 400, y: 440 } },
    { id: 'front', name: 'Fixture', kind: 'fixture', at: { x: 0, y: 200 } },
    { id: 'box', name: 'Finished box', kind: 'exit', at: { x: -350, y: 100 }, stays: true },
  ],
  steps: [
    graspStep('get-body', 'bodies', undefined, 'body'),
    { ...graspStep('lay-body', 'front', 'body', undefined), follows: [{ step: 'get-body' }] },
    graspStep('get-ring', 'rings', undefined, 'ring'),
    {
      ...graspStep('fit', 'front', 'ring', undefined),
      follows: [{ step: 'lay-body' }, { step: 'get-ring' }],
      eyes: true,
    },
    { ...graspStep('take', 'front', undefined, 'coupling'), follows: [{ step: 'fit' }] },
    { ...graspStep('aside', 'box', 'coupling', undefined), follows: [{ step: 'take' }] },
  ],
};

describe('the best places of a work with its method', () => {
  it('are shorter than the layout as it is, within reach and on the bench, and the proof names the pair', () => {
    const made = arranged(work, { readings: [], seed: 1, step: 200 });
    if (!made.ok) throw new Error(made.error.message);
    const { schedule, instance, proven, moved, work: better, words } = made.value;
    const now = compose(instanceOf(work, predictWork(work, [])), { seed: 1 });
    if (!now.ok) throw new Error(now.error.message);
    expect(schedule.period).toBeLessThan(now.value.schedule.period);
    expect(checkSchedule(instance, schedule)).toEqual([]);
    expect(proven).toBe(true);
    expect(words).toContain('the pair is proven');
    expect(moved.map(({ place }) => place).sort()).toEqual(['bodies', 'rings']);
    expect(better.places.find(({ id }) => id === 'box')).toEqual(work.places[3]);
    for (const place of better.places) {
      const { name, at } = place;
      if (at === undefined) throw new Error('no position');
      const [left, right] = (['left', 'right'] as const).map((hand) =>
        areaOf({ name, at }, hand, reachOfBench(work.bench)),
      );
      expect(left?.reached === true || right?.reached === true).toBe(true);
      expect(Math.abs(at.x) + roomOf(place).x / 2).toBeLessThanOrEqual(500);
      expect(at.y + roomOf(place).y / 2).toBeLessThanOrEqual(500);
    }
  });

  it('a bench without room for the places is told by their names', () => {
    const made = arranged(
      { ...work, bench: { width: 250, depth: 60 }, places: work.places.map(({ at: _, ...place }) => place) },
      { readings: [], seed: 1 },
    );
    expect(made.ok).toBe(false);
    expect(made.ok ? '' : made.error.message).toContain('Body bin');
  });
});

describe('what is out of reach', () => {
  it('is said by name for the hand that goes there, and not for the other', () => {
    const wide: Work = {
      ...work,
      places: work.places.map((place) =>
        place.id === 'rings' ? { ...place, at: { x: 900, y: 300 } } : place,
      ),
    };
    const { beyond } = reachWords(wide, undefined, reachOfBench(work.bench));
    // The body bin lies at the corner of the bench, 500 mm from the left shoulder.
    expect(beyond.map(({ hand, place }) => [hand, place])).toEqual([
      ['left', 'bodies'],
      ['right', 'rings'],
    ]);
    expect(beyond[1]?.sentence).toMatch(/^Ring bin lies out of reach of the right hand/);
    const trips = {
      list: [{ hand: 'left' as const, from: 'rings', to: 'front', loaded: true, perCycle: 1 }],
      unknown: 0,
    };
    const told = reachWords(wide, trips, reachOfBench(work.bench)).beyond;
    expect(told.map(({ hand, place }) => [hand, place])).toEqual([['left', 'rings']]);
  });
});

describe('a place that is turned', () => {
  const place = { ...work.places[0], id: 'a', name: 'A', kind: 'bin' as const, size: { x: 200, y: 100 } };
  it.each([
    [0, 200, 100],
    [90, 100, 200],
    [180, 200, 100],
    // By Pythagoras: both sides lie at half a right angle.
    [45, 300 / Math.SQRT2, 300 / Math.SQRT2],
    [-45, 300 / Math.SQRT2, 300 / Math.SQRT2],
  ])('by %d degrees takes the room of its turned corners', (angle, x, y) => {
    const turned = { ...place, angle };
    expect(roomOf(turned).x).toBeCloseTo(x, 6);
    expect(roomOf(turned).y).toBeCloseTo(y, 6);
    const corners = cornersOf({ ...turned, at: { x: 10, y: 20 } });
    const span = (list: readonly number[]) => Math.max(...list) - Math.min(...list);
    expect(span(corners.map((corner) => corner.x))).toBeCloseTo(x, 6);
    expect(span(corners.map((corner) => corner.y))).toBeCloseTo(y, 6);
    // Turning leaves the sides as they are.
    const [a, b] = corners;
    expect(Math.hypot((b?.x ?? 0) - (a?.x ?? 0), (b?.y ?? 0) - (a?.y ?? 0))).toBeCloseTo(sizeOf(turned).x, 6);
  });

  it('against the clock as seen from above: its right side goes away from the operator', () => {
    const [, right] = cornersOf({ ...place, at: { x: 0, y: 0 }, angle: 30 });
    const [, flat] = cornersOf({ ...place, at: { x: 0, y: 0 } });
    expect(right?.y).toBeGreaterThan(flat?.y ?? 0);
  });
});
