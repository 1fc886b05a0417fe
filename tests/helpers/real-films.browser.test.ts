import { expect, test } from 'vitest';
import { hasRealFilm, realFilmUrl } from './real-films.ts';

const name = 'sam2_03_blocks.mp4';

test.runIf(hasRealFilm(name))('a page reads a piece of a real film by its range', async () => {
  const answer = await fetch(realFilmUrl(name), { headers: { Range: 'bytes=4-7' } });
  expect(answer.status).toBe(206);
  // ISO/IEC 14496-12, 4.3: a file begins with its file type box.
  expect(await answer.text()).toBe('ftyp');
});

test('a film that is not at hand is refused by name', () => {
  expect(hasRealFilm('never.mp4')).toBe(false);
  expect(() => realFilmUrl('never.mp4')).toThrow('never.mp4');
});
