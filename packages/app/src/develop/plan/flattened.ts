import type { WorkBench } from '@evenhand/core/ground/study';
import type { BenchPlane } from '@evenhand/core/record';

/** A picture as rows of red, green, blue and opacity, as a canvas gives them. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** Millimetres of the bench in a pixel of the flattened picture. Ours. */
export const flatScale = 2;

/**
 * The picture of a bench as it would be seen from straight above, over the whole of the bench; what the picture does not
 * show stays clear. Each pixel is taken from the nearest one of the picture.
 */
export function flattened(
  picture: Pixels,
  plane: Pick<BenchPlane, 'toPicture'>,
  bench: Pick<WorkBench, 'width' | 'depth'>,
): Pixels {
  const width = Math.max(1, Math.round(bench.width / flatScale));
  const height = Math.max(1, Math.round(bench.depth / flatScale));
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const from = plane.toPicture({
        x: (column + 0.5) * flatScale - bench.width / 2,
        y: bench.depth - (row + 0.5) * flatScale,
      });
      const [x, y] = [Math.floor(from.x), Math.floor(from.y)];
      if (!(x >= 0 && y >= 0 && x < picture.width && y < picture.height)) continue;
      const [to, at] = [(row * width + column) * 4, (y * picture.width + x) * 4];
      for (let part = 0; part < 4; part += 1) data[to + part] = picture.data[at + part] ?? 0;
    }
  }
  return { width, height, data };
}

/** A plane that is moved over the bench, for a picture of which only a length is known. */
export function shifted(
  plane: Pick<BenchPlane, 'toPicture'>,
  by: { readonly x: number; readonly y: number },
): Pick<BenchPlane, 'toPicture'> {
  return { toPicture: ({ x, y }) => plane.toPicture({ x: x - by.x, y: y - by.y }) };
}
