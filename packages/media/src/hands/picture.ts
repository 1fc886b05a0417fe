/** One picture of a film as plain numbers. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, and a fourth that is not read; row by row, 0 to 255. */
  readonly data: Uint8ClampedArray | Uint8Array;
}

/** A turned square of the picture, in pixels; the pixel (0, 0) has its middle at (0.5, 0.5). */
export interface Square {
  readonly x: number;
  readonly y: number;
  readonly side: number;
  /** By how much the square is turned clockwise as seen on the screen, in radians. */
  readonly angle: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What lies outside the picture: its nearest pixel again, or black. */
export type Border = 'edge' | 'black';

/** The smallest upright square that holds the whole picture, larger by a share of its side on every side. */
export function wholePicture({ width, height }: Pick<Picture, 'width' | 'height'>, margin = 0): Square {
  return { x: width / 2, y: height / 2, side: Math.max(width, height) * (1 + 2 * margin), angle: 0 };
}

/** Where a point of the square, given in shares of its side from its upper left corner, lies in the picture. */
export function inPicture({ x, y, side, angle }: Square, across: number, down: number): Point {
  const [u, v] = [(across - 0.5) * side, (down - 0.5) * side];
  return {
    x: x + u * Math.cos(angle) - v * Math.sin(angle),
    y: y + u * Math.sin(angle) + v * Math.cos(angle),
  };
}

/**
 * The square scaled to `size` × `size`, bilinear, as red, green, blue between 0 and 1, the way the models take it.
 * @param into `size` × `size` × 3 numbers
 */
export function sampleSquare(
  picture: Picture,
  square: Square,
  size: number,
  border: Border,
  into: Float32Array,
): void {
  const start = inPicture(square, 0.5 / size, 0.5 / size);
  const step = square.side / size;
  const [alongX, alongY] = [step * Math.cos(square.angle), step * Math.sin(square.angle)];
  let at = 0;
  for (let row = 0; row < size; row += 1) {
    // Half a pixel back: from here on whole numbers are the middles of pixels.
    let x = start.x - row * alongY - 0.5;
    let y = start.y + row * alongX - 0.5;
    for (let column = 0; column < size; column += 1) {
      samplePoint(picture, x, y, border, into, at);
      x += alongX;
      y += alongY;
      at += 3;
    }
  }
}

const unit = 1 / 255;

function samplePoint(
  { width, height, data }: Picture,
  x: number,
  y: number,
  border: Border,
  into: Float32Array,
  at: number,
): void {
  let left = Math.floor(x);
  let top = Math.floor(y);
  const [right, below] = [x - left, y - top];
  let [dx, dy] = [4, 4 * width];
  if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) {
    if (border === 'black' && (left < -1 || top < -1 || left >= width || top >= height)) {
      into[at] = into[at + 1] = into[at + 2] = 0;
      return;
    }
    if (left < 0 || left >= width - 1) dx = 0;
    if (top < 0 || top >= height - 1) dy = 0;
    left = Math.min(Math.max(left, 0), width - 1);
    top = Math.min(Math.max(top, 0), height - 1);
  }
  const a = 4 * (top * width + left);
  const [b, c, d] = [a + dx, a + dy, a + dx + dy];
  const wa = (1 - right) * (1 - below) * unit;
  const wb = right * (1 - below) * unit;
  const wc = (1 - right) * below * unit;
  const wd = right * below * unit;
  for (let colour = 0; colour < 3; colour += 1) {
    into[at + colour] =
      wa * (data[a + colour] as number) +
      wb * (data[b + colour] as number) +
      wc * (data[c + colour] as number) +
      wd * (data[d + colour] as number);
  }
}
