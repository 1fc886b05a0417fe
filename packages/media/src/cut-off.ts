import { type Box, listBoxes } from './boxes.ts';
import type { ByteReader } from './source.ts';

/**
 * Says in words how an MP4 or MOV file is cut off, if it is.
 * @param boxes the boxes of the file's top level
 */
export function boxesCutOff(boxes: readonly Box[], size: number): string | undefined {
  const last = boxes.at(-1);
  const hasIndex = boxes.some((box) => box.type === 'moov' && box.end <= size);
  if (last !== undefined && last.end > size) {
    const missing = `the part “${last.type}” ends at byte ${last.end}, the file at byte ${size}`;
    return hasIndex ? missing : `${missing}, and the index that stands after it is missing`;
  }
  if (!hasIndex && boxes.some((box) => box.type === 'mdat')) return 'the index at its end is missing';
  return undefined;
}

/** The same for a WebM or MKV file, whose one segment states its size (RFC 9559, 5.1). */
export async function segmentCutOff(bytes: ByteReader): Promise<string | undefined> {
  const head = await bytes.read(0, 4096);
  const header = element(head, 0);
  const segment = header?.size === undefined ? undefined : element(head, header.contentStart + header.size);
  if (segment?.id !== 0x18538067 || segment.size === undefined) return undefined;
  const end = segment.contentStart + segment.size;
  return end > bytes.size ? `it should have ${end} bytes and has ${bytes.size}` : undefined;
}

interface Element {
  readonly id: number;
  /** Undefined: the size is not known (a stream). */
  readonly size: number | undefined;
  readonly contentStart: number;
}

/** An EBML element header: id and size as variable-length integers (RFC 8794, 4 to 6). */
function element(data: Uint8Array, at: number): Element | undefined {
  const idLength = lengthAt(data, at);
  const sizeLength = lengthAt(data, at + idLength);
  if (idLength > 4 || sizeLength > 8 || at + idLength + sizeLength > data.length) return undefined;
  const id = number(data.subarray(at, at + idLength), false);
  const sizeBytes = data.subarray(at + idLength, at + idLength + sizeLength);
  const size = number(sizeBytes, true);
  const unknown = size >= 2 ** (7 * sizeLength) - 1;
  return { id, size: unknown ? undefined : size, contentStart: at + idLength + sizeLength };
}

function lengthAt(data: Uint8Array, at: number): number {
  return Math.clz32(data[at] ?? 0) - 24 + 1;
}

function number(bytes: Uint8Array, withoutMarker: boolean): number {
  const marker = withoutMarker ? 2 ** (8 - bytes.length) : 256;
  return bytes.reduce((sum, byte, at) => sum * 256 + (at === 0 ? byte % marker : byte), 0);
}

/** Top level of an MP4 or MOV file; of a fragmented one only the first boxes. */
export function topLevel(bytes: ByteReader): Promise<Box[]> {
  return listBoxes(bytes, 0, bytes.size);
}
