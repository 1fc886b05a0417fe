import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { crc32 } from './checksum.ts';
import { type HandTrack, handTrackOf, type Track, trackVersion } from './track.ts';
import { mostFrames } from './track-line.ts';

/** The first bytes of a track file: a byte that no text begins with, the letters EHTRACK. */
const magic = [0x93, 0x45, 0x48, 0x54, 0x52, 0x41, 0x43, 0x4b] as const;
const headBytes = 32;
const sources: readonly Track['source'][] = ['landmarks', 'bands', 'energy', 'table'];
const units: readonly Track['unit'][] = ['pixels', 'millimetres'];
const series = ['x', 'y', 'z', 'opening', 'presence'] as const;
type Series = (typeof series)[number];

/** Bit of the head that says a hand has a series: 0 to 4 for the left hand, 8 to 12 for the right one. */
function bitOf(hand: Hand, name: Series): number {
  return 1 << (series.indexOf(name) + (hand === 'left' ? 0 : 8));
}

function partsOf(bits: number): readonly (readonly [Hand, Series])[] {
  return hands.flatMap((hand) =>
    series.filter((name) => (bits & bitOf(hand, name)) !== 0).map((name) => [hand, name] as const),
  );
}

/**
 * The track as the bytes of a file (docs/track-format.md): a head of 32 bytes, then 32-bit floats, a run of one for each
 * frame for every series of every hand. Numbers lie with the lowest byte first; a missing one is NaN.
 */
export function encodeTrack(track: Track): Uint8Array {
  const bits = hands.reduce((all, hand) => {
    const found = handTrackOf(track, hand);
    return found === undefined
      ? all
      : series.reduce((sum, name) => sum | (found[name] === undefined ? 0 : bitOf(hand, name)), all);
  }, 0);
  const parts = partsOf(bits);
  const bytes = new Uint8Array(headBytes + 4 * track.frames * parts.length);
  const view = new DataView(bytes.buffer);
  bytes.set(magic);
  view.setUint16(8, trackVersion, true);
  view.setUint8(10, sources.indexOf(track.source));
  view.setUint8(11, units.indexOf(track.unit));
  view.setUint32(12, track.frames, true);
  view.setUint32(16, track.width, true);
  view.setUint32(20, track.height, true);
  view.setUint16(24, bits, true);
  let at = headBytes;
  for (const [hand, name] of parts) {
    const values = handTrackOf(track, hand)?.[name];
    for (let frame = 0; frame < track.frames; frame += 1, at += 4)
      view.setFloat32(at, values?.[frame] ?? Number.NaN, true);
  }
  view.setUint32(28, crc32(bytes.subarray(headBytes)), true);
  return bytes;
}

/**
 * Reads the bytes of a track file. Findings `track/not-a-track`, `track/newer-version`, `track/cut-off`,
 * `track/damaged`, and `track/other-film` when it is not of as many frames as the film.
 * @param film.frames number of frames of the film it should be of
 */
export function decodeTrack(
  bytes: Uint8Array,
  film: { readonly frames?: number } = {},
): Result<Track, Finding> {
  if (bytes.length < magic.length || magic.some((byte, index) => bytes[index] !== byte))
    return fail(finding('track/not-a-track'));
  if (bytes.length < headBytes) return cutOff(headBytes, bytes.length);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const version = view.getUint16(8, true);
  if (version > trackVersion)
    return fail(finding('track/newer-version', {}, { found: version, known: trackVersion }));
  const head = readHead(view, version);
  if (typeof head === 'string') return damaged(head);
  const parts = partsOf(head.bits);
  const expected = headBytes + 4 * head.frames * parts.length;
  if (bytes.length !== expected) return cutOff(expected, bytes.length);
  if (view.getUint32(28, true) !== crc32(bytes.subarray(headBytes)))
    return damaged('the check sum does not match its numbers');
  if (film.frames !== undefined && film.frames !== head.frames)
    return fail(finding('track/other-film', {}, { found: head.frames, frames: film.frames }));
  const track = readParts(view, head, parts);
  const fault = hands.map((hand) => valueFault(track, hand)).find((text) => text !== undefined);
  return fault === undefined ? ok(track) : damaged(fault);
}

function cutOff(expected: number, found: number): Result<Track, Finding> {
  return fail(finding('track/cut-off', {}, { expected, found }));
}

function damaged(reason: string): Result<Track, Finding> {
  return fail(finding('track/damaged', {}, { reason }));
}

interface Head extends Omit<Track, 'left' | 'right'> {
  readonly bits: number;
}

function readHead(view: DataView, version: number): Head | string {
  const source = sources[view.getUint8(10)];
  const unit = units[view.getUint8(11)];
  const frames = view.getUint32(12, true);
  const bits = view.getUint16(24, true);
  if (version < 1) return 'it has no version';
  if (source === undefined) return 'its source is not known';
  if (unit === undefined) return 'its unit is not known';
  if (frames < 1 || frames > mostFrames) return `it says that it has ${frames} frames`;
  if ((bits & 0xe0e0) !== 0 || view.getUint16(26, true) !== 0) return 'its head has bits that mean nothing';
  for (const hand of hands) {
    const needed = bitOf(hand, 'x') | bitOf(hand, 'y') | bitOf(hand, 'presence');
    const here = bits & (hand === 'left' ? 0x00ff : 0xff00);
    if (here !== 0 && (here & needed) !== needed) return `the ${hand} hand lacks x, y or presence`;
  }
  return { source, unit, frames, bits, width: view.getUint32(16, true), height: view.getUint32(20, true) };
}

function readParts(
  view: DataView,
  { bits: _, ...rest }: Head,
  parts: readonly (readonly [Hand, Series])[],
): Track {
  const found: Partial<Record<Hand, Partial<Record<Series, Float32Array>>>> = {};
  let at = headBytes;
  for (const [hand, name] of parts) {
    const values = new Float32Array(rest.frames);
    for (let frame = 0; frame < rest.frames; frame += 1, at += 4) values[frame] = view.getFloat32(at, true);
    found[hand] = { ...found[hand], [name]: values };
  }
  return { ...rest, ...(found as Partial<Record<Hand, HandTrack>>) };
}

/** A sum can be right and the numbers senseless, when a program wrote them so. */
function valueFault(track: Track, hand: Hand): string | undefined {
  const found = handTrackOf(track, hand);
  if (found === undefined) return undefined;
  for (let frame = 0; frame < track.frames; frame += 1) {
    const [x, y] = [found.x[frame] as number, found.y[frame] as number];
    const presence = found.presence[frame] as number;
    const where = `of the ${hand} hand in frame ${frame}`;
    if (Number.isNaN(x) !== Number.isNaN(y)) return `only one of x and y ${where} is there`;
    if (!(presence >= 0 && presence <= 1)) return `the presence ${where} is not between 0 and 1`;
    for (const name of ['x', 'y', 'z', 'opening'] as const)
      if (Math.abs(found[name]?.[frame] ?? 0) === Number.POSITIVE_INFINITY)
        return `${name} ${where} is not finite`;
  }
  return undefined;
}
