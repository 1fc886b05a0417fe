import type { Blob } from './blobs.ts';

/** Where a band was clicked: it is known to be there. */
export interface BandClick {
  readonly frame: number;
  /** In pixels of the pictures that were searched. */
  readonly x: number;
  readonly y: number;
}

/** What was found of one band: the blob it is in each frame, or none. */
export interface BandPath {
  readonly blobs: readonly (Blob | undefined)[];
  /** Number of pixels of the band where it was clicked; 0 when it is not there. */
  readonly area: number;
  /** Frames in which something else of that colour and of no smaller size is in the picture. */
  readonly others: number;
}

/** How far a hand may come in a second of film, in widths of the picture; a reach across the bench takes a third. */
const widthsPerSecond = 3;

/**
 * Follows a band from where it was clicked, forwards and backwards: in each frame the patch that lies nearest to where
 * it was last seen, within what a hand can reach, and of a size that fits. A band that is hidden is missing until it
 * shows again within reach, which grows with time.
 * @param width of the pictures, in pixels
 */
export function bandPath(
  found: readonly (readonly Blob[])[],
  click: BandClick,
  width: number,
  timeOf: (frame: number) => number,
): BandPath {
  const blobs = new Array<Blob | undefined>(found.length).fill(undefined);
  const start = nearest(found[click.frame] ?? [], click, 0.06 * width, 0);
  if (start === undefined) return { blobs, area: 0, others: 0 };
  blobs[click.frame] = start;
  for (const step of [1, -1]) {
    let [last, lastFrame] = [start, click.frame];
    for (let frame = click.frame + step; frame >= 0 && frame < found.length; frame += step) {
      const seconds = Math.abs(timeOf(frame) - timeOf(lastFrame)) / 1e6;
      const reach = width * (0.02 + widthsPerSecond * seconds);
      const next = nearest(found[frame] ?? [], last, reach, start.area * 0.12);
      if (next === undefined) continue;
      blobs[frame] = next;
      [last, lastFrame] = [next, frame];
    }
  }
  const others = found.filter((list, frame) =>
    list.some((blob) => blob !== blobs[frame] && blob.area >= 0.6 * start.area),
  ).length;
  return { blobs, area: start.area, others };
}

/** The nearest within reach; one twice as large counts as half as far. */
function nearest(
  list: readonly Blob[],
  to: { readonly x: number; readonly y: number },
  reach: number,
  least: number,
): Blob | undefined {
  let best: Blob | undefined;
  let cost = Number.POSITIVE_INFINITY;
  for (const blob of list) {
    const apart = Math.hypot(blob.x - to.x, blob.y - to.y);
    if (apart > reach || blob.area < least) continue;
    const here = (apart + 0.01 * reach) / Math.sqrt(blob.area);
    if (here < cost) [best, cost] = [blob, here];
  }
  return best;
}
