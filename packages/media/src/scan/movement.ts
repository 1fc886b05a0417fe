import type { Picture } from '../hands/picture.ts';

/** A rectangle that the analyst draws, in pixels of the picture. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What moved in a hand’s regions from one picture to the next. */
export interface Movement {
  /** Sum of the changes of grey above the noise, in a thousandth of the regions changing from black to white. */
  readonly energy: number;
  /** Middle of what changed, in pixels; nothing when nothing did. */
  readonly middle: { readonly x: number; readonly y: number } | undefined;
}

/** Changes of grey up to this are the noise of a camera; common practice, no source. */
const noise = 14;
/** Fewer changed pixels in a region than one in so many are dust and flicker. */
const fewest = 1500;

/** Brightness of each pixel, 0 to 255, weighted as in Recommendation ITU-R BT.601. */
export function greyOf({ width, height, data }: Picture): Uint8Array {
  const grey = new Uint8Array(width * height);
  for (let pixel = 0, at = 0; pixel < grey.length; pixel += 1, at += 4)
    grey[pixel] =
      (299 * (data[at] as number) + 587 * (data[at + 1] as number) + 114 * (data[at + 2] as number)) / 1000;
  return grey;
}

/** Compares two pictures in the regions of one hand; a pixel in two of them counts once. */
export function movementIn(
  before: Uint8Array,
  after: Uint8Array,
  size: { readonly width: number; readonly height: number },
  regions: readonly Region[],
): Movement {
  const { width, height } = size;
  let [pixels, changed, sum, x, y] = [0, 0, 0, 0, 0];
  regions.forEach((region, index) => {
    const [left, right] = [
      Math.max(0, Math.round(region.x)),
      Math.min(width, Math.round(region.x + region.width)),
    ];
    const [top, bottom] = [
      Math.max(0, Math.round(region.y)),
      Math.min(height, Math.round(region.y + region.height)),
    ];
    for (let row = top; row < bottom; row += 1)
      for (let column = left; column < right; column += 1) {
        if (index > 0 && regions.slice(0, index).some((other) => holds(other, column, row))) continue;
        pixels += 1;
        const pixel = row * width + column;
        const change = Math.abs((after[pixel] as number) - (before[pixel] as number)) - noise;
        if (change <= 0) continue;
        changed += 1;
        sum += change;
        x += change * (column + 0.5);
        y += change * (row + 0.5);
      }
  });
  const moves = changed > 0 && changed >= pixels / fewest;
  return {
    energy: moves ? (1000 * sum) / (255 * pixels) : 0,
    middle: moves ? { x: x / sum, y: y / sum } : undefined,
  };
}

function holds({ x, y, width, height }: Region, column: number, row: number): boolean {
  return (
    column >= Math.round(x) &&
    column < Math.round(x + width) &&
    row >= Math.round(y) &&
    row < Math.round(y + height)
  );
}
