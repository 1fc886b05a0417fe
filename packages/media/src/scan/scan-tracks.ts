import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Hand, hands } from '@evenhand/core/ground/study';
import { emptyHandTrack, type HandTrack, type Track, trackFindings } from '@evenhand/core/record';
import { type BandClick, bandPath } from './band-path.ts';
import type { Blob } from './blobs.ts';
import type { Movement } from './movement.ts';

/** A track that was made from a film, and what a person should know before they rely on it. */
export interface ScannedTrack {
  readonly track: Track;
  readonly findings: readonly Finding[];
}

/** The film, and how many of its pixels are one of the pictures that were searched. */
export interface ScannedFilm {
  readonly frames: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  /** Time of a frame in microseconds of film. */
  readonly timeOf: (frame: number) => number;
}

export type ByHand<T> = Readonly<Partial<Record<Hand, T>>>;

/** The track of coloured bands. @param clicks in pixels of the film as shown */
export function bandTrack(
  film: ScannedFilm,
  found: ByHand<readonly (readonly Blob[])[]>,
  clicks: ByHand<BandClick>,
): ScannedTrack {
  const notes: Finding[] = [];
  const made = each(found, (blobs, hand) => {
    const click = clicks[hand];
    if (click === undefined) return undefined;
    const at = { frame: click.frame, x: click.x / film.scale, y: click.y / film.scale };
    const path = bandPath(blobs, at, film.width / film.scale, film.timeOf);
    const track = emptyHandTrack(film.frames);
    path.blobs.forEach((blob, frame) => {
      if (blob === undefined) return;
      track.x[frame] = blob.x * film.scale;
      track.y[frame] = blob.y * film.scale;
      track.presence[frame] = Math.min(1, (2 * blob.area) / path.area);
    });
    if (path.area === 0)
      notes.push(finding('band/not-found', { hand, frame: click.frame }, { hand, frame: click.frame }));
    else if (path.others > 0.2 * film.frames)
      notes.push(finding('band/others', { hand }, { hand, count: path.others, frames: film.frames }));
    return track;
  });
  return scanned(film, 'bands', made, notes);
}

/** At rest nothing moves, so where the hand rests is known only from where it last moved. */
const restPresence = 0.5;

/** The track of movement in regions: it follows the middle of what moves, the faster the more moves. */
export function movementTrack(film: ScannedFilm, found: ByHand<readonly Movement[]>): ScannedTrack {
  const made = each(found, (movements) => {
    const track = emptyHandTrack(film.frames);
    const energies = movements.map(({ energy }) => energy).filter((energy) => energy > 0);
    const brisk = energies.sort((a, b) => a - b)[Math.floor(0.75 * energies.length)] ?? 1;
    let at: { readonly x: number; readonly y: number } | undefined;
    movements.forEach(({ energy, middle }, frame) => {
      const pull = at === undefined ? 1 : Math.min(1, energy / brisk);
      if (middle !== undefined)
        at = {
          x: (at?.x ?? middle.x) * (1 - pull) + middle.x * pull,
          y: (at?.y ?? middle.y) * (1 - pull) + middle.y * pull,
        };
      if (at === undefined) return;
      track.x[frame] = at.x * film.scale;
      track.y[frame] = at.y * film.scale;
      track.presence[frame] = middle === undefined ? restPresence : 1;
    });
    return track;
  });
  return scanned(film, 'energy', made, []);
}

function scanned(
  { frames, width, height }: ScannedFilm,
  source: Track['source'],
  made: ByHand<HandTrack>,
  notes: readonly Finding[],
): ScannedTrack {
  const seen = Object.fromEntries(
    hands.flatMap((hand) => {
      const track = made[hand];
      return track?.x.some((x) => !Number.isNaN(x)) === true ? [[hand, track] as const] : [];
    }),
  );
  const track: Track = { source, frames, width, height, unit: 'pixels', ...seen };
  const none = Object.keys(seen).length === 0 ? [finding('track/no-hand-found')] : [];
  return { track, findings: [...notes, ...none, ...trackFindings(track)] };
}

function each<From, To>(found: ByHand<From>, make: (value: From, hand: Hand) => To | undefined): ByHand<To> {
  return Object.fromEntries(
    hands.flatMap((hand) => {
      const value = found[hand];
      const made = value === undefined ? undefined : make(value, hand);
      return made === undefined ? [] : [[hand, made] as const];
    }),
  );
}
