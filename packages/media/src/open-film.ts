import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { FrameClock } from '@evenhand/core/ground/study';
import { usableConfig, webDecoder } from './decoder.ts';
import { trackFeed } from './demux.ts';
import type { FilmIndex, IndexedFilm, OpenFilm } from './film.ts';
import { frameHandle } from './frame-handle.ts';
import { CachedFrameReader } from './frame-reader.ts';
import { type ReadFilm, readFilm } from './read-index.ts';
import type { FilmSource } from './source.ts';

export interface OpenOptions {
  /** Upper bound of the memory for decoded frames, in bytes (default 400 million). */
  readonly cacheBytes?: number;
}

/** Opens a film for showing. Everything that is wrong with the file comes back as findings. */
export async function openFilm(
  source: FilmSource,
  { cacheBytes = 400_000_000 }: OpenOptions = {},
): Promise<Result<OpenFilm, readonly Finding[]>> {
  let config: VideoDecoderConfig | undefined;
  const read = await readFilm(source, async (track) => {
    config = await usableConfig(await track.getDecoderConfig());
    return config !== undefined;
  });
  if (!read.ok) return fail(read.error);
  if (config === undefined) throw new TypeError('a film was read without asking whether it can be decoded');
  const reader = makeReader(read.value, config, cacheBytes);
  const dispose = () => {
    reader.dispose();
    read.value.dispose();
  };
  return ok({ ...read.value.indexed, reader, dispose });
}

/** Reads the index alone: every frame's time, without decoding. Runs in the page and in Node. */
export async function indexFilm(source: FilmSource): Promise<Result<IndexedFilm, readonly Finding[]>> {
  const read = await readFilm(source, async () => true);
  if (!read.ok) return fail(read.error);
  read.value.dispose();
  return ok(read.value.indexed);
}

function makeReader(
  { indexed, table, track }: ReadFilm,
  config: VideoDecoderConfig,
  cacheBytes: number,
): CachedFrameReader<VideoFrame> {
  const { index, clock } = indexed;
  return new CachedFrameReader<VideoFrame>({
    frames: clock.frames,
    table,
    feed: trackFeed(track, index.ticksPerSecond),
    makeDecoder: webDecoder(config),
    frameOf: (timestamp) => frameOf(clock, timestamp),
    handle: (frame, picture) => frameHandle(frame, clock.timeOf(frame), picture, index),
    capacity: frameCapacity(index, cacheBytes),
  });
}

/** The frame whose time this is exactly; a picture at any other time is none of the film's frames. */
function frameOf(clock: FrameClock, timestamp: number): number | undefined {
  const frame = clock.frameAt(timestamp);
  return clock.timeOf(frame) === timestamp ? frame : undefined;
}

/** Frames that fit: 1.5 bytes for a pixel (4:2:0, 8 bits); enough for stepping even when they are very large. */
function frameCapacity({ codedWidth, codedHeight }: FilmIndex, cacheBytes: number): number {
  return Math.min(600, Math.max(24, Math.floor(cacheBytes / (codedWidth * codedHeight * 1.5))));
}
