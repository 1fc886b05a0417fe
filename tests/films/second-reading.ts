import type { FrameHandle } from '@evenhand/media';
import { ALL_FORMATS, BlobSource, EncodedPacketSink, Input } from 'mediabunny';

/** Small enough to hash thousands of frames, large enough that neighbouring frames differ. */
const size = 48;

function signature(draw: (context: OffscreenCanvasRenderingContext2D) => void): string {
  const canvas = new OffscreenCanvas(size, size);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('there is no canvas to draw on');
  draw(context);
  let hash = 2166136261;
  for (const byte of context.getImageData(0, 0, size, size).data) hash = Math.imul(hash ^ byte, 16777619);
  return (hash >>> 0).toString(16);
}

export function signatureOf(handle: FrameHandle): string {
  return signature((context) => handle.draw(context, 0, 0, size, size));
}

/**
 * The slow second way: one decoder from the first picture to the last, without our index, cache or jumps. Signatures of
 * the frames in the order in which they come out, from the first at time 0 or later. For films that are not turned.
 */
export async function signaturesInOneGo(film: Blob): Promise<string[]> {
  const input = new Input({ source: new BlobSource(film), formats: ALL_FORMATS });
  const track = await input.getPrimaryVideoTrack();
  const config = await track?.getDecoderConfig();
  if (!track || !config) throw new Error('there is no picture');
  const signatures: string[] = [];
  const decoder = new VideoDecoder({
    output: (frame) => {
      if (frame.timestamp >= 0) {
        signatures.push(signature((context) => context.drawImage(frame, 0, 0, size, size)));
      }
      frame.close();
    },
    error: (error) => console.error(error),
  });
  decoder.configure({ ...config, hardwareAcceleration: 'prefer-software' });
  for await (const packet of new EncodedPacketSink(track).packets()) {
    decoder.decode(packet.toEncodedVideoChunk());
    while (decoder.decodeQueueSize > 8)
      await new Promise((resolve) => decoder.addEventListener('dequeue', resolve, { once: true }));
  }
  await decoder.flush();
  decoder.close();
  input.dispose();
  return signatures;
}
