import { createHash } from 'node:crypto';
import type { Files } from '../files.ts';
import { sniffMediaType } from './media-type.ts';

const CHUNK = 1 << 20;

export interface FileFacts {
  readonly sha256: string;
  readonly bytes: number;
  readonly mediaType: string;
}

/** Reads a file once from end to end: O(bytes) time, one mebibyte of memory. */
export async function hashFile(files: Files, file: string): Promise<FileFacts> {
  const hash = createHash('sha256');
  const buffer = Buffer.allocUnsafe(CHUNK);
  const handle = await files.open(file, 'r');
  let bytes = 0;
  let mediaType = sniffMediaType(new Uint8Array());
  try {
    for (;;) {
      const { bytesRead } = await handle.read(buffer, 0, CHUNK, bytes);
      if (bytesRead === 0) break;
      const part = buffer.subarray(0, bytesRead);
      if (bytes === 0) mediaType = sniffMediaType(part);
      hash.update(part);
      bytes += bytesRead;
    }
  } finally {
    await handle.close();
  }
  return { sha256: hash.digest('hex'), bytes, mediaType };
}
