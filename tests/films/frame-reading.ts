import type { FrameHandle, OpenFilm } from '@evenhand/media';
import { openFilm } from '@evenhand/media';
import { readNumber } from './number-picture.ts';

/** The number in the upright picture of a frame. `part`: the share of width and height that the number fills. */
export function numberIn(handle: FrameHandle, part = 1): number | undefined {
  const size = 64;
  const canvas = new OffscreenCanvas(size, size);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('there is no canvas to draw on');
  handle.draw(context, 0, 0, size / part, size / part);
  return readNumber(context.getImageData(0, 0, size, size));
}

/** Opens a film that must open. @throws Error with the findings */
export async function opened(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<OpenFilm> {
  const result = await openFilm(new File([bytes], name));
  if (!result.ok) throw new Error(result.error.map((finding) => finding.message).join('; '));
  return result.value;
}

/** The number that frame k of an open film shows. @throws Error with the finding when it cannot be decoded */
export async function shownNumber({ reader }: OpenFilm, k: number): Promise<number | undefined> {
  const result = await reader.frame(k);
  if (!result.ok) throw new Error(result.error.message);
  try {
    return result.value.frame === k ? numberIn(result.value) : undefined;
  } finally {
    result.value.close();
  }
}
