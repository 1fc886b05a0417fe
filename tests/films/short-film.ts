import { EncodedPacketSink, Input, MP4, type Source } from 'mediabunny';
import { type MuxPacket, mux } from './mux.ts';

/** The first frames of an MP4 film, as a film of its own, without decoding; runs in the page and in Node. */
export async function firstFrames(source: Source, frames: number): Promise<Uint8Array<ArrayBuffer>> {
  const input = new Input({ source, formats: [MP4] });
  const track = await input.getPrimaryVideoTrack();
  const config = await track?.getDecoderConfig();
  if (!track || !config || track.codec === null) throw new Error('the film cannot be read');
  const packets: MuxPacket[] = [];
  for await (const { data, type, timestamp, duration } of new EncodedPacketSink(track).packets()) {
    if (packets.length >= frames) break;
    packets.push({ data, key: type === 'key', start: timestamp, duration });
  }
  const { codec } = track;
  input.dispose();
  return mux('mp4', [{ codec, config, packets }]);
}
