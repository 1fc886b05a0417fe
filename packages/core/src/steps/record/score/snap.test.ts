import { describe, expect, it } from 'vitest';
import { boundaryRange, clampBoundary, nearestBoundary, scoreLimits } from './snap.ts';
import { composed, filmed, plainClock, row } from './testing/made-up.ts';

// Frames at 0, 40, 200, 240 ms; the film ends at 280 ms.
const uneven = [0, 40, 200, 240];

describe('snapping', () => {
  it('takes the nearer of two frames by their own times, the end of the film included', () => {
    const { clock } = filmed(uneven, 280, {});
    expect(
      [119_000, 121_000, 259_000, 261_000, 9_000_000, 0].map((us) => nearestBoundary(clock, us)),
    ).toEqual([1, 2, 3, 4, 4, 0]);
  });

  it('goes by real time when a clock in the scene says that film and time differ', () => {
    const { clock } = filmed(uneven, 280, {}, { kind: 'factor', realPerFilm: 0.125 });
    expect(clock.timeOf(2)).toBe(25_000);
    expect(nearestBoundary(clock, 24_000)).toBe(2);
  });

  it('a boundary stays one step from its neighbours', () => {
    const left = row('l', 90, [
      [0, 'TE'],
      [30, 'G'],
      [50, 'TL'],
    ]);
    const method = composed({ left });
    const range = boundaryRange(method, plainClock(method), { row: 'left', id: 'l1' });
    expect(range).toEqual({ at: 30, least: 1, most: 49 });
    expect([0, 1, 40, 49, 50].map((to) => clampBoundary(range ?? { least: 0, most: 0, at: 0 }, to))).toEqual([
      1, 1, 40, 49, 49,
    ]);
    expect(boundaryRange(method, plainClock(method), { row: 'left', id: 'l2' })).toMatchObject({ most: 89 });
    expect(boundaryRange(method, plainClock(method), { row: 'left', id: 'gone' })).toBeUndefined();
    expect(boundaryRange(method, plainClock(method), { row: 'right', id: undefined })).toBeUndefined();
  });

  it('the end of a row reaches the end of the film and not further', () => {
    const made = filmed(uneven, 280, { left: row('l', 3, [[0, 'TE']]) });
    expect(boundaryRange(made.method, made.clock, { row: 'left', id: undefined })).toEqual({
      at: 3,
      least: 1,
      most: 4,
    });
  });

  it('a composed method can be seen a little beyond its end, a film to its end', () => {
    const method = composed({ left: row('l', 2_000_000, [[0, 'TE']]) });
    expect(scoreLimits(method, plainClock(method))).toEqual({ fromUs: 0, toUs: 2_100_000, leastUs: 20_000 });
    const made = filmed(uneven, 280, {});
    expect(scoreLimits(made.method, made.clock)).toMatchObject({ fromUs: 0, toUs: 280_000 });
    const empty = composed({});
    const limits = scoreLimits(empty, plainClock(empty));
    expect(limits.toUs).toBeGreaterThan(limits.fromUs);
  });
});
