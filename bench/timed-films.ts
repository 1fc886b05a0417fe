import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { promisify } from 'node:util';
import type { Hand } from '@evenhand/core/ground/study';
import { decodeTrack, type Track } from '@evenhand/core/record';
import { indexFilm } from '@evenhand/media';
import { handsVersion } from '@evenhand/media/hands';
import type { KnownRecord, KnownStart } from '../tests/helpers/propose-score.ts';

/** A film whose events were timed by eye, as a record: each event is a cycle, which lasts until the next one begins. */
export interface TimedFilm {
  readonly name: string;
  /** Seconds; as far as a time read by eye may be off. */
  readonly byEye: number;
  readonly record: KnownRecord;
  /** The cycle that is confirmed, and three of them. */
  readonly first: number;
  readonly three: readonly number[];
}

interface Wanted {
  readonly file: string;
  /** Events that are one operation, by their label. */
  readonly events: RegExp;
  /** Where it ends, when the table has several rows for it. */
  readonly until?: RegExp;
  readonly name: string;
  readonly byEye: number;
  readonly first: number;
  readonly three: readonly number[];
}

/** Tolerances as told with the table: 0.2 s, for the gestures 0.35 s. */
const wanted: readonly Wanted[] = [
  {
    file: 'sam2_02_cups.mp4',
    name: 'cups: swaps with both hands',
    events: /^swap/,
    byEye: 0.2,
    first: 1,
    three: [1, 2, 4],
  },
  {
    file: 'dex_human_hand_video.mp4',
    name: 'gestures of one hand',
    events: /open again/,
    byEye: 0.35,
    first: 3,
    three: [3, 4, 8],
  },
  {
    file: 'intel_bottle-detection.mp4',
    name: 'bottles brought back',
    events: /^bring/,
    until: /^hold then release/,
    byEye: 0.2,
    first: 0,
    three: [0, 1, 2],
  },
];

interface Row {
  readonly hand: string;
  readonly label: string;
  readonly start: number;
  readonly end: number;
}

/** The films that are there, tracked by the real models; a track is kept until film or models change. */
export async function timedFilms(folder: string, root: string): Promise<readonly TimedFilm[] | string> {
  const program = path.join(root, 'dist', 'cli', 'evenhand.js');
  if (!existsSync(program)) return 'the program is not built: npm run build';
  if (process.env.EVENHAND_BROWSER === undefined) return 'there is no browser: npm run browser';
  const table = path.join(folder, 'observed_events.csv');
  if (!existsSync(table)) return `${path.basename(table)} is not there`;
  const rows = readFileSync(table, 'utf8').split(/\r?\n/).slice(1).map(rowOf);
  const films: TimedFilm[] = [];
  for (const one of wanted) {
    const film = path.join(folder, one.file);
    if (!existsSync(film)) continue;
    const track = await trackOf(film, root, program);
    const index = await indexFilm(new File([readFileSync(film)], one.file));
    if (!index.ok) throw new Error(index.error[0]?.message);
    const { clock } = index.value;
    const seconds = Array.from({ length: track.frames }, (_, frame) => clock.timeOf(frame) / 1e6);
    const own = rows.filter(({ clip }) => clip === one.file);
    const { name, byEye, first, three } = one;
    films.push({ name, byEye, first, three, record: recordOf(track, seconds, own, one) });
  }
  return films.length === 0 ? 'none of the films is there' : films;
}

function rowOf(line: string): Row & { readonly clip: string } {
  const [clip = '', hand = '', label = '', start, end] = line.split(',');
  return { clip, hand, label, start: Number(start), end: Number(end) };
}

async function trackOf(film: string, root: string, program: string): Promise<Track> {
  const folder = path.join(root, '.cache', 'bench-tracks');
  mkdirSync(folder, { recursive: true });
  const sign = createHash('sha256').update(readFileSync(film)).digest('hex').slice(0, 16);
  const file = path.join(folder, `${sign}-hands-${handsVersion}.bin`);
  if (!existsSync(file)) {
    console.log(`Hands are sought in ${path.basename(film)} …`);
    // Exit code 1 says that the track was written and has warnings, such as one hand only.
    await promisify(execFile)(process.execPath, [program, 'record', 'track', film, '-o', file], {
      maxBuffer: 1e8,
    }).catch((fault: { code?: number; stderr?: string }) => {
      if (fault.code !== 1 || !existsSync(file)) throw new Error(fault.stderr ?? String(fault));
    });
  }
  const track = decodeTrack(readFileSync(file));
  if (!track.ok) throw new Error(track.error.message);
  return track.value;
}

function recordOf(
  track: Track,
  seconds: readonly number[],
  rows: readonly Row[],
  { events, until }: Wanted,
): KnownRecord {
  const last = seconds.at(-1) ?? 0;
  const begun = rows.filter(({ label }) => events.test(label));
  const spans = begun.map(({ start, end, hand }) => {
    const close =
      until === undefined
        ? undefined
        : rows.find((row) => row.start >= end - 1e-6 && until.test(row.label))?.end;
    return { start, inner: end, close, hand };
  });
  const cycles = spans.map(({ start, close }, index) => ({
    start,
    end: close ?? Math.min(spans[index + 1]?.start ?? last, last),
  }));
  const row = (hand: Hand): KnownStart[] =>
    spans.flatMap(({ start, inner, hand: which }) =>
      which === 'both' || seenMost(track, seconds, start, inner) === hand
        ? [
            { at: start, label: 1 },
            { at: inner, label: 2 },
          ]
        : [],
    );
  return { track, seconds, cycles, left: row('left'), right: row('right') };
}

/** The table does not say which hand; it is the one that the track has more of. */
function seenMost(track: Track, seconds: readonly number[], from: number, to: number): Hand {
  const seen = (hand: Hand) =>
    seconds.filter((time, frame) => time >= from && time < to && Number.isFinite(track[hand]?.x[frame]))
      .length;
  return seen('left') > seen('right') ? 'left' : 'right';
}
