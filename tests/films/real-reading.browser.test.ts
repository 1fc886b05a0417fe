import { indexFilm, openFilm } from '@evenhand/media';
import { describe, expect, test } from 'vitest';
import { hasRealFilm, realFilmUrl } from '../helpers/real-films.ts';
import { signatureOf, signaturesInOneGo } from './second-reading.ts';

/** Frames, first and last presentation time in seconds as ffprobe 5.1.9 gives them (packets sorted by `pts_time`). */
const films = [
  ['sam2_02_cups.mp4', 300, 0, 9.976633],
  ['sam2_03_blocks.mp4', 292, 0, 9.7097],
  ['sam2_04_coffee.mp4', 287, 0, 9.542867],
  ['intel_bottle-detection.mp4', 1189, 0, 39.821229],
  ['intel_asl_book.mkv', 109, 0.033, 3.633],
  ['intel_asl_book.remux.mp4', 109, 0, 3.6],
  ['dex_human_hand_video.mp4', 621, 0, 20.666667],
  ['tfjs_asl_hand.25fps.mp4', 325, 0, 12.96],
  ['mp-samples_hand_landmarker_test_video.mp4', 202, 0, 8.04],
  ['p5_fingers.mov', 219, 0, 7.242766],
  ['p5_fingers.webm', 219, 0, 7.243],
] as const;

describe.each(films)('%s', (name, frames, first, last) => {
  test.runIf(hasRealFilm(name))('has the frames and times that ffprobe finds', async () => {
    const result = await indexFilm({ url: realFilmUrl(name), name });
    if (!result.ok) throw new Error(result.error[0]?.message);
    const { clock } = result.value;
    expect(clock.frames).toBe(frames);
    expect(Math.abs(clock.timeOf(0) - first * 1e6)).toBeLessThanOrEqual(1);
    expect(Math.abs(clock.timeOf(frames - 1) - last * 1e6)).toBeLessThanOrEqual(1);
    for (let k = 0; k < frames; k += 1) expect(clock.timeOf(k + 1)).toBeGreaterThan(clock.timeOf(k));
  });

  test.runIf(hasRealFilm(name))('its frames are those of one decoding from the beginning', async () => {
    const film = await openFilm({ url: realFilmUrl(name), name });
    if (!film.ok) throw new Error(film.error[0]?.message);
    const { reader, dispose } = film.value;
    const oneGo = await signaturesInOneGo(await (await fetch(realFilmUrl(name))).blob());
    const wrong: string[] = [];
    const check = async (k: number, how: string) => {
      const result = await reader.frame(k);
      const found = result.ok ? signatureOf(result.value) : result.error.message;
      if (result.ok) result.value.close();
      if (found !== oneGo[k]) wrong.push(`${how} ${k}`);
    };
    const middle = Math.floor(frames / 2);
    for (let jump = 0; jump < 12; jump += 1) await check((jump * 7919 + 3) % frames, 'jump');
    for (let k = middle; k < Math.min(frames, middle + 70); k += 1) await check(k, 'forward');
    for (let k = frames - 1; k >= Math.max(0, frames - 70); k -= 1) await check(k, 'backward');
    await check(0, 'first');
    dispose();
    expect(oneGo).toHaveLength(frames);
    expect(wrong).toEqual([]);
  });
});

test.runIf(hasRealFilm('observed_events.csv'))('observed_events.csv is refused as plain text', async () => {
  const name = 'observed_events.csv';
  const result = await openFilm(new File([await (await fetch(realFilmUrl(name))).blob()], name));
  expect(result.ok ? [] : result.error.map(({ code }) => code)).toEqual(['film/not-a-film']);
});
