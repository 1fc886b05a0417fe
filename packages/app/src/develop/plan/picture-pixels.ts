import type { FrameReader } from '@evenhand/media';
import type { Pixels } from './flattened.ts';

/** Larger pictures are made smaller: more can be neither seen nor traced. Pixels. Ours. */
const mostPixels = 2000;

/** A photo as it would be shown, upright. Fails with a sentence when the file is no picture. */
export async function photoPixels(file: File): Promise<Pixels> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch {
    throw new Error(`${file.name} cannot be read as a picture. Choose a JPEG, PNG or WebP file.`);
  }
  const scale = Math.min(1, mostPixels / Math.max(bitmap.width, bitmap.height));
  const pixels = drawn(bitmap.width * scale, bitmap.height * scale, (context, width, height) =>
    context.drawImage(bitmap, 0, 0, width, height),
  );
  bitmap.close();
  return pixels;
}

/** One frame of a film at its full size, so that points in it are points of the film. */
export async function filmPixels(reader: Pick<FrameReader, 'frame'>, frame: number): Promise<Pixels> {
  const read = await reader.frame(frame);
  if (!read.ok) throw new Error(read.error.message);
  const { value } = read;
  const pixels = drawn(value.width, value.height, (context, width, height) =>
    value.draw(context, 0, 0, width, height),
  );
  value.close();
  return pixels;
}

function drawn(
  wide: number,
  high: number,
  paint: (context: CanvasRenderingContext2D, width: number, height: number) => void,
): Pixels {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(wide));
  canvas.height = Math.max(1, Math.round(high));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('This browser cannot draw pictures.');
  paint(context, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/** As an address that an SVG image can show. */
export function imageUrl({ width, height, data }: Pixels): string {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.putImageData(new ImageData(new Uint8ClampedArray(data), width, height), 0, 0);
  return canvas.toDataURL('image/png');
}
