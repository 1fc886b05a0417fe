import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packSightings, unpackSightings } from './packed-sightings.ts';
import { stillToDo, stretchesOf } from './stretches.ts';
import { joinStretches } from './track-film.ts';
import { workPace } from './work-pace.ts';

describe('stretches of a film', () => {
  it('cover every frame once, in order', () => {
    const film = fc.record({
      frames: fc.integer({ min: 1, max: 5000 }),
      gap: fc.integer({ min: 1, max: 3000 }),
    });
    fc.assert(
      fc.property(film, ({ frames, gap }) => {
        const keys = Array.from({ length: Math.ceil(frames / gap) }, (_, at) => at * gap);
        const stretches = stretchesOf(frames, keys);
        let next = 0;
        for (const { from, to } of stretches) {
          expect(from).toBe(next);
          expect(to).toBeGreaterThan(from);
          next = to;
        }
        expect(next).toBe(frames);
      }),
      { seed: 2 },
    );
  });

  it('begin at key frames where these are not rare', () => {
    const keys = Array.from({ length: 17 }, (_, at) => at * 60);
    expect(stretchesOf(1000, keys).map(({ from }) => from)).toEqual([0, 240, 480, 720, 960]);
  });

  it('of a short film are about equal parts for two workers, though key frames are rare', () => {
    const stretches = stretchesOf(287, [0, 250]);
    expect(stretches.map(({ from, to }) => to - from)).toEqual([83, 84, 83, 37]);
  });

  it('that are finished are not searched again', () => {
    const all = stretchesOf(1000, [0, 300, 600]);
    expect(stillToDo(all, all.slice(0, 1))).toEqual(all.slice(1));
    expect(stillToDo(all, all)).toEqual([]);
  });
});

describe('sightings', () => {
  it('of two stretches keep their frames, and trails that are told apart', () => {
    const one = (frame: number, trail: number) => ({
      frame,
      trail,
      presence: 0.75,
      right: 0.25,
      landmarks: [],
      place: { x: 10, y: 20 },
      palm: 5,
      opening: 0.5,
    });
    const stretches = [
      { sightings: packSightings([one(0, 1), one(0, 2)], 2) },
      { sightings: packSightings([one(7, 1)], 2) },
    ];
    const joined = joinStretches(stretches);
    expect(joined.map(({ frame, trail }) => [frame, trail])).toEqual([
      [0, 1],
      [0, 2],
      [7, 3],
    ]);
    expect(joined[0]).toEqual({
      frame: 0,
      trail: 1,
      presence: 0.75,
      right: 0.25,
      x: 20,
      y: 40,
      palm: 10,
      opening: 0.5,
    });
    expect(unpackSightings(new Float32Array(0))).toEqual([]);
  });
});

describe('the pace of a search', () => {
  it('tells rate and time left from the frames of the last seconds', () => {
    let now = 0;
    const told: unknown[] = [];
    const pace = workPace(
      120,
      20,
      () => now,
      (progress) => told.push(progress),
    );
    expect(told).toEqual([{ done: 20, frames: 120, rate: undefined, secondsLeft: undefined }]);
    for (let frame = 0; frame < 50; frame += 1) {
      now += 100;
      pace.step();
    }
    pace.end();
    // Ten frames a second; fifty of the hundred are left.
    expect(told.at(-1)).toEqual({ done: 70, frames: 120, rate: 10, secondsLeft: 5 });
    expect(told.length).toBeLessThan(25);
  });
});
