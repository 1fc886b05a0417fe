import type { CodedPicture } from './demux.ts';
import { reasonOf } from './reason.ts';

/** A decoded picture; a WebCodecs `VideoFrame` is one. */
export interface Picture<Self> {
  /** Microseconds, as given to the decoder. */
  readonly timestamp: number;
  readonly clone: () => Self;
  readonly close: () => void;
}

export interface DecoderEvents<P> {
  /** Pictures come in the order of presentation; the receiver closes them. */
  readonly output: (picture: P) => void;
  /** The decoder is of no use any more. */
  readonly error: (reason: string) => void;
  /** There is room for another coded picture. */
  readonly room: () => void;
}

export interface Decoder {
  readonly decode: (coded: CodedPicture) => void;
  /** Coded pictures that wait. */
  readonly waiting: () => number;
  /** Settles when every picture is out. */
  readonly flush: () => Promise<void>;
  readonly close: () => void;
}

export type MakeDecoder<P> = (events: DecoderEvents<P>) => Decoder;

/** The browser's decoder behind the port. */
export function webDecoder(config: VideoDecoderConfig): MakeDecoder<VideoFrame> {
  return (events) => {
    const decoder = new VideoDecoder({
      output: events.output,
      error: (error) => events.error(reasonOf(error)),
    });
    decoder.ondequeue = events.room;
    decoder.configure(config);
    return {
      decode: ({ key, timestamp, data }) =>
        decoder.decode(new EncodedVideoChunk({ type: key ? 'key' : 'delta', timestamp, data })),
      waiting: () => decoder.decodeQueueSize,
      flush: () => decoder.flush(),
      close: () => {
        if (decoder.state !== 'closed') decoder.close();
      },
    };
  };
}

/**
 * The configuration to decode with, or undefined when the browser cannot. Software decoding comes first: frames are held
 * for stepping, and a hardware decoder has few pictures to give away.
 */
export async function usableConfig(
  config: VideoDecoderConfig | null,
): Promise<VideoDecoderConfig | undefined> {
  if (config === null || typeof VideoDecoder === 'undefined') return undefined;
  for (const hardwareAcceleration of ['prefer-software', 'no-preference'] as const) {
    const wish = { ...config, hardwareAcceleration };
    const answer = await VideoDecoder.isConfigSupported(wish).catch(() => undefined);
    if (answer?.supported === true) return wish;
  }
  return undefined;
}
