import {
  BufferTarget,
  EncodedPacket,
  EncodedVideoPacketSource,
  MkvOutputFormat,
  MovOutputFormat,
  Mp4OutputFormat,
  Output,
  type OutputFormat,
  type VideoCodec,
  WebMOutputFormat,
} from 'mediabunny';

export type Container = 'mp4' | 'mp4-index-first' | 'mp4-fragmented' | 'mov' | 'webm' | 'mkv';

/** The format of an output file. `mp4` and `mov` have their index at the end, as cameras write it. */
export function outputFormat(container: Container): OutputFormat {
  if (container === 'webm') return new WebMOutputFormat();
  if (container === 'mkv') return new MkvOutputFormat();
  if (container === 'mov') return new MovOutputFormat({ fastStart: false });
  const fastStart = { mp4: false, 'mp4-index-first': 'in-memory', 'mp4-fragmented': 'fragmented' } as const;
  return new Mp4OutputFormat({ fastStart: fastStart[container] });
}

/** A coded picture; times in seconds, as the muxer takes them. */
export interface MuxPacket {
  readonly data: Uint8Array;
  readonly key: boolean;
  readonly start: number;
  readonly duration: number;
}

export interface MuxTrack {
  readonly codec: VideoCodec;
  readonly config: VideoDecoderConfig;
  readonly rotation?: 0 | 90 | 180 | 270;
  readonly packets: readonly MuxPacket[];
}

/** Writes coded pictures, in the order of decoding, into a file; needs no encoder, so it runs in Node too. */
export async function mux(
  container: Container,
  tracks: readonly MuxTrack[],
): Promise<Uint8Array<ArrayBuffer>> {
  const output = new Output({ format: outputFormat(container), target: new BufferTarget() });
  const sources = tracks.map((track) => {
    const source = new EncodedVideoPacketSource(track.codec);
    output.addVideoTrack(source, { rotation: track.rotation ?? 0 });
    return { source, track };
  });
  await output.start();
  for (const { source, track } of sources) {
    for (const { data, key, start, duration } of track.packets) {
      const packet = new EncodedPacket(data, key ? 'key' : 'delta', start, duration);
      await source.add(packet, { decoderConfig: track.config });
    }
    source.close();
  }
  await output.finalize();
  return finished(output.target);
}

export function finished(target: BufferTarget): Uint8Array<ArrayBuffer> {
  if (target.buffer === null) throw new Error('the film was not finished');
  return new Uint8Array(target.buffer);
}
