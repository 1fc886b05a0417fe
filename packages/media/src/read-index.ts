import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { encodeFrameTimes, frameClock } from '@evenhand/core/ground/study';
import { EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import { type Edit, readEdit } from './boxes.ts';
import { codecText } from './codec-names.ts';
import { boxesCutOff, segmentCutOff, topLevel } from './cut-off.ts';
import { codecCode, type Demuxed, demux, describeTrack, packetTimes, timeScale } from './demux.ts';
import type { IndexedFilm } from './film.ts';
import { deltaRange, type FrameTable, frameTable, isVariable, tickMicros } from './film-index.ts';
import { reasonOf } from './reason.ts';
import { sniff } from './sniff.ts';
import { type ByteReader, byteReader, FilmMissing, type FilmSource, sourceName } from './source.ts';

/** An index with what is needed to decode from it; `dispose` closes the file. */
export interface ReadFilm {
  readonly indexed: IndexedFilm;
  readonly table: FrameTable;
  readonly track: InputVideoTrack;
  readonly dispose: () => void;
}

/** Whether the pictures of a track can be decoded here; `true` where nothing is going to be decoded. */
export type CanDecode = (track: InputVideoTrack) => Promise<boolean>;

/** Opens a film and reads every frame's time, without decoding. All that is wrong comes back as findings. */
export async function readFilm(
  source: FilmSource,
  canDecode: CanDecode,
): Promise<Result<ReadFilm, readonly Finding[]>> {
  const name = sourceName(source);
  try {
    const looked = await lookAt(source, name);
    return looked.ok ? await readTracks(source, name, looked.value, canDecode) : fail([looked.error]);
  } catch (error) {
    const where = { file: name };
    if (error instanceof FilmMissing) return fail([finding('film/missing', where, { name })]);
    return fail([finding('film/broken', where, { name, found: reasonOf(error) })]);
  }
}

/** Looks at the bytes before the demuxer does, to say what a file is that is no film, or how it is cut off. */
async function lookAt(source: FilmSource, name: string): Promise<Result<Edit | undefined, Finding>> {
  const where = { file: name };
  const bytes = await byteReader(source);
  if (bytes.size === 0) return fail(finding('film/empty', where, { name }));
  const { kind, found } = sniff(await bytes.read(0, 4096));
  if (kind === 'sound') return fail(finding('film/no-picture', where, { name, found }));
  if (kind === 'other') return fail(finding('film/not-a-film', where, { name, found }));
  const looked =
    kind === 'iso' ? await lookAtBoxes(bytes) : { cutOff: await segmentCutOff(bytes), edit: undefined };
  if (looked.cutOff !== undefined)
    return fail(finding('film/truncated', where, { name, found: looked.cutOff }));
  return ok(looked.edit);
}

async function lookAtBoxes(
  bytes: ByteReader,
): Promise<{ cutOff: string | undefined; edit: Edit | undefined }> {
  const boxes = await topLevel(bytes);
  const moov = boxes.find((box) => box.type === 'moov');
  const cutOff = boxesCutOff(boxes, bytes.size);
  return {
    cutOff,
    edit: moov === undefined || cutOff !== undefined ? undefined : await readEdit(bytes, moov),
  };
}

async function readTracks(
  source: FilmSource,
  name: string,
  edit: Edit | undefined,
  canDecode: CanDecode,
): Promise<Result<ReadFilm, readonly Finding[]>> {
  const film = await demux(source);
  let done = false;
  try {
    const read = await readFirstTrack(film, name, edit, canDecode);
    done = read.ok;
    return read.ok ? read : fail([read.error]);
  } finally {
    if (!done) film.dispose();
  }
}

async function readFirstTrack(
  film: Demuxed,
  name: string,
  edit: Edit | undefined,
  canDecode: CanDecode,
): Promise<Result<ReadFilm, Finding>> {
  const where = { file: name };
  const track = film.pictures[0];
  if (track === undefined) {
    const found = film.others.length === 0 ? 'an index without tracks' : film.others.join(', ');
    return fail(finding('film/no-picture', where, { name, found }));
  }
  if ((await track.getCodec()) === null || !(await canDecode(track))) {
    return fail(finding('film/codec', where, { name, found: codecText(await codecCode(track)) }));
  }
  const ticksPerSecond = await timeScale(track);
  const table = frameTable(await packetTimes(track, ticksPerSecond), edit?.endTick);
  if (table.ticks.length < 2) {
    return fail(finding('film/too-few-frames', where, { name, frames: table.ticks.length }));
  }
  const missing = await missingData(track, table, ticksPerSecond);
  if (missing !== undefined) return fail(finding('film/truncated', where, { name, found: missing }));
  const indexed = await assemble(film, track, table, ticksPerSecond, name, edit);
  return ok({ indexed, table, track, dispose: film.dispose });
}

/** The last frames are there in the index; are they in the file? */
async function missingData(
  track: InputVideoTrack,
  table: FrameTable,
  ticksPerSecond: number,
): Promise<string | undefined> {
  const sink = new EncodedPacketSink(track);
  const last = table.ticks.length - 1;
  const packet = await sink.getPacket(((table.ticks[last] ?? 0) + 0.25) / ticksPerSecond).catch(() => null);
  if (packet !== null && packet.data.length === packet.byteLength && packet.byteLength > 0) return undefined;
  return `the index names ${table.ticks.length} frames, but the last of them lie past the end of the file`;
}

async function assemble(
  film: Demuxed,
  track: InputVideoTrack,
  table: FrameTable,
  ticksPerSecond: number,
  name: string,
  edit: Edit | undefined,
): Promise<IndexedFilm> {
  const frameTimes = encodeFrameTimes(table.ticks, table.endTick, ticksPerSecond);
  const variableRate = isVariable(table.ticks, ticksPerSecond);
  const index = {
    name,
    container: film.container,
    ...(await describeTrack(track)),
    ticksPerSecond,
    ticks: table.ticks,
    endTick: table.endTick,
    keyFrames: table.keyFrames,
    variableRate,
  };
  const notes = [
    ...(film.pictures.length > 1
      ? [finding('film/more-tracks', { file: name }, { name, tracks: film.pictures.length })]
      : []),
    ...((edit?.pieces ?? 1) > 1
      ? [finding('film/edit-list', { file: name }, { name, pieces: edit?.pieces ?? 1 })]
      : []),
    ...(variableRate ? [variableRateNote(name, table.ticks, ticksPerSecond)] : []),
    ...leftOutNotes(name, table.left),
  ];
  return { index, frameTimes, clock: frameClock(frameTimes), notes };
}

function variableRateNote(name: string, ticks: readonly number[], ticksPerSecond: number): Finding {
  const { shortest, longest } = deltaRange(ticks);
  const words = (delta: number) => `${(tickMicros(delta, ticksPerSecond) / 1000).toFixed(1)} ms`;
  return finding(
    'film/variable-rate',
    { file: name },
    { shortest: words(shortest), longest: words(longest) },
  );
}

function leftOutNotes(name: string, left: FrameTable['left']): Finding[] {
  const reasons: readonly (readonly [count: number, reason: string])[] = [
    [left.before, 'they lie before the start of the shown part'],
    [left.after, 'they lie after the end of the shown part'],
    [left.keyless, 'they come before the first key frame and cannot be decoded'],
    [left.sameTime, 'they stand at the same time as another picture'],
  ];
  return reasons
    .filter(([count]) => count > 0)
    .map(([count, reason]) => finding('film/left-out', { file: name }, { count, reason }));
}
