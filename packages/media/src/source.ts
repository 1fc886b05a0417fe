import { BlobSource, CustomSource, type Source, UrlSource } from 'mediabunny';

/** A film on a server that answers range requests. */
export interface UrlFilm {
  readonly url: string;
  readonly name: string;
}

/** A file opened for reading in Node: `await open(path, 'r')` of `node:fs/promises` fits. The opener closes it. */
export interface FileFilm {
  readonly handle: {
    readonly read: (
      buffer: Uint8Array,
      offset: number,
      length: number,
      position: number,
    ) => Promise<{ readonly bytesRead: number }>;
    readonly stat: () => Promise<{ readonly size: number }>;
  };
  readonly name: string;
}

/** Where the bytes of a film come from: a `File` or `Blob` of the page, an address, or an open file in Node. */
export type FilmSource = Blob | UrlFilm | FileFilm;

/** Random access to bytes; what lies past the end is left out of the answer. */
export interface ByteReader {
  readonly size: number;
  readonly read: (start: number, end: number) => Promise<Uint8Array>;
}

/** The server did not give the film. */
export class FilmMissing extends Error {}

export function sourceName(source: FilmSource): string {
  if ('name' in source && typeof source.name === 'string' && source.name !== '') return source.name;
  return 'the film';
}

/** The source as the demuxer takes it. */
export async function demuxerSource(source: FilmSource): Promise<Source> {
  if (source instanceof Blob) return new BlobSource(source);
  if ('url' in source) return new UrlSource(source.url, { getRetryDelay: retryDelay });
  const bytes = await fileReader(source);
  return new CustomSource({
    getSize: () => bytes.size,
    read: bytes.read,
    prefetchProfile: 'fileSystem',
  });
}

/** Three tries within a second; then the caller is told. Seconds. */
function retryDelay(before: number): number | null {
  return before < 3 ? 0.1 * 2 ** before : null;
}

export async function byteReader(source: FilmSource): Promise<ByteReader> {
  if (source instanceof Blob) return blobReader(source);
  return inBlocks('url' in source ? await urlReader(source) : await fileReader(source));
}

function blobReader(blob: Blob): ByteReader {
  return {
    size: blob.size,
    read: async (start, end) => new Uint8Array(await blob.slice(start, end).arrayBuffer()),
  };
}

async function fileReader({ handle }: FileFilm): Promise<ByteReader> {
  const { size } = await handle.stat();
  return {
    size,
    read: async (start, end) => {
      const buffer = new Uint8Array(Math.max(0, Math.min(end, size) - start));
      let filled = 0;
      while (filled < buffer.length) {
        const { bytesRead } = await handle.read(buffer, filled, buffer.length - filled, start + filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return buffer.subarray(0, filled);
    },
  };
}

async function urlReader({ url }: UrlFilm): Promise<ByteReader> {
  const first = await fetch(url, { headers: { Range: 'bytes=0-0' } });
  await first.body?.cancel();
  const size = sizeFromAnswer(first);
  return {
    size,
    read: async (start, end) => {
      if (start >= Math.min(end, size)) return new Uint8Array(0);
      const answer = await fetch(url, { headers: { Range: `bytes=${start}-${Math.min(end, size) - 1}` } });
      if (answer.status !== 206) throw new FilmMissing(`the server answered ${answer.status}`);
      return new Uint8Array(await answer.arrayBuffer());
    },
  };
}

function sizeFromAnswer(answer: Response): number {
  const total = /\/(\d+)$/.exec(answer.headers.get('Content-Range') ?? '')?.[1];
  if (total !== undefined) return Number(total);
  // An empty file has no byte 0: the range cannot be satisfied, or the whole, empty, file comes.
  if (answer.status === 200 && answer.headers.get('Content-Length') === '0') return 0;
  throw new FilmMissing(`the server answered ${answer.status}`);
}

const blockSize = 65_536;

/** Many small reads of neighbouring headers become few larger ones. */
function inBlocks(bytes: ByteReader): ByteReader {
  const blocks = new Map<number, Promise<Uint8Array>>();
  const block = (number: number) => {
    const known = blocks.get(number);
    if (known !== undefined) return known;
    if (blocks.size > 32) blocks.clear();
    const read = bytes.read(number * blockSize, (number + 1) * blockSize);
    blocks.set(number, read);
    return read;
  };
  return {
    size: bytes.size,
    read: async (start, end) => {
      const result = new Uint8Array(Math.max(0, Math.min(end, bytes.size) - start));
      for (let at = start; at < start + result.length; ) {
        const number = Math.floor(at / blockSize);
        const part = (await block(number)).subarray(
          at - number * blockSize,
          start + result.length - number * blockSize,
        );
        if (part.length === 0) return result.subarray(0, at - start);
        result.set(part, at - start);
        at += part.length;
      }
      return result;
    },
  };
}
