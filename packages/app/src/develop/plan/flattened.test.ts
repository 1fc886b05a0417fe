import { benchPlane } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import { flatScale, flattened, type Pixels, shifted } from './flattened.ts';

/** A picture that shows each point by a colour of its own: red is x, green is y. */
function picture(width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) data.set([x, y, 7, 255], (y * width + x) * 4);
  return { width, height, data };
}

function at({ width, data }: Pixels, x: number, y: number): readonly number[] {
  const from = (y * width + x) * 4;
  return [...data.slice(from, from + 4)];
}

describe('a picture of the bench from straight above', () => {
  it('four corners of a rectangle of 400 × 200 mm, seen aslant, come to lie at the corners of the bench', () => {
    const corners = [
      { x: 20, y: 180 },
      { x: 230, y: 170 },
      { x: 190, y: 60 },
      { x: 60, y: 50 },
    ] as const;
    const plane = benchPlane({ kind: 'rectangle', corners: [...corners], across: 400, away: 200 });
    if (!plane.ok) throw new Error(plane.error.message);
    const flat = flattened(picture(256, 200), plane.value, { width: 400, depth: 200 });
    expect([flat.width, flat.height]).toEqual([400 / flatScale, 200 / flatScale]);
    const places = [
      [0, flat.height - 1],
      [flat.width - 1, flat.height - 1],
      [flat.width - 1, 0],
      [0, 0],
    ] as const;
    corners.forEach((corner, index) => {
      const [x, y] = places[index] ?? [0, 0];
      const [red = 0, green = 0] = at(flat, x, y);
      expect(Math.abs(red - corner.x)).toBeLessThanOrEqual(2);
      expect(Math.abs(green - corner.y)).toBeLessThanOrEqual(2);
    });
  });

  it('what the picture does not show stays clear', () => {
    const plane = {
      toPicture: ({ x, y }: { readonly x: number; readonly y: number }) => ({
        x: x / 2 + 50,
        y: 100 - y / 2,
      }),
    };
    const flat = flattened(picture(100, 100), plane, { width: 400, depth: 100 });
    expect(at(flat, 0, 10)[3]).toBe(0);
    expect(at(flat, 100, 10)[3]).toBe(255);
  });

  it('a plane of a length alone is moved over the bench', () => {
    const plane = { toPicture: (point: { readonly x: number; readonly y: number }) => point };
    expect(shifted(plane, { x: 30, y: -10 }).toPicture({ x: 100, y: 50 })).toEqual({ x: 70, y: 60 });
  });
});
