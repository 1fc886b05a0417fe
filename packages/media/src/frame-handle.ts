import type { Micros } from '@evenhand/core/ground/base';
import type { FilmIndex, FrameHandle } from './film.ts';

/** A frame to draw, upright. Takes the picture over and closes it with the handle. */
export function frameHandle(
  frame: number,
  time: Micros,
  picture: VideoFrame,
  { rotation, flip, width, height }: Pick<FilmIndex, 'rotation' | 'flip' | 'width' | 'height'>,
): FrameHandle {
  let open = true;
  return {
    frame,
    time,
    width,
    height,
    draw: (context, x, y, w, h) => {
      if (!open) return;
      const [across, down] = rotation % 180 === 0 ? [w, h] : [h, w];
      context.save();
      context.translate(x + w / 2, y + h / 2);
      // Nearest to the picture acts first: it is turned, then mirrored.
      if (flip) context.scale(-1, 1);
      context.rotate((rotation * Math.PI) / 180);
      context.drawImage(picture, -across / 2, -down / 2, across, down);
      context.restore();
    },
    close: () => {
      if (open) picture.close();
      open = false;
    },
  };
}
