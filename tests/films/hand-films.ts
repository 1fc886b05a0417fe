import { handDescription, handFilm, handSize } from './h264-by-hand.ts';
import { type Container, mux } from './mux.ts';

export interface HandFilmOptions {
  readonly container?: Container;
  readonly groups?: number;
  readonly steps?: number;
  /** Groups are open: two pictures after each later key frame are shown before it. */
  readonly open?: boolean;
  /** The stream says beforehand that pictures are put into another order. */
  readonly announced?: boolean;
  readonly rotation?: 0 | 90 | 180 | 270;
  /** How many frames lie before the start of the shown part. */
  readonly before?: number;
  /** How many tracks of pictures. */
  readonly tracks?: number;
  /** Start of frame k in thirtieths of a second. */
  readonly startOf?: (frame: number) => number;
}

/** A film with B-frames made by hand; frame k shows k (plus what lies before the start). 30 frames a second. */
export function makeHandFilm({
  container = 'mp4',
  groups = 3,
  steps = 3,
  open = false,
  announced = true,
  rotation = 0,
  before = 0,
  tracks = 1,
  startOf = (frame) => frame,
}: HandFilmOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const packets = handFilm(groups, steps, open).map(({ data, key, frame }) => ({
    data,
    key,
    start: startOf(frame - before) / 30,
    duration: (startOf(frame - before + 1) - startOf(frame - before)) / 30,
  }));
  const config = {
    codec: 'avc1.4d000b',
    codedWidth: handSize,
    codedHeight: handSize,
    description: handDescription(announced),
  };
  return mux(
    container,
    Array.from({ length: tracks }, () => ({ codec: 'avc' as const, config, rotation, packets })),
  );
}
