import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { encodeFrameTimes, type Film } from '@evenhand/core/ground/study';
import { ALL_FORMATS, BufferSource, EncodedPacketSink, Input } from 'mediabunny';

/**
 * Reads a film of the demonstration as the study has it: hash of the bytes, exact time of every frame in the film's own ticks.
 * @throws when the file is missing or holds no picture
 */
export async function filmEntry(id: string, path: string): Promise<Film> {
  const bytes = await readFile(path);
  const input = new Input({ source: new BufferSource(new Uint8Array(bytes)), formats: ALL_FORMATS });
  const track = await input.getPrimaryVideoTrack();
  if (track === null) throw new Error(`${path} holds no picture; draw it again with npm run demo-film`);
  const ticksPerSecond = await track.getTimeResolution();
  const tickOf = (seconds: number) => Math.round(seconds * ticksPerSecond);
  const shown: { readonly tick: number; readonly end: number }[] = [];
  for await (const packet of new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  })) {
    shown.push({ tick: tickOf(packet.timestamp), end: tickOf(packet.timestamp + packet.duration) });
  }
  shown.sort((a, b) => a.tick - b.tick);
  const ticks = shown.map(({ tick }) => tick);
  const [width, height] = [await track.getDisplayWidth(), await track.getDisplayHeight()];
  input.dispose();
  return {
    id,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    name: basename(path),
    bytes: bytes.length,
    container: 'MP4',
    codec: 'H.264',
    width,
    height,
    rotation: 0,
    frameTimes: encodeFrameTimes(ticks, shown.at(-1)?.end ?? 0, ticksPerSecond),
    clock: { kind: 'identity' },
    operatorCode: 'drawn',
    note: 'Drawn from a script of motions; invented demonstration.',
  };
}
