import {
  type EncodedPacket,
  EncodedPacketSink,
  Input,
  type InputVideoTrack,
  Logging,
  LogLevel,
  MATROSKA,
  MP4,
  QTFF,
  WEBM,
} from 'mediabunny';
import { codecName } from './codec-names.ts';
import { type PacketTimes, type Run, tickMicros } from './film-index.ts';
import { demuxerSource, type FilmSource } from './source.ts';

/** A container opened for reading; nothing of the picture is decoded here. */
export interface Demuxed {
  readonly container: 'MP4' | 'MOV' | 'WebM' | 'MKV';
  readonly pictures: readonly InputVideoTrack[];
  /** Codecs of the other tracks, in plain words. */
  readonly others: readonly string[];
  readonly dispose: () => void;
}

// What the demuxer would print, the analyst is told by findings.
Logging.level = LogLevel.Silent;

/** @throws what the demuxer throws on a file it cannot make sense of */
export async function demux(source: FilmSource): Promise<Demuxed> {
  const input = new Input({ source: await demuxerSource(source), formats: [MP4, QTFF, WEBM, MATROSKA] });
  try {
    const format = await input.getFormat();
    const tracks = await input.getTracks();
    const pictures = tracks.filter((track): track is InputVideoTrack => track.isVideoTrack());
    const others = await Promise.all(
      tracks
        .filter((track) => !track.isVideoTrack())
        .map(async (track) => `${track.type} (${await codecOf(track)})`),
    );
    return {
      container: format === QTFF ? 'MOV' : format === WEBM ? 'WebM' : format === MATROSKA ? 'MKV' : 'MP4',
      pictures,
      others,
      dispose: () => input.dispose(),
    };
  } catch (error) {
    input.dispose();
    throw error;
  }
}

/** The codec in the demuxer's or else in the container's own word. */
export async function codecOf(track: {
  readonly getCodec: () => Promise<string | null>;
  readonly getInternalCodecId: () => Promise<string | number | Uint8Array | null>;
}): Promise<string> {
  const known = await track.getCodec();
  if (known !== null) return known;
  const code = await track.getInternalCodecId();
  return typeof code === 'string' && code.trim() !== '' ? code.trim() : 'unknown';
}

/** The container's own word for the codec, such as `hvc1`; the demuxer's where it has none. */
export async function codecCode(track: InputVideoTrack): Promise<string> {
  const code = await track.getInternalCodecId();
  return typeof code === 'string' && code.trim() !== '' ? code.trim() : await codecOf(track);
}

/** Ticks per second of a track: its own time scale if that is whole, microseconds otherwise. */
export async function timeScale(track: InputVideoTrack): Promise<number> {
  const resolution = await track.getTimeResolution();
  return Number.isInteger(resolution) && resolution > 0 ? resolution : 1_000_000;
}

/** Every coded picture of the track in the order of decoding. Reads the pictures themselves for VP8 only. */
export async function packetTimes(track: InputVideoTrack, ticksPerSecond: number): Promise<PacketTimes[]> {
  const hidden = (await track.getCodec()) === 'vp8' ? isHiddenVp8 : () => false;
  const sink = new EncodedPacketSink(track);
  const times: PacketTimes[] = [];
  const metadataOnly = (await track.getCodec()) !== 'vp8';
  for await (const packet of sink.packets(undefined, undefined, { metadataOnly })) {
    times.push({
      tick: Math.round(packet.timestamp * ticksPerSecond),
      duration: packet.duration * ticksPerSecond,
      key: packet.type === 'key',
      ...(hidden(packet) ? { hidden: true } : {}),
    });
  }
  return times;
}

/** A VP8 picture that only serves others has the bit `show_frame` unset (RFC 6386, 9.1); it is never output. */
function isHiddenVp8(packet: EncodedPacket): boolean {
  const first = packet.data[0];
  return first !== undefined && (first & 0x10) === 0;
}

/** A coded picture with its data, as the decoder takes it. */
export interface CodedPicture {
  readonly key: boolean;
  /** Microseconds. */
  readonly timestamp: number;
  readonly data: Uint8Array;
}

/** Reads coded pictures from a run's key frame on. */
export interface Feed {
  readonly from: (run: Run) => AsyncGenerator<CodedPicture, void, unknown>;
}

export function trackFeed(track: InputVideoTrack, ticksPerSecond: number): Feed {
  const sink = new EncodedPacketSink(track);
  return {
    async *from(run) {
      // A quarter of a tick later: the time comes back from a floating-point second and must not fall short of the key.
      const key = await sink.getKeyPacket((run.tick + 0.25) / ticksPerSecond);
      if (key === null || Math.round(key.timestamp * ticksPerSecond) !== run.tick) {
        throw new Error(`the key frame at tick ${run.tick} is not there any more`);
      }
      for await (const packet of sink.packets(key)) {
        const tick = Math.round(packet.timestamp * ticksPerSecond);
        yield {
          key: packet.type === 'key',
          timestamp: tickMicros(tick, ticksPerSecond),
          data: packet.data,
        };
      }
    },
  };
}

export async function describeTrack(track: InputVideoTrack) {
  return {
    codec: codecName(await codecOf(track)),
    codecString: (await track.getCodecParameterString()) ?? '',
    rotation: await track.getRotation(),
    flip: await track.getFlip(),
    codedWidth: await track.getCodedWidth(),
    codedHeight: await track.getCodedHeight(),
    width: Math.round(await track.getDisplayWidth()),
    height: Math.round(await track.getDisplayHeight()),
  };
}
