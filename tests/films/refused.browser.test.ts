import { openFilm } from '@evenhand/media';
import { expect, test } from 'vitest';
import { hevc, mpeg4Part2, textNamedMp4, truncatedAfterIndex } from './faulty-films.ts';

test.each([
  [
    'hevc.mp4',
    hevc,
    'film/codec',
    /HEVC \(H\.265\) \(hvc1\), which this browser cannot decode\. Convert it to H\.264/,
  ],
  ['mpeg-4-part-2.mov', mpeg4Part2, 'film/codec', /MPEG-4 part 2 \(mp4v\)/],
  ['text-named.mp4', textNamedMp4, 'film/not-a-film', /plain text/],
  ['truncated.mp4', truncatedAfterIndex, 'film/truncated', /ends at byte/],
] as const)('%s is refused in the page', async (name, make, code, message) => {
  const result = await openFilm(new File([await make()], name));
  if (result.ok) throw new Error('it was opened');
  expect(result.error.map((finding) => finding.code)).toEqual([code]);
  expect(result.error[0]?.message).toMatch(message);
});

test('an address without a film says so', async () => {
  const answer = await openFilm({ url: '/there-is-no-film-here.mp4', name: 'gone.mp4' });
  expect(answer.ok).toBe(false);
});
