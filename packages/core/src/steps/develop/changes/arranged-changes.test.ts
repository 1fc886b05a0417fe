import { describe, expect, it } from 'vitest';
import { graspStep } from '../../../../../../tests/helpers/bench-works.ts';
import type { Work } from '../work/index.ts';
import { arrangeSpots } from '../workplace/index.ts';
import { arrangedWith } from './arranged-changes.ts';
import { changedBy, changeOf } from './rules.ts';
import { developed } from './worth.ts';

/** Invented: a ring is taken from a bin far away, fitted in front, and put aside. */
const work: Work = {
  workFormat: 1,
  title: 'Ring aside',
  unitsPerCycle: 1,
  home: 'free',
  bench: { width: 1000, depth: 500 },
  places: [
    { id: 'rings', name: 'Ring bin', kind: 'bin', at: { x: 300, y: 350 } },
    { id: 'front', name: 'Holding place', kind: 'fixture', at: { x: 0, y: 200 } },
    { id: 'box', name: 'Finished box', kind: 'exit', at: { x: 250, y: 100 }, stays: true },
  ],
  steps: [
    graspStep('get', 'rings', undefined, 'ring'),
    { ...graspStep('fit', 'front', 'ring', 'fitted ring'), follows: [{ step: 'get' }] },
    { ...graspStep('aside', 'box', 'fitted ring'), follows: [{ step: 'fit' }] },
  ],
};
const changes = (...ids: string[]) => ids.flatMap((id) => changeOf(id, work) ?? []);
const wish = { readings: [], seed: 1, step: 100 };
const binAt = (at: { x: number; y: number }): Work => ({
  ...work,
  places: work.places.map((place) => (place.id === 'rings' ? { ...place, at } : place)),
});

function unitTimeOf(of: Work, ...ids: string[]): number {
  const changed = changedBy(of, changes(...ids));
  const made = changed === undefined ? undefined : developed(changed, { readings: [], seed: 1 });
  return made?.ok === true ? made.value.unitTime : Number.POSITIVE_INFINITY;
}

describe('best places of a work with changes', () => {
  it.each(['two-units', 'chute'])(
    'with %s: shorter than it stands, the figure is that of the changes made again after the move, and no spot for the one bin is shorter',
    (id) => {
      const found = arrangedWith(work, changes(id), wish);
      if (found?.ok !== true) throw new Error(found?.error.message ?? 'not made');
      const { moved, method } = found.value;
      expect(moved.map(({ place }) => place)).toEqual(['rings']);
      // What came with the change stands where it mirrors the bin.
      const follows = found.value.follows.map(({ place }) => place);
      expect(follows).toEqual(expect.arrayContaining(id === 'two-units' ? ['rings', 'rings-2'] : ['rings']));
      const to = moved[0]?.to ?? { x: 0, y: 0 };
      expect(method.unitTime).toBe(unitTimeOf(binAt(to), id));
      expect(method.unitTime).toBeLessThan(unitTimeOf(work, id));
      // Slowly, from the definition: every spot that is free, composed anew.
      const free = arrangeSpots(work).filter(({ at }) =>
        (changedBy(binAt(at), changes(id))?.places ?? []).every((one, index, all) =>
          all.every(
            (other, at2) =>
              index === at2 ||
              Math.abs((one.at?.x ?? 0) - (other.at?.x ?? 0)) >= 100 ||
              Math.abs((one.at?.y ?? 0) - (other.at?.y ?? 0)) >= 100,
          ),
        ),
      );
      expect(free.length).toBeGreaterThan(10);
      const least = Math.min(...free.map(({ at }) => unitTimeOf(binAt(at), id)));
      expect(method.unitTime).toBeLessThanOrEqual(least);
    },
  );

  it('is undefined when a change has nothing to change, and stops when it is told to', () => {
    expect(arrangedWith(work, changes('guide'), wish)).toBeUndefined();
    const stopped = arrangedWith(work, changes('two-units'), { ...wish, stop: () => true });
    if (stopped?.ok !== true) throw new Error('a method at once is wanted');
    expect(stopped.value.words).toContain('time was up');
    expect(stopped.value.moved).toEqual([]);
  });
});
