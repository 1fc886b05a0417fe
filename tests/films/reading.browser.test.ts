import { describe, expect, test } from 'vitest';
import { type DrawnFilmOptions, makeDrawnFilm } from './drawn-films.ts';
import { opened, shownNumber } from './frame-reading.ts';
import { type HandFilmOptions, makeHandFilm } from './hand-films.ts';

/** Thirtieths of a second in microseconds. */
const thirtieths = (count: number): number => Math.round((count * 1_000_000) / 30);

interface Case {
  readonly name: string;
  readonly make: () => Promise<Uint8Array<ArrayBuffer>>;
  /** The number in frame 0. */
  readonly first?: number;
  /** Start of frame k in thirtieths of a second, as it was given to the muxer. */
  readonly startOf: (frame: number) => number;
  /** The container keeps whole milliseconds. */
  readonly rough: boolean;
  readonly size?: readonly [width: number, height: number];
}

const same = (frame: number): number => frame;
const isRough = (container = 'mp4') => container === 'webm' || container === 'mkv';

const drawn = (name: string, options: DrawnFilmOptions = {}): Case => ({
  name,
  make: () => makeDrawnFilm(options),
  startOf: options.startOf ?? same,
  rough: isRough(options.container),
  size: (options.rotation ?? 0) % 180 === 0 ? [320, 240] : [240, 320],
});
const hand = (name: string, options: HandFilmOptions = {}): Case => ({
  name,
  make: () => makeHandFilm(options),
  first: options.before ?? 0,
  startOf: options.startOf ?? same,
  rough: isRough(options.container),
  size: [64, 64],
});

/** Starts of frames in thirtieths of a second that no constant rate gives: 1/30, 1/60, 1/10, 1/20 s and over again. */
const uneven = (frame: number): number => Math.floor(frame / 4) * 6 + ([0, 1, 1.5, 4.5][frame % 4] ?? 0);

const films: readonly Case[] = [
  drawn('constant-30.mp4'),
  drawn('variable-rate.mp4', { startOf: uneven }),
  drawn('rotated-90.mp4', { rotation: 90, frames: 40 }),
  drawn('rotated-180.mp4', { rotation: 180, frames: 40 }),
  drawn('rotated-270.mp4', { rotation: 270, frames: 40 }),
  drawn('one-key-frame.mp4', { keyFrameInterval: 1000 }),
  drawn('only-key-frames.mp4', { keyFrameInterval: 0, frames: 40 }),
  drawn('fragmented.mp4', { container: 'mp4-fragmented' }),
  drawn('index-first.mp4', { container: 'mp4-index-first' }),
  drawn('h264.mov', { container: 'mov' }),
  drawn('h264.mkv', { container: 'mkv' }),
  drawn('vp9.webm', { container: 'webm', codec: 'vp9' }),
  drawn('vp8.webm', { container: 'webm', codec: 'vp8' }),
  drawn('av1.mp4', { codec: 'av1', frames: 60 }),
  hand('b-frames.mp4'),
  hand('b-frames.mkv', { container: 'mkv' }),
  hand('b-frames-unannounced.mp4', { announced: false }),
  hand('open-groups.mp4', { open: true, groups: 4 }),
  hand('negative-start.mp4', { before: 4 }),
  hand('late-start.mp4', { startOf: (frame) => frame + 7.5 }),
];

describe.each(films)('$name', ({ name, make, first = 0, startOf, rough, size }) => {
  test('every frame is itself: at random, forward and backward', async () => {
    const film = await opened(await make(), name);
    const count = film.clock.frames;
    const wrong: string[] = [];
    const check = async (k: number, how: string) => {
      const number = await shownNumber(film, k).catch((error: Error) => error.message);
      if (number !== k + first) wrong.push(`${how} ${k}: ${number}`);
    };
    for (let k = 0; k < count; k += 1) await check((k * 37 + 11) % count, 'random');
    for (let k = 0; k < count; k += 1) await check(k, 'forward');
    for (let k = count - 1; k >= 0; k -= 1) await check(k, 'backward');
    film.dispose();
    expect(wrong).toEqual([]);
  });

  test('every frame has its own time, and the picture its size', async () => {
    const film = await opened(await make(), name);
    const off = Array.from(
      { length: film.clock.frames },
      (_, k) => film.clock.timeOf(k) - thirtieths(startOf(k)),
    );
    film.dispose();
    expect(off.filter((error) => Math.abs(error) > (rough ? 1000 : 10))).toEqual([]);
    expect([film.index.width, film.index.height]).toEqual(size);
  });
});
