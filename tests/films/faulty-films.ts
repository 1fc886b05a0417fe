import {
  AudioSample,
  AudioSampleSource,
  BufferTarget,
  EncodedPacket,
  EncodedVideoPacketSource,
  MovOutputFormat,
  Mp4OutputFormat,
  Output,
} from 'mediabunny';
import { makeHandFilm } from './hand-films.ts';
import { finished } from './mux.ts';

/** Files that are no film, or none that can be shown; each is named after its fault. They are made without an encoder. */

const letters = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

export const emptyFile = (): Uint8Array<ArrayBuffer> => new Uint8Array(0);

export const textNamedMp4 = (): Uint8Array<ArrayBuffer> =>
  letters('Dear analyst,\nthis is a letter – not a film.\n');

export const unknownBytes = (): Uint8Array<ArrayBuffer> =>
  Uint8Array.from({ length: 5000 }, (_, at) => (at * 197 + 131) % 251);

/** A GIF of one pixel, written by the GIF89a specification (1990). */
export const gifPicture = (): Uint8Array<ArrayBuffer> =>
  Uint8Array.from([
    ...letters('GIF89a'),
    ...[
      1, 0, 1, 0, 0x80, 0, 0, 0, 0, 0, 255, 255, 255, 0x2c, 0, 0, 0, 0, 1, 0, 1, 0, 0, 2, 2, 0x44, 1, 0, 0x3b,
    ],
  ]);

/** Cut in the middle of the pictures; the index would have stood at the end. */
export async function truncatedWithoutIndex(): Promise<Uint8Array<ArrayBuffer>> {
  const film = await makeHandFilm();
  return film.slice(0, Math.floor(film.length * 0.6));
}

/** Cut in the middle of the pictures, behind an index that is whole. */
export async function truncatedAfterIndex(): Promise<Uint8Array<ArrayBuffer>> {
  const film = await makeHandFilm({ container: 'mp4-index-first' });
  return film.slice(0, Math.floor(film.length * 0.6));
}

/** A recording whose index was never written: the film ends exactly with its pictures. */
export async function withoutIndex(): Promise<Uint8Array<ArrayBuffer>> {
  const film = await makeHandFilm();
  return film.slice(0, find(film, 'moov') - 4);
}

export async function truncatedMkv(): Promise<Uint8Array<ArrayBuffer>> {
  const film = await makeHandFilm({ container: 'mkv' });
  return film.slice(0, Math.floor(film.length * 0.6));
}

/** The sample entry names another codec: MPEG-4 part 2 (ISO/IEC 14496-14). */
export async function mpeg4Part2(): Promise<Uint8Array<ArrayBuffer>> {
  const film = await makeHandFilm({ container: 'mov' });
  film.set(letters('mp4v'), find(film, 'avc1'));
  return film;
}

/** A track of HEVC by its sample entry (ISO/IEC 14496-15, 8.3.3); its pictures are noise. */
export async function hevc(): Promise<Uint8Array<ArrayBuffer>> {
  const description = Uint8Array.from([
    ...[1, 1, 0x60, 0, 0, 0, 0xb0, 0, 0, 0, 0, 0, 93],
    ...[0xf0, 0, 0xfc, 0xfd, 0xf8, 0xf8, 0, 0, 0x0f, 0],
  ]);
  const output = new Output({
    format: new Mp4OutputFormat({ fastStart: false }),
    target: new BufferTarget(),
  });
  const source = new EncodedVideoPacketSource('hevc');
  output.addVideoTrack(source);
  await output.start();
  const decoderConfig = { codec: 'hvc1.1.6.L93.B0', codedWidth: 640, codedHeight: 360, description };
  for (let frame = 0; frame < 10; frame += 1) {
    const data = Uint8Array.from([0, 0, 0, 4, frame === 0 ? 0x26 : 0x02, 1, 0xaf, frame]);
    const packet = new EncodedPacket(data, frame === 0 ? 'key' : 'delta', frame / 30, 1 / 30);
    await source.add(packet, { decoderConfig });
  }
  await output.finalize();
  return finished(output.target);
}

/** A MOV file with one track of uncoded sound. */
export async function soundOnly(): Promise<Uint8Array<ArrayBuffer>> {
  const output = new Output({
    format: new MovOutputFormat({ fastStart: false }),
    target: new BufferTarget(),
  });
  const source = new AudioSampleSource({ codec: 'pcm-s16' });
  output.addAudioTrack(source);
  await output.start();
  const init = { numberOfChannels: 1, sampleRate: 8000, format: 's16' as const, timestamp: 0 };
  const sample = new AudioSample({ ...init, data: new Int16Array(800) });
  await source.add(sample);
  sample.close();
  await output.finalize();
  return finished(output.target);
}

export const oneFrame = (): Promise<Uint8Array<ArrayBuffer>> => makeHandFilm({ groups: 1, steps: 0 });

/** Where four letters stand first. */
export function find(bytes: Uint8Array, text: string): number {
  const at = bytes.findIndex((_, start) =>
    [...text].every((letter, k) => bytes[start + k] === letter.charCodeAt(0)),
  );
  if (at < 0) throw new Error(`there is no “${text}” in the film`);
  return at;
}
