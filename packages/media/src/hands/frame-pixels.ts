import type { FrameHandle } from '../film.ts';
import type { Picture } from './picture.ts';

/** Larger pictures are made smaller before the search: the models look at 192 and 224 pixels. */
const usualSide = 1280;

/** Turns frames into plain numbers, upright and as shown. */
export class FramePixels {
  /** Pixels of the film to a pixel of the picture. */
  readonly scale: number;
  readonly #context: OffscreenCanvasRenderingContext2D;

  constructor(
    { width, height }: { readonly width: number; readonly height: number },
    longestSide = usualSide,
  ) {
    this.scale = Math.max(1, Math.max(width, height) / longestSide);
    const canvas = new OffscreenCanvas(Math.round(width / this.scale), Math.round(height / this.scale));
    const context = canvas.getContext('2d', { willReadFrequently: true, alpha: false });
    if (context === null) throw new Error('this browser cannot draw in a worker');
    this.#context = context;
  }

  read(handle: FrameHandle): Picture {
    const { width, height } = this.#context.canvas;
    handle.draw(this.#context, 0, 0, width, height);
    return { width, height, data: this.#context.getImageData(0, 0, width, height).data };
  }
}
