import { describe, expect, it } from 'vitest';
import { makeHandFilm } from '../../../tests/films/hand-films.ts';
import { indexFilm } from './open-film.ts';

async function indexed(bytes: Uint8Array<ArrayBuffer>, name = 'film.mp4') {
  const result = await indexFilm(new File([bytes], name));
  if (!result.ok) throw new Error(result.error.map((finding) => finding.message).join('; '));
  return result.value;
}

describe('index, read in Node', () => {
  it('sorts B-frames by their own times', async () => {
    const film = await indexed(await makeHandFilm());
    console.log(film.index, film.notes);
    expect(film.clock.frames).toBe(30);
  });
});
