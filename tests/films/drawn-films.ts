import { BufferTarget, CanvasSource, Output, Quality, type VideoCodec } from 'mediabunny';
import { type Container, finished, outputFormat } from './mux.ts';
import { paintNumber } from './number-picture.ts';

export interface DrawnFilmOptions {
  readonly container?: Container;
  readonly codec?: VideoCodec;
  readonly frames?: number;
  readonly width?: number;
  readonly height?: number;
  /** Seconds between key frames. */
  readonly keyFrameInterval?: number;
  readonly rotation?: 0 | 90 | 180 | 270;
  /** Start of frame k in thirtieths of a second. */
  readonly startOf?: (frame: number) => number;
  /** Drawn first, to give the encoder work; the number then fills a quarter of the width and height. */
  readonly backdrop?: (context: OffscreenCanvasRenderingContext2D, frame: number) => void;
}

/** A film coded by the browser; frame k shows the number k, upright after the turn that the file asks for. */
export async function makeDrawnFilm({
  container = 'mp4',
  codec = 'avc',
  frames = 90,
  width = 320,
  height = 240,
  keyFrameInterval = 1,
  rotation = 0,
  startOf = (frame) => frame,
  backdrop,
}: DrawnFilmOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { alpha: false });
  if (context === null) throw new Error('there is no canvas to draw on');
  const output = new Output({ format: outputFormat(container), target: new BufferTarget() });
  const source = new CanvasSource(canvas, {
    codec,
    quality: new Quality({ bitrate: width * height * 12 }),
    keyFrameInterval,
  });
  output.addVideoTrack(source, { rotation });
  await output.start();
  const [across, down] = rotation % 180 === 0 ? [width, height] : [height, width];
  const part = backdrop === undefined ? 1 : 1 / 4;
  for (let frame = 0; frame < frames; frame += 1) {
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.translate(width / 2, height / 2);
    context.rotate((-rotation * Math.PI) / 180);
    context.translate(-across / 2, -down / 2);
    backdrop?.(context, frame);
    paintNumber(context, across * part, down * part, frame);
    await source.add(startOf(frame) / 30, (startOf(frame + 1) - startOf(frame)) / 30);
  }
  await output.finalize();
  return finished(output.target);
}
