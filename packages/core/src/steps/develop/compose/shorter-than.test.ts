import { describe, expect, it } from 'vitest';
import { twoHandInstance } from '../../../../../../tests/helpers/two-hand-instances.ts';
import { shortestByTrial } from '../../../../../../tests/oracles/two-hand-composer.ts';
import { checkSchedule } from './check-schedule.ts';
import { shorterThan } from './shorter-than.ts';

/** Every instance here has a method. */
function leastOf(...of: Parameters<typeof shortestByTrial>): number {
  const least = shortestByTrial(...of);
  if (least === undefined) throw new Error('the instance should have a method');
  return least;
}

const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

describe('a method shorter than a given period, against trying everything', () => {
  it.each(['open', 'closed'] as const)(
    '%s cycle: found right above the least period, refuted at it',
    (kind) => {
      for (const seed of seeds) {
        const instance = twoHandInstance(seed, { parts: 1, units: 1, base: 'fixture' });
        const least = leastOf(instance, kind);
        const found = shorterThan(instance, { kind, below: least + 1 });
        expect([found.schedule?.period, found.proven, found.bound]).toEqual([least, true, least]);
        if (found.schedule !== undefined) expect(checkSchedule(instance, found.schedule)).toEqual([]);
        const none = shorterThan(instance, { kind, below: least });
        expect([none.schedule, none.proven]).toEqual([undefined, true]);
      }
    },
  );

  it('without states for the proof nothing is claimed that trying everything does not bear out', () => {
    for (const seed of seeds) {
      const instance = twoHandInstance(seed, { parts: 1, units: 1, base: 'hand' });
      const least = leastOf(instance, 'open');
      const { schedule, proven, bound } = shorterThan(instance, {
        below: least + 1_000_000,
        states: 0,
        width: 1,
      });
      expect(bound).toBeLessThanOrEqual(least);
      if (schedule !== undefined) expect(schedule.period).toBeGreaterThanOrEqual(least);
      if (proven) expect(schedule?.period).toBe(least);
    }
  });
});
