import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { countText } from '../../../ground/units/index.ts';
import type { CsvLine } from '../interchange/csv-cells.ts';
import { namedTable } from '../interchange/csv-columns.ts';
import { inTextOrder } from '../interchange/csv-findings.ts';
import { emptyHandTrack, type HandTrack, type Track } from './track.ts';
import { type TrackColumn, trackDesign } from './track-columns.ts';
import { trackFindings } from './track-findings.ts';
import { type CellOf, readTrackLine, type TrackLine } from './track-line.ts';

export interface TrackCsvOptions {
  /** Number of frames of the film; left out, the table’s last frame is the last of the film. */
  readonly frames?: number;
  /** Size of the picture as shown, in pixels. */
  readonly width?: number;
  readonly height?: number;
  /** What x and y count; pixels unless said otherwise. */
  readonly unit?: Track['unit'];
}

export interface TrackRead {
  readonly track: Track;
  /** What a person should know: columns not read, a hand that is not there, gaps. */
  readonly notes: readonly Finding[];
}

const faultsTold = 20;

/**
 * Reads a track from a table `frame,hand,x,y[,z][,opening][,presence]`: a line for each frame and hand, in any order of
 * lines and columns, with commas, semicolons or tabs between the cells, and a point or a comma before decimals. Frames
 * count from 0. An empty cell means that the hand is not seen; what is missing stays missing.
 */
export function readTrackCsv(
  text: string,
  options: TrackCsvOptions = {},
): Result<TrackRead, readonly Finding[]> {
  const table = namedTable(text, trackDesign);
  if (!table.ok) return fail(firstFaults(table.error));
  const { lines, cellOf, notes } = table.value;
  const read: TrackLine[] = [];
  const faults = [...markFaults(lines, cellOf)];
  for (const line of lines) {
    const result = readTrackLine(line, cellOf);
    if (Array.isArray(result)) faults.push(...result);
    else read.push(result as TrackLine);
  }
  if (faults.length === 0) faults.push(...frameFaults(read, cellOf, options.frames), ...twice(read, cellOf));
  if (faults.length === 0 && read.every((line) => Number.isNaN(line.x)))
    faults.push(finding('track/nothing-seen', { line: lines[0]?.line ?? 1, column: cellOf.x + 1 }));
  if (faults.length > 0) return fail(firstFaults(inTextOrder(faults)));
  const track = trackOf(read, cellOf, options);
  return ok({
    track,
    notes: [...notes, ...lineNotes(read, cellOf, options.frames), ...trackFindings(track)],
  });
}

/** A table with one slip in each of a hundred thousand lines is told by its first ones. */
function firstFaults(faults: readonly Finding[]): readonly Finding[] {
  if (faults.length <= faultsTold + 1) return faults;
  const next = faults[faultsTold];
  const rest = finding('track/more-faults', next?.where ?? {}, { count: faults.length - faultsTold });
  return [...faults.slice(0, faultsTold), rest];
}

/** A file that writes 1.5 and 1,5 may mean a thousand by one of the two: not to be guessed. */
function markFaults(lines: readonly CsvLine[], cellOf: CellOf): Finding[] {
  const cells = (['x', 'y', 'z', 'opening', 'presence'] as const).map((column) => cellOf[column]);
  let first: { mark: string; found: string; line: number } | undefined;
  for (const { line, cells: texts } of lines)
    for (const cell of cells) {
      const found = texts[cell] ?? '';
      const mark = /^[+\-−\d]*([.,])\d*(?:[eE][+-]?\d+)?$/.exec(found)?.[1];
      if (mark === undefined) continue;
      first ??= { mark, found, line };
      if (mark === first.mark) continue;
      const words = { found, other: first.found, line: first.line };
      return [finding('csv/decimal-mark', { line, column: cell + 1 }, words)];
    }
  return [];
}

function frameFaults(read: readonly TrackLine[], cellOf: CellOf, frames: number | undefined): Finding[] {
  if (frames === undefined) return [];
  const beyond = read.filter((line) => line.frame >= frames);
  const [first] = beyond;
  if (first === undefined) return [];
  const column = cellOf.frame + 1;
  const least = read.reduce((low, line) => Math.min(low, line.frame), Number.POSITIVE_INFINITY);
  if (least === 1 && beyond.every((line) => line.frame === frames))
    return [finding('track/from-one', { line: first.line, column }, { frames })];
  return beyond.map(({ line, frame }) =>
    finding('track/beyond-film', { line, column }, { frame, frames, last: frames - 1 }),
  );
}

function twice(read: readonly TrackLine[], cellOf: CellOf): Finding[] {
  const lineOf: Readonly<Record<Hand, Map<number, number>>> = { left: new Map(), right: new Map() };
  const found: Finding[] = [];
  for (const { frame, hand, line } of read) {
    const other = lineOf[hand].get(frame);
    if (other === undefined) lineOf[hand].set(frame, line);
    else found.push(finding('track/twice', { line, column: cellOf.frame + 1 }, { frame, hand, line: other }));
  }
  return found;
}

function trackOf(read: readonly TrackLine[], cellOf: CellOf, options: TrackCsvOptions): Track {
  const frames = options.frames ?? lastFrame(read) + 1;
  const parts = hands.map((hand) => [hand, handOf(read, hand, frames, cellOf)] as const);
  return {
    source: 'table',
    frames,
    width: options.width ?? 0,
    height: options.height ?? 0,
    unit: options.unit ?? 'pixels',
    ...Object.fromEntries(parts.filter(([, found]) => found !== undefined)),
  };
}

function lastFrame(read: readonly TrackLine[]): number {
  return read.reduce((last, line) => Math.max(last, line.frame), 0);
}

/** The places of one hand, or nothing when the table has none of it. */
function handOf(
  read: readonly TrackLine[],
  hand: Hand,
  frames: number,
  cellOf: CellOf,
): HandTrack | undefined {
  const seen = read.filter((line) => line.hand === hand && !Number.isNaN(line.x));
  if (seen.length === 0) return undefined;
  const { x, y, presence } = emptyHandTrack(frames);
  const column = (name: TrackColumn) =>
    cellOf[name] < 0 ? undefined : new Float32Array(frames).fill(Number.NaN);
  const z = column('z');
  const opening = column('opening');
  for (const line of seen) {
    x[line.frame] = line.x;
    y[line.frame] = line.y;
    presence[line.frame] = Number.isNaN(line.presence) ? 1 : line.presence;
    if (z !== undefined) z[line.frame] = line.z;
    if (opening !== undefined) opening[line.frame] = line.opening;
  }
  return {
    x,
    y,
    presence,
    ...(z === undefined ? {} : { z }),
    ...(opening === undefined ? {} : { opening }),
  };
}

function lineNotes(read: readonly TrackLine[], cellOf: CellOf, frames: number | undefined): Finding[] {
  const notes: Finding[] = [];
  const alone = read.filter((line) => Number.isNaN(line.x) && !Number.isNaN(line.opening));
  const [first] = alone;
  if (first !== undefined) {
    const where = { line: first.line, column: cellOf.opening + 1 };
    notes.push(finding('track/opening-alone', where, { lines: countText(alone.length, 'line') }));
  }
  const last = lastFrame(read);
  if (frames !== undefined && last < frames - 1)
    notes.push(finding('track/ends-early', {}, { last, frames: frames - 1 }));
  return notes;
}
