import type { ByteReader } from './source.ts';

/** A box of an MP4 or MOV file (ISO/IEC 14496-12, 4.2); positions are bytes in the file. */
export interface Box {
  readonly type: string;
  readonly contentStart: number;
  /** May lie past the end of a file that is cut off. */
  readonly end: number;
}

/** The boxes that follow one another from `start`; stops at `end`, at what is no box, or after `most` boxes. */
export async function listBoxes(bytes: ByteReader, start: number, end: number, most = 200): Promise<Box[]> {
  const boxes: Box[] = [];
  for (let at = start; at + 8 <= end && boxes.length < most; ) {
    const box = readHeader(await bytes.read(at, at + 16), at, end);
    if (box === undefined) break;
    boxes.push(box);
    at = box.end;
  }
  return boxes;
}

function readHeader(head: Uint8Array, at: number, end: number): Box | undefined {
  if (head.length < 8) return undefined;
  const view = new DataView(head.buffer, head.byteOffset, head.length);
  const type = String.fromCharCode(...head.subarray(4, 8));
  const short = view.getUint32(0);
  if (short === 0) return { type, contentStart: at + 8, end };
  if (short !== 1) return short < 8 ? undefined : { type, contentStart: at + 8, end: at + short };
  if (head.length < 16) return undefined;
  const long = Number(view.getBigUint64(8));
  return long < 16 ? undefined : { type, contentStart: at + 16, end: at + long };
}

/** The part of the media that is shown, of the first video track; times in the track's ticks. */
export interface Edit {
  /** How many pieces the edit list puts together; one is the rule. */
  readonly pieces: number;
  /** A frame that starts here or later is not shown; `Infinity` when the file does not say. Ticks, fractions allowed. */
  readonly endTick: number;
}

/** Reads the edit list of the first video track, if it has one (ISO/IEC 14496-12, 8.6.6). */
export async function readEdit(bytes: ByteReader, moov: Box): Promise<Edit | undefined> {
  const children = await listBoxes(bytes, moov.contentStart, moov.end);
  const movieScale = await readTimescale(bytes, find(children, 'mvhd'));
  for (const trak of children.filter((box) => box.type === 'trak')) {
    const parts = await listBoxes(bytes, trak.contentStart, trak.end);
    const mdia = find(parts, 'mdia');
    if (mdia === undefined) continue;
    const media = await listBoxes(bytes, mdia.contentStart, mdia.end);
    if ((await readHandler(bytes, find(media, 'hdlr'))) !== 'vide') continue;
    const trackScale = await readTimescale(bytes, find(media, 'mdhd'));
    const edts = find(parts, 'edts');
    if (edts === undefined || movieScale === 0 || trackScale === 0) return undefined;
    const elst = find(await listBoxes(bytes, edts.contentStart, edts.end), 'elst');
    return elst === undefined ? undefined : readEditList(bytes, elst, trackScale / movieScale);
  }
  return undefined;
}

function find(boxes: readonly Box[], type: string): Box | undefined {
  return boxes.find((box) => box.type === type);
}

async function content(bytes: ByteReader, box: Box, most: number): Promise<DataView> {
  const data = await bytes.read(box.contentStart, Math.min(box.end, box.contentStart + most));
  return new DataView(data.buffer, data.byteOffset, data.length);
}

async function readTimescale(bytes: ByteReader, box: Box | undefined): Promise<number> {
  if (box === undefined) return 0;
  const view = await content(bytes, box, 32);
  if (view.byteLength < 24) return 0;
  return view.getUint32(view.getUint8(0) === 1 ? 20 : 12);
}

async function readHandler(bytes: ByteReader, box: Box | undefined): Promise<string> {
  if (box === undefined) return '';
  const view = await content(bytes, box, 12);
  if (view.byteLength < 12) return '';
  return String.fromCharCode(view.getUint8(8), view.getUint8(9), view.getUint8(10), view.getUint8(11));
}

async function readEditList(
  bytes: ByteReader,
  box: Box,
  ticksPerMovieTick: number,
): Promise<Edit | undefined> {
  const view = await content(bytes, box, 4096);
  if (view.byteLength < 8) return undefined;
  const long = view.getUint8(0) === 1;
  const entrySize = long ? 20 : 12;
  const count = Math.min(view.getUint32(4), Math.floor((view.byteLength - 8) / entrySize));
  const shown: number[] = [];
  let empty = 0;
  for (let entry = 0; entry < count; entry += 1) {
    const at = 8 + entry * entrySize;
    const length = long ? Number(view.getBigUint64(at)) : view.getUint32(at);
    const start = long ? Number(view.getBigInt64(at + 8)) : view.getInt32(at + 4);
    // A start of −1 is an empty piece: it only moves the film on the time axis.
    if (start !== -1) shown.push(length);
    else if (shown.length === 0) empty += length;
  }
  const first = shown[0];
  if (first === undefined) return undefined;
  // The length is rounded to the movie's time scale, which may be rough: give way by one of its ticks.
  const endTick = first === 0 ? Number.POSITIVE_INFINITY : (empty + first - 1) * ticksPerMovieTick;
  return { pieces: shown.length, endTick };
}
