import type { Picture } from '../hands/picture.ts';
import { type BandColour, isOfBand } from './band-colour.ts';

/** Pixels of one colour that hang together. */
export interface Blob {
  /** Middle, in pixels of the picture; the pixel (0, 0) has its middle at (0.5, 0.5). */
  readonly x: number;
  readonly y: number;
  /** Number of pixels. */
  readonly area: number;
}

const most = 8;

/**
 * The largest patches of a colour in a picture, largest first, eight at most.
 * @param least smaller ones are not told
 */
export function blobsOf(picture: Picture, colour: BandColour, least: number): readonly Blob[] {
  const { width, height, data } = picture;
  const open = new Uint8Array(width * height);
  for (let pixel = 0, at = 0; pixel < open.length; pixel += 1, at += 4)
    if (isOfBand(colour, data[at] as number, data[at + 1] as number, data[at + 2] as number)) open[pixel] = 1;
  const blobs: Blob[] = [];
  for (let pixel = 0; pixel < open.length; pixel += 1) {
    if (open[pixel] === 0) continue;
    const blob = take(open, pixel, width);
    if (blob.area >= least) blobs.push(blob);
  }
  return blobs.sort((a, b) => b.area - a.area).slice(0, most);
}

/** Takes all pixels out that hang together with one; those two apart still do, as a fold or a knuckle may part a band. */
function take(open: Uint8Array, start: number, width: number): Blob {
  const waiting = [start];
  open[start] = 0;
  let [x, y, area] = [0, 0, 0];
  for (let pixel = waiting.pop(); pixel !== undefined; pixel = waiting.pop()) {
    const column = pixel % width;
    x += column;
    y += (pixel - column) / width;
    area += 1;
    for (let down = -2; down <= 2; down += 1)
      for (let across = -2; across <= 2; across += 1) {
        if (column + across < 0 || column + across >= width) continue;
        const next = pixel + down * width + across;
        if (open[next] !== 1) continue;
        open[next] = 0;
        waiting.push(next);
      }
  }
  return { x: x / area + 0.5, y: y / area + 0.5, area };
}
