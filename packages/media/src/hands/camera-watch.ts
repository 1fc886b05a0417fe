import type { Picture } from './picture.ts';

/** Width of the small grey pictures that are compared, in pixels. */
const across = 128;
/** Largest shift that is recognised, in pixels of the small picture. */
const reach = 5;
/** The picture is compared once in so many frames. */
const every = 10;
/** A pixel counts with no more grey levels than these, so that a hand does not drown the background. */
const most = 25;
/** A shifted background must fit so much better than a still one; hands that move across it never do. */
const clearly = 0.7;

export interface CameraMoves {
  /** How often the picture was compared with an earlier one. */
  readonly looks: number;
  /** How often the background lay elsewhere. */
  readonly moves: number;
}

/** Notices that the camera moves: then the whole picture shifts, not only the hands in it. */
export class CameraWatch {
  #frames = 0;
  #reference: Grey | undefined;
  #looks = 0;
  #moves = 0;

  get found(): CameraMoves {
    return { looks: this.#looks, moves: this.#moves };
  }

  next(picture: Picture): void {
    this.#frames += 1;
    if (this.#frames % every !== 1) return;
    const now = greyOf(picture);
    if (this.#reference !== undefined) {
      this.#looks += 1;
      if (isShifted(this.#reference, now)) {
        this.#moves += 1;
        this.#reference = now;
      }
    } else this.#reference = now;
    // A slow drift is seen against an old picture; but light and things on the bench change too.
    if (this.#looks % 6 === 5) this.#reference = now;
  }
}

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/** Means of blocks, so that noise and fine texture do not matter. */
function greyOf({ width, height, data }: Picture): Grey {
  const block = Math.max(1, Math.round(width / across));
  const small = { width: Math.floor(width / block), height: Math.floor(height / block) };
  const values = new Float32Array(small.width * small.height);
  for (let y = 0; y < small.height; y += 1) {
    for (let x = 0; x < small.width; x += 1) values[y * small.width + x] = mean(data, width, x, y, block);
  }
  return { ...small, values };
}

function mean(data: Picture['data'], width: number, x: number, y: number, block: number): number {
  let sum = 0;
  for (let row = 0; row < block; row += 1) {
    let at = 4 * ((y * block + row) * width + x * block);
    for (let column = 0; column < block; column += 1, at += 4)
      sum += (data[at] as number) + (data[at + 1] as number) + (data[at + 2] as number);
  }
  return sum / (3 * block * block);
}

function isShifted(before: Grey, now: Grey): boolean {
  const still = difference(before, now, 0, 0);
  let best = still;
  for (let down = -reach; down <= reach; down += 1) {
    for (let right = -reach; right <= reach; right += 1)
      best = Math.min(best, difference(before, now, right, down));
  }
  // Below two grey levels on the mean there is nothing but noise.
  return still > 2 && best < clearly * still;
}

/** Mean difference of the inner part when one picture is shifted. */
function difference(before: Grey, now: Grey, right: number, down: number): number {
  const { width, height } = before;
  let sum = 0;
  for (let y = reach; y < height - reach; y += 1) {
    const row = y * width;
    const other = (y + down) * width + right;
    for (let x = reach; x < width - reach; x += 1)
      sum += Math.min(most, Math.abs((before.values[row + x] as number) - (now.values[other + x] as number)));
  }
  return sum / ((width - 2 * reach) * (height - 2 * reach));
}
