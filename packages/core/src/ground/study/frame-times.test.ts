import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deltasArb } from '../../../../../tests/helpers/study-arbitraries.ts';
import { encodeFrameTimes, frameClock, frameCount } from './frame-times.ts';
import { checkFilm, type Film, studySchema } from './index.ts';

const seeded = { seed: 4_711, numRuns: 300 };

function ticksOf(deltas: readonly number[], start: number): { ticks: number[]; end: number } {
  let at = start;
  const ticks = deltas.map((delta) => {
    at += delta;
    return at - delta;
  });
  return { ticks, end: at };
}

/** Exact time of a tick, rounded half up, by whole numbers only. */
function exactUs(tick: number, ticksPerSecond: number): number {
  return Number((BigInt(tick) * 2_000_000n + BigInt(ticksPerSecond)) / (2n * BigInt(ticksPerSecond)));
}

describe('frame times', () => {
  it('come back from the packed form for any rate, constant or not', () => {
    fc.assert(
      fc.property(deltasArb, fc.nat(1_000_000), ({ deltas, ticksPerSecond }, start) => {
        const { ticks, end } = ticksOf(deltas, start);
        const packed = encodeFrameTimes(ticks, end, ticksPerSecond);
        expect(studySchema.shape.films.element.shape.frameTimes.safeParse(packed).success).toBe(true);
        expect(frameCount(packed)).toBe(deltas.length);
        const clock = frameClock(packed);
        for (const [frame, tick] of [...ticks, end].entries()) {
          expect(clock.timeOf(frame)).toBe(exactUs(tick, ticksPerSecond));
        }
      }),
      seeded,
    );
  });

  it('show at any time the last frame whose time is not after it', () => {
    fc.assert(
      fc.property(deltasArb, fc.nat(10_000_000), ({ deltas, ticksPerSecond }, time) => {
        const { ticks, end } = ticksOf(deltas, 0);
        const clock = frameClock(encodeFrameTimes(ticks, end, ticksPerSecond));
        const slow = ticks.findLastIndex((tick) => exactUs(tick, ticksPerSecond) <= time);
        expect(clock.frameAt(time)).toBe(Math.max(0, slow));
      }),
      seeded,
    );
  });

  it('of two hours at 30000/1001 are one step and lose nothing at the end', () => {
    const frames = 215_784;
    const packed = encodeFrameTimes(
      Array.from({ length: frames }, (_, k) => k * 1001),
      frames * 1001,
      30_000,
    );
    expect(packed.steps).toEqual([{ repeat: frames, deltas: [1001] }]);
    // 215784 × 1001 / 30000 s = 7199.9928 s, by hand
    expect(frameClock(packed).timeOf(frames)).toBe(7_199_992_800);
  });

  it('of a WebM at 30 a second (33, 33, 34 ms) are one repeated pattern', () => {
    const deltas = Array.from({ length: 900 }, (_, k) => (k % 3 === 2 ? 34 : 33));
    const { ticks, end } = ticksOf(deltas, 0);
    expect(encodeFrameTimes(ticks, end, 1000).steps).toEqual([{ repeat: 300, deltas: [33, 33, 34] }]);
  });

  it('pack an irregular film without losing a frame and in lists of at most 64', () => {
    const deltas = Array.from({ length: 1000 }, (_, k) => 20 + ((k * k * 7) % 31));
    const { ticks, end } = ticksOf(deltas, 5);
    const packed = encodeFrameTimes(ticks, end, 1000);
    expect(packed.steps.every((step) => step.deltas.length <= 64)).toBe(true);
    expect(packed.steps.flatMap((step) => Array(step.repeat).fill(step.deltas).flat())).toEqual(deltas);
  });

  it.each([
    ['no frame', [], 10, 'at least one frame'],
    ['a first time before zero', [-5, 10], 20, '0 or more, got -5'],
    ['a first time that is no whole tick', [0.5, 10], 20, 'got 0.5'],
    ['times that stand still', [0, 10, 10], 20, 'frame 1 does not end'],
    ['an end before the last frame', [0, 10], 10, 'frame 1 does not end'],
  ] as const)('refuse %s', (_, ticks, end, message) => {
    expect(() => encodeFrameTimes(ticks, end, 1000)).toThrow(message);
  });

  it('have no time outside the film', () => {
    const clock = frameClock({ ticksPerSecond: 10, start: 0, steps: [{ repeat: 3, deltas: [1] }] });
    expect(clock.timeOf(3)).toBe(300_000);
    expect(() => clock.timeOf(4)).toThrow('boundary 4 lies outside the film of 3 frames');
    expect(clock.frameAt(-1)).toBe(0);
    expect(clock.frameAt(1e9)).toBe(2);
  });
});

const film = (frameTimes: Film['frameTimes'], clock: Film['clock'] = { kind: 'identity' }): Film => ({
  id: 'f',
  sha256: '0'.repeat(64),
  name: 'f.mp4',
  bytes: 1,
  container: 'MP4',
  codec: 'avc1',
  width: 1,
  height: 1,
  rotation: 0,
  frameTimes,
  clock,
});

describe('a film whose frames have no time of their own is refused', () => {
  it.each([
    [
      'too many frames',
      { ticksPerSecond: 30, start: 0, steps: [{ repeat: 50_000_001, deltas: [1] }] },
      /more than a film can have/,
    ],
    [
      'ticks finer than a number can hold',
      { ticksPerSecond: 9_000_000_001, start: 0, steps: [{ repeat: 1, deltas: [9e12] }] },
      /more than 9000000000/,
    ],
    [
      'frames shorter than a microsecond',
      { ticksPerSecond: 1_000_000_000, start: 0, steps: [{ repeat: 2, deltas: [999] }] },
      /999 ticks is shorter than a microsecond/,
    ],
    [
      'an end beyond what can be written',
      { ticksPerSecond: 1, start: 0, steps: [{ repeat: 2, deltas: [9e15] }] },
      /later than a time can be written/,
    ],
  ])('%s', (_, times, reason) => {
    const found = checkFilm(film(times), '/films/0');
    expect(found.map((item) => [item.code, item.where.pointer])).toEqual([
      ['study/frame-times', '/films/0/frameTimes'],
    ]);
    expect(found[0]?.message).toMatch(reason);
  });

  it('thirty thousand steps of a film of irregular rate are read without trouble', () => {
    const steps = Array.from({ length: 30_000 }, (_, k) => ({ repeat: 2, deltas: [30 + (k % 7)] }));
    expect(checkFilm(film({ ticksPerSecond: 1000, start: 0, steps }), '')).toEqual([]);
  });
});
