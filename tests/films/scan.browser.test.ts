import { type Band, bandColour, openFilm, type ScanWish, scanFilm } from '@evenhand/media';
import { expect, test } from 'vitest';
import { makeDrawnFilm } from './drawn-films.ts';

const [width, height, frames] = [480, 320, 45];
const leftAt = (frame: number) => ({ x: 150 + 60 * Math.sin(frame / 7), y: 220 });
const rightAt = (frame: number) => ({ x: 340, y: 180 + 70 * Math.sin(frame / 9) });

/** Two black gloves with a blue and a yellow band, coded as a film by the browser. */
async function gloves(): Promise<File> {
  const bytes = await makeDrawnFilm({
    width,
    height,
    frames,
    backdrop: (context, frame) => {
      context.fillStyle = '#b9b4a8';
      context.fillRect(0, 0, width, height);
      for (const [at, colour] of [
        [leftAt(frame), '#2850dc'],
        [rightAt(frame), '#e6c81e'],
      ] as const) {
        context.fillStyle = '#1c1c1e';
        context.fillRect(at.x - 20, at.y - 60, 40, 90);
        context.fillStyle = colour;
        context.fillRect(at.x - 20, at.y - 6, 40, 12);
      }
    },
  });
  return new File([bytes], 'gloves.mp4');
}

async function bandIn(
  film: File,
  frame: number,
  at: { readonly x: number; readonly y: number },
): Promise<Band> {
  const opened = await openFilm(film);
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const read = await opened.value.reader.frame(frame);
  if (!read.ok) throw new Error(read.error.message);
  const context = new OffscreenCanvas(width, height).getContext('2d');
  if (context === null) throw new Error('there is no canvas to read');
  read.value.draw(context, 0, 0, width, height);
  read.value.close();
  opened.value.dispose();
  const colour = bandColour(context.getImageData(0, 0, width, height), at);
  if (!colour.ok) throw new Error(colour.error.message);
  return { colour: colour.value, click: { frame, ...at } };
}

test('bands clicked in one frame of a coded film are followed through all of it, with progress', async () => {
  const film = await gloves();
  const bands = { left: await bandIn(film, 20, leftAt(20)), right: await bandIn(film, 20, rightAt(20)) };
  const progress: number[] = [];
  const found = await scanFilm(
    film,
    { kind: 'bands', bands },
    { onProgress: ({ done }) => progress.push(done) },
  );
  if (!found.ok) throw new Error(found.error[0]?.message);
  const { track, findings } = found.value;
  expect(findings).toEqual([]);
  expect([track.frames, track.width, track.height]).toEqual([frames, width, height]);
  for (let frame = 0; frame < frames; frame += 1) {
    expect(Math.abs((track.left?.x[frame] ?? 0) - leftAt(frame).x)).toBeLessThan(3);
    expect(Math.abs((track.right?.y[frame] ?? 0) - rightAt(frame).y)).toBeLessThan(3);
  }
  expect(progress.at(-1)).toBe(frames);
});

const regions: ScanWish = {
  kind: 'energy',
  regions: {
    left: [{ x: 40, y: 100, width: 200, height: 220 }],
    right: [{ x: 260, y: 100, width: 200, height: 220 }],
  },
};

test('movement in regions of a coded film is found for each hand', async () => {
  const found = await scanFilm(await gloves(), regions);
  if (!found.ok) throw new Error(found.error[0]?.message);
  const { left, right } = found.value.track;
  // Known as soon as something has moved; the left hand goes sideways only, the right one up and down only.
  for (let frame = 3; frame < frames; frame += 1) {
    expect(Math.abs((left?.x[frame] ?? 0) - leftAt(frame).x)).toBeLessThan(40);
    expect(Math.abs((right?.x[frame] ?? 0) - 340)).toBeLessThan(6);
  }
});

test('a search can be ended, and what is no film is refused in the reader’s words', async () => {
  const stop = new AbortController();
  const searching = scanFilm(await gloves(), regions, { signal: stop.signal });
  stop.abort();
  await expect(searching).rejects.toMatchObject({ name: 'AbortError' });
  const refused = await scanFilm(new File(['no film at all'], 'letter.mp4'), regions);
  expect(refused.ok ? '' : refused.error[0]?.message).toContain('letter.mp4');
});
