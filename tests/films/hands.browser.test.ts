import { type HandStretch, openFilm, trackFilm } from '@evenhand/media';
import { HandTracker } from '@evenhand/media/hands';
import { browserHandModels, FramePixels } from '@evenhand/media/hands-in-browser';
import { UrlSource } from 'mediabunny';
import { expect, test } from 'vitest';
import { hasRealFilm, realFilmUrl } from '../helpers/real-films.ts';
import { firstFrames } from './short-film.ts';

const demoUrl = new URL('../../examples/couplings/present.mp4', import.meta.url).href;

async function demo(frames: number): Promise<File> {
  return new File([await firstFrames(new UrlSource(demoUrl), frames)], 'present.mp4');
}

test('both hands of the demonstration film are found, the left one on the left, by two workers and with progress', async () => {
  const film = await demo(24);
  const progress: number[] = [];
  const found = await trackFilm(film, { onProgress: ({ done }) => progress.push(done) });
  if (!found.ok) throw new Error(found.error[0]?.message);
  const { track, report, findings } = found.value;
  expect(report.frames).toBe(24);
  expect(report.both).toBeGreaterThanOrEqual(22);
  expect(findings).toEqual([]);
  // The film is seen from above and from the operator’s side (examples/couplings/film): the left hand is on the left.
  for (let frame = 0; frame < 24; frame += 1) {
    const [left, right] = [track.left?.x[frame] ?? Number.NaN, track.right?.x[frame] ?? Number.NaN];
    if (!Number.isNaN(left) && !Number.isNaN(right)) expect(left).toBeLessThan(right);
  }
  expect(progress.at(-1)).toBe(24);
  expect(progress).toEqual([...progress].sort((a, b) => a - b));
});

test('a mirrored film has its hands exchanged', async () => {
  const found = await trackFilm(await demo(8), { workers: 1, mirrored: true });
  if (!found.ok) throw new Error(found.error[0]?.message);
  const { left, right } = found.value.track;
  expect(left?.x[6]).toBeGreaterThan(right?.x[6] ?? Number.POSITIVE_INFINITY);
});

test('a search that was ended goes on from the stretches it had finished', async () => {
  const film = await demo(8);
  const kept: HandStretch[] = [];
  const whole = await trackFilm(film, { workers: 1, onStretch: (stretch) => kept.push(stretch) });
  const stopped = new AbortController();
  const cut = trackFilm(film, {
    workers: 1,
    signal: stopped.signal,
    onProgress: ({ done }) => {
      if (done > 2) stopped.abort();
    },
  });
  await expect(cut).rejects.toMatchObject({ name: 'AbortError' });
  let searched = 0;
  const again = await trackFilm(film, {
    workers: 1,
    resumeFrom: kept,
    onProgress: ({ done }) => {
      searched = Math.max(searched, 8 - done);
    },
  });
  // Nothing was left to search, and the track is the same.
  expect(searched).toBe(0);
  expect(again.ok && whole.ok && again.value.track).toEqual(whole.ok && whole.value.track);
});

test('what is no film is refused with the reader’s own words, and no worker is left', async () => {
  const found = await trackFilm(new File(['no film at all'], 'letter.mp4'));
  expect(found.ok).toBe(false);
  if (!found.ok) expect(found.error[0]?.message).toContain('letter.mp4');
});

const golden = 'tfjs_asl_hand.25fps.mp4';

test.runIf(hasRealFilm(golden))(
  'three times twelve frames of the finger spelling clip, after six to settle: landmarks within 1.5 pixels on the mean (tensorflow/tfjs-models, hand-pose-detection/test_data)',
  async () => {
    const answer = await fetch(realFilmUrl('tfjs_asl_hand.landmarks.json'));
    const expected = (await answer.json()) as readonly (readonly (readonly [number, number, number])[])[];
    const opened = await openFilm({ url: realFilmUrl(golden), name: golden });
    if (!opened.ok) throw new Error(opened.error[0]?.message);
    const film = opened.value;
    expect(film.reader.frames).toBe(expected.length);
    const pixels = new FramePixels(film.index);
    const models = await browserHandModels();
    const errors: number[] = [];
    for (const start of [40, 160, 280]) {
      const tracker = new HandTracker(models);
      for (let frame = start; frame < start + 18; frame += 1) {
        const read = await film.reader.frame(frame);
        if (!read.ok) throw new Error(read.error.message);
        const seen = await tracker.next(frame, pixels.read(read.value));
        read.value.close();
        expect([frame, seen.length]).toEqual([frame, 1]);
        if (frame < start + 6) continue;
        for (const [index, point] of (expected[frame] ?? []).entries()) {
          const found = seen[0]?.landmarks[index];
          errors.push(Math.hypot((found?.x ?? 0) - point[0], (found?.y ?? 0) - point[1]));
        }
        // The signer shows the right hand.
        expect(seen[0]?.right).toBeGreaterThan(0.5);
      }
    }
    film.dispose();
    expect(errors.length).toBe(36 * 21);
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(1.5);
  },
);
