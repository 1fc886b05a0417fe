import { fail, ok } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Film, Hand } from '@evenhand/core/ground/study';
import { decodeTrack, type PlanePoint, readTrackCsv } from '@evenhand/core/record';
import {
  type Band,
  type ByHand,
  bandColour,
  type HandStretch,
  type Player,
  type Region,
  type ScanWish,
  scanFilm,
  trackFilm,
} from '@evenhand/media';
import type { TrackMaker } from './desk-tracks.ts';

const sourceOf = ({ sha256, name }: Film) => ({ url: `/api/films/${sha256}`, name });

/** What earlier searches of this window have finished, by film, so that one that was ended goes on where it stopped. */
const finished = new Map<string, HandStretch[]>();

/** Hands found by the landmark models that come with the program. */
export function landmarkMaker(film: Film, workers: 1 | 2): TrackMaker {
  return async (signal, onProgress) => {
    const kept = finished.get(film.sha256) ?? [];
    finished.set(film.sha256, kept);
    const found = await trackFilm(sourceOf(film), {
      workers,
      mirrored: film.mirrored === true,
      signal,
      resumeFrom: [...kept],
      onStretch: (stretch) => kept.push(stretch),
      onProgress: ({ done, frames, secondsLeft }) => onProgress(done / frames, secondsLeft),
    });
    if (!found.ok) return found;
    finished.delete(film.sha256);
    return ok({ track: found.value.track, findings: found.value.findings });
  };
}

export function scanMaker(film: Film, wish: ScanWish): TrackMaker {
  return async (signal, onProgress) =>
    await scanFilm(sourceOf(film), wish, {
      signal,
      onProgress: ({ done, frames, secondsLeft }) => onProgress(done / frames, secondsLeft),
    });
}

/** A table from elsewhere; most tables a person has are below a tenth of this. */
const largestTable = 200 * 1024 * 1024;

/** A track file by its first bytes, anything else as a table. */
export function tableMaker(film: Film, frames: number, file: File): TrackMaker {
  return async () => {
    if (file.size > largestTable)
      return fail([finding('track/table-size', { file: file.name }, { limit: 200 })]);
    const { width, height } = film;
    const inFile = (found: readonly Finding[]) =>
      found.map((item) => ({ ...item, where: { ...item.where, file: file.name } }));
    const bytes = new Uint8Array(await file.arrayBuffer());
    const track = decodeTrack(bytes, { frames });
    if (track.ok) return ok({ track: track.value, findings: [] });
    if (track.error.code !== 'track/not-a-track') return fail(inFile([track.error]));
    const read = readTrackCsv(new TextDecoder().decode(bytes), { frames, width, height });
    return read.ok
      ? ok({ track: read.value.track, findings: inFile(read.value.notes) })
      : fail(inFile(read.error));
  };
}

/** Colours are judged at the size at which they are followed. */
const longestSide = 640;

/** The band that was clicked in the frame that is shown. */
export function bandAt(
  player: Player,
  point: PlanePoint,
): ReturnType<typeof fail<Finding>> | { readonly ok: true; readonly value: Band } {
  const shown = player.shown();
  if (shown === undefined) return fail(finding('band/outside'));
  const { width, height } = shown.handle;
  const scale = Math.max(1, Math.max(width, height) / longestSide);
  const canvas = new OffscreenCanvas(Math.round(width / scale), Math.round(height / scale));
  const context = canvas.getContext('2d', { willReadFrequently: true, alpha: false });
  if (context === null) throw new Error('this browser gives no canvas to read');
  shown.handle.draw(context, 0, 0, canvas.width, canvas.height);
  const picture = context.getImageData(0, 0, canvas.width, canvas.height);
  const colour = bandColour(picture, { x: point.x / scale, y: point.y / scale });
  if (!colour.ok) return colour;
  return ok({ colour: colour.value, click: { frame: shown.frame, x: point.x, y: point.y } });
}

/** Movement in what belongs to both hands would be counted for both. */
export function regionsFault(regions: ByHand<readonly Region[]>): Finding | undefined {
  const crossing = (regions.left ?? []).some((a) =>
    (regions.right ?? []).some(
      (b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height,
    ),
  );
  return crossing ? finding('track/regions-cross') : undefined;
}

export const sourceWords: Readonly<Record<NonNullable<Film['tracks']>[number]['source'], string>> = {
  landmarks: 'hands found in the film',
  bands: 'coloured wristbands',
  energy: 'movement in regions',
  table: 'a table or file',
};

/** A name that no other track of the film has. */
export function freeName(film: Film, name: string): string {
  const taken = new Set((film.tracks ?? []).map((item) => item.name));
  const base = name.slice(0, 180) || 'Track';
  if (!taken.has(base)) return base;
  for (let count = 2; ; count += 1) if (!taken.has(`${base} (${count})`)) return `${base} (${count})`;
}

export const handWords: Readonly<Record<Hand, string>> = { left: 'left hand', right: 'right hand' };
