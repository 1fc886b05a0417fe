import { createPlayer, type OpenFilm, type Player } from '@evenhand/media';
import { afterEach, expect, test } from 'vitest';
import { makeDrawnFilm } from './drawn-films.ts';
import { numberIn, opened } from './frame-reading.ts';
import { makeHandFilm } from './hand-films.ts';

let film: OpenFilm | undefined;
let player: Player | undefined;

afterEach(() => {
  player?.dispose();
  film?.dispose();
});

interface Seen {
  readonly frame: number;
  readonly number: number | undefined;
  readonly time: number;
  readonly at: number;
}

/** Plays until the player stops by itself at the film's end; what was shown, with the number in its picture. */
async function playThrough(open: OpenFilm, speed: number, start: number): Promise<Seen[]> {
  const made = createPlayer(open.reader, open.clock, { start });
  player = made;
  const seen: Seen[] = [];
  await until(made, () => made.state().ready);
  made.onShown(({ frame, time, handle }) => {
    seen.push({ frame, time, number: numberIn(handle), at: performance.now() });
  });
  made.play(speed);
  await until(made, () => !made.state().playing && made.state().frame === made.state().asked);
  return seen;
}

function until(made: Player, condition: () => boolean): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      if (!condition()) return;
      stop();
      resolve();
    };
    const stop = made.subscribe(look);
    look();
  });
}

const uneven = (frame: number): number => frame + (frame % 3 === 1 ? 0.5 : 0);

test.each([
  ['constant-30.mp4', () => makeDrawnFilm({ frames: 45 }), 0],
  ['variable-rate.mp4', () => makeDrawnFilm({ frames: 45, startOf: uneven }), 0],
  ['b-frames.mp4', () => makeHandFilm({ groups: 4 }), 0],
  ['negative-start.mp4', () => makeHandFilm({ groups: 4, before: 4 }), 4],
  ['vp9.webm', () => makeDrawnFilm({ frames: 45, container: 'webm', codec: 'vp9' }), 0],
] as const)(
  '%s plays to its ends both ways; every picture shown is the frame it is said to be',
  async (name, make, first) => {
    film = await opened(await make(), name);
    const last = film.clock.frames - 1;
    for (const speed of [1, -1]) {
      const seen = await playThrough(film, speed, speed > 0 ? 0 : last);
      expect(seen.filter(({ frame, number }) => number !== frame + first)).toEqual([]);
      expect(seen.filter(({ frame, time }) => time !== film?.clock.timeOf(frame))).toEqual([]);
      const frames = seen.map(({ frame }) => frame);
      expect(frames).toEqual([...frames].sort((a, b) => (a - b) * speed));
      expect([frames[0], frames.at(-1)]).toEqual(speed > 0 ? [0, last] : [last, 0]);
      player?.dispose();
    }
  },
);

test('a loop shows nothing outside its span', async () => {
  film = await opened(await makeDrawnFilm({ frames: 60 }), 'constant-30.mp4');
  const made = createPlayer(film.reader, film.clock, { start: 20 });
  player = made;
  await until(made, () => made.state().ready);
  const frames: number[] = [];
  made.onShown(({ frame, handle }) => frames.push(numberIn(handle) === frame ? frame : Number.NaN));
  made.setLoop({ from: 20, to: 28 });
  made.play(2);
  await until(made, () => frames.filter((frame, at) => frame < (frames[at - 1] ?? 0)).length === 3);
  expect(frames.filter((frame) => !(frame >= 20 && frame < 28))).toEqual([]);
});

test('quick steps back through a long run without key frames all arrive', async () => {
  film = await opened(await makeDrawnFilm({ frames: 200, keyFrameInterval: 1000 }), 'one-key-frame.mp4');
  const made = createPlayer(film.reader, film.clock, { start: 199 });
  player = made;
  await until(made, () => made.state().ready);
  for (let step = 0; step < 60; step += 1) made.step(-1);
  await until(made, () => made.state().frame === 139);
  const shown = made.shown();
  expect(shown && numberIn(shown.handle)).toBe(139);
});
