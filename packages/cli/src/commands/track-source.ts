import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Film, frameClock } from '@evenhand/core/ground/study';
import { decodeTrack, readTrackCsv, type Track } from '@evenhand/core/record';
import { nameOf, readText, stream } from '../files.ts';
import { type Io, IoFault } from '../io.ts';
import { atFile } from '../report.ts';

export interface TrackSource {
  readonly track: Track;
  readonly notes: readonly Finding[];
}

/**
 * Reads a track: a track file by its first bytes, anything else as a table.
 * @param film of which the track is; undefined without a film
 */
export async function readTrackFile(
  io: Io,
  file: string,
  film: Film | undefined,
): Promise<Result<TrackSource, readonly Finding[]>> {
  if (file !== stream) {
    let bytes: Uint8Array;
    try {
      bytes = await io.readFile(file);
    } catch (error) {
      if (!(error instanceof IoFault)) throw error;
      return fail([finding('cli/file', {}, { file: nameOf(file), reason: error.message })]);
    }
    const track = decodeTrack(bytes);
    if (track.ok) return ok({ track: track.value, notes: [] });
    if (track.error.code !== 'track/not-a-track') return fail(atFile([track.error], nameOf(file)));
  }
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const size =
    film === undefined
      ? {}
      : { frames: frameClock(film.frameTimes).frames, width: film.width, height: film.height };
  const read = readTrackCsv(text.value, size);
  if (!read.ok) return fail(atFile(read.error, nameOf(file)));
  return ok({ track: read.value.track, notes: atFile(read.value.notes, nameOf(file)) });
}
