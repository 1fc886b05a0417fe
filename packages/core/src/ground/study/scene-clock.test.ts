import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockArb, frameTimesArb } from '../../../../../tests/helpers/study-arbitraries.ts';
import { lineResiduals } from '../../../../../tests/oracles/least-squares.ts';
import {
  type Clock,
  clockFault,
  clockResiduals,
  type FrameTimes,
  frameClock,
  frameCount,
  sceneClock,
} from './index.ts';

const seeded = { seed: 815, numRuns: 300 };
const clockedFilm = frameTimesArb.chain((frameTimes) =>
  clockArb(frameTimes).map((clock) => ({ frameTimes, clock })),
);
const tenthSeconds: FrameTimes = { ticksPerSecond: 10, start: 0, steps: [{ repeat: 100, deltas: [1] }] };
const points = (...list: readonly (readonly [frame: number, realUs: number])[]): Clock => ({
  kind: 'points',
  points: list.map(([frame, realUs]) => ({ frame, realUs })),
});

describe('the scene clock', () => {
  it('grows with every frame and finds every frame again by its real time', () => {
    fc.assert(
      fc.property(clockedFilm, (film) => {
        const clock = sceneClock(film);
        for (let frame = 0; frame < clock.frames; frame += 1) {
          expect(clock.realOf(frame)).toBeGreaterThanOrEqual(0);
          expect(clock.realOf(frame + 1)).toBeGreaterThan(clock.realOf(frame));
          expect(clock.frameAtReal(clock.realOf(frame))).toBe(frame);
          expect(clock.frameAtReal(clock.realOf(frame + 1) - 1)).toBe(frame);
        }
      }),
      seeded,
    );
  });

  it('goes through every point that was read', () => {
    fc.assert(
      fc.property(clockedFilm, (film) => {
        if (film.clock.kind !== 'points') return;
        const clock = sceneClock(film);
        for (const { frame, realUs } of film.clock.points) expect(clock.realOf(frame)).toBe(realUs);
      }),
      seeded,
    );
  });

  it('by a factor: film taken at 240 and stored at 30 a second runs eight times slower than the work', () => {
    const clock = sceneClock({ frameTimes: tenthSeconds, clock: { kind: 'factor', realPerFilm: 0.125 } });
    expect(clock.realOf(80)).toBe(1_000_000);
  });

  it('by points: straight between them, and the outer stretches go on at their own rate (worked by hand)', () => {
    const clock = sceneClock({
      frameTimes: tenthSeconds,
      clock: points([10, 5_000_000], [20, 6_000_000], [40, 10_000_000]),
    });
    expect(clock.realOf(15)).toBe(5_500_000);
    expect(clock.realOf(30)).toBe(8_000_000);
    expect(clock.realOf(0)).toBe(4_000_000);
    expect(clock.realOf(50)).toBe(12_000_000);
  });

  it('strays from one straight line as an independent least-squares fit says', () => {
    fc.assert(
      fc.property(clockedFilm, (film) => {
        if (film.clock.kind !== 'points' || film.clock.points.length < 3) {
          expect(clockResiduals(film)).toBeUndefined();
          return;
        }
        const times = frameClock(film.frameTimes);
        const wanted = lineResiduals(
          film.clock.points.map(({ frame, realUs }) => ({
            x: BigInt(times.timeOf(frame)),
            y: BigInt(realUs),
          })),
        );
        const found = clockResiduals(film) ?? [];
        expect(found.length).toBe(wanted.length);
        for (const [index, value] of found.entries())
          expect(Math.abs(value - Number(wanted[index]))).toBeLessThanOrEqual(1);
      }),
      seeded,
    );
  });

  it('strays by −1/6, +1/3 and −1/6 s when the middle of three even points is read half a second late (by hand)', () => {
    const film = { frameTimes: tenthSeconds, clock: points([0, 0], [10, 1_500_000], [20, 2_000_000]) };
    expect(clockResiduals(film)).toEqual([-166_667, 333_333, -166_667]);
  });
});

describe('a clock that would make time stand still or run backwards is refused', () => {
  it.each<[string, Clock, RegExp]>([
    ['a point after the film', points([0, 0], [101, 10]), /point 2 lies at frame 101, after the end/],
    ['points at one frame', points([5, 0], [5, 10]), /point 2 must lie at a later frame/],
    ['points that go back', points([5, 20], [9, 10]), /point 2 must show a later time/],
    ['a beginning before zero', points([50, 1_000_000], [60, 3_000_000]), /before the clock’s zero/],
    ['two frames in one microsecond', points([0, 0], [100, 50]), /fall on the same microsecond/],
    ['a factor that is too small', { kind: 'factor', realPerFilm: 1e-9 }, /fall on the same microsecond/],
  ])('%s', (_, clock, reason) => {
    expect(clockFault({ frameTimes: tenthSeconds, clock }, frameCount(tenthSeconds))).toMatch(reason);
  });

  it('and one whose last frame cannot be written as a time', () => {
    const frameTimes: FrameTimes = {
      ticksPerSecond: 1,
      start: 0,
      steps: [{ repeat: 1, deltas: [4_000_000_000] }],
    };
    expect(clockFault({ frameTimes, clock: { kind: 'factor', realPerFilm: 1e6 } }, 1)).toMatch(
      /longer than a time/,
    );
  });
});
