import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inPicture, type Picture, type Square, sampleSquare, wholePicture } from './picture.ts';

/** A picture whose colours grow evenly, so that any point between pixels has a known colour. */
function slope(width: number, height: number): Picture {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) data.set([2 * x, 2 * y, x + y, 255], 4 * (y * width + x));
  }
  return { width, height, data };
}

function sampled(picture: Picture, square: Square, size: number, border: 'edge' | 'black' = 'edge') {
  const into = new Float32Array(size * size * 3);
  sampleSquare(picture, square, size, border, into);
  return into;
}

describe('a square of a picture', () => {
  it('has, between the pixels, the colours that lie there, however it is turned', () => {
    const picture = slope(100, 80);
    const square = fc.record({
      x: fc.double({ min: 30, max: 70, noNaN: true }),
      y: fc.double({ min: 30, max: 50, noNaN: true }),
      side: fc.double({ min: 1, max: 38, noNaN: true }),
      angle: fc.double({ min: -4, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(square, (one) => {
        const size = 7;
        const colours = sampled(picture, one, size);
        for (const [row, column] of [
          [0, 0],
          [3, 3],
          [6, 1],
        ] as const) {
          const { x, y } = inPicture(one, (column + 0.5) / size, (row + 0.5) / size);
          const at = 3 * (row * size + column);
          // The pixel (0, 0) has its middle at (0.5, 0.5).
          expect((colours[at] ?? 0) * 255).toBeCloseTo(2 * (x - 0.5), 2);
          expect((colours[at + 1] ?? 0) * 255).toBeCloseTo(2 * (y - 0.5), 2);
          expect((colours[at + 2] ?? 0) * 255).toBeCloseTo(x + y - 1, 2);
        }
      }),
      { seed: 13 },
    );
  });

  it('as large as its pixels is the picture itself', () => {
    const picture = slope(4, 4);
    const colours = sampled(picture, { x: 2, y: 2, side: 4, angle: 0 }, 4);
    const expected = Array.from(picture.data).filter((_, at) => at % 4 !== 3);
    expect(Array.from(colours, (value) => Math.round(value * 255))).toEqual(expected);
  });

  it('turned by a quarter clockwise shows the left edge on top', () => {
    const picture = slope(4, 4);
    const colours = sampled(picture, { x: 2, y: 2, side: 4, angle: Math.PI / 2 }, 4);
    // The first row of the square goes down the right edge of the picture.
    const first = [0, 1, 2, 3].map((column) =>
      [0, 1].map((c) => Math.round((colours[3 * column + c] ?? 0) * 255)),
    );
    expect(first).toEqual([0, 1, 2, 3].map((y) => [6, 2 * y]));
  });

  it('beyond the picture is black, or its edge again', () => {
    const picture = slope(10, 10);
    const outside = { x: 25, y: 5, side: 10, angle: 0 };
    expect(Math.max(...sampled(picture, outside, 5, 'black'))).toBe(0);
    const again = sampled(picture, outside, 5, 'edge');
    expect(Math.round((again[0] ?? 0) * 255)).toBe(18);
  });

  it('that holds a wide picture whole has bars above and below', () => {
    expect(wholePicture({ width: 960, height: 540 })).toEqual({ x: 480, y: 270, side: 960, angle: 0 });
    expect(wholePicture({ width: 100, height: 50 }, 0.1).side).toBeCloseTo(120, 9);
  });
});
