import { type Hand, hands } from '@evenhand/core/ground/study';
import type { Picture } from '../hands/picture.ts';
import { type Blob, blobsOf } from './blobs.ts';
import { greyOf, type Movement, movementIn } from './movement.ts';
import type { ScanWish } from './scan-messages.ts';
import { bandTrack, movementTrack, type ScannedFilm, type ScannedTrack } from './scan-tracks.ts';

/** Looks at one frame after the other, and makes a track in the end. A frame that cannot be read is a gap. */
export interface Scanner {
  readonly next: (picture: Picture | undefined) => void;
  readonly end: () => ScannedTrack;
}

/** Fewer pixels of the colour than this are noise of the camera. */
const leastBlob = 6;

export function scanner(film: ScannedFilm, wish: ScanWish): Scanner {
  return wish.kind === 'bands' ? bandScanner(film, wish) : movementScanner(film, wish);
}

function bandScanner(film: ScannedFilm, { bands }: Extract<ScanWish, { kind: 'bands' }>): Scanner {
  const found: Partial<Record<Hand, (readonly Blob[])[]>> = {};
  const there = hands.filter((hand) => bands[hand] !== undefined);
  for (const hand of there) found[hand] = [];
  return {
    next: (picture) => {
      for (const hand of there) {
        const colour = bands[hand]?.colour;
        found[hand]?.push(
          picture === undefined || colour === undefined ? [] : blobsOf(picture, colour, leastBlob),
        );
      }
    },
    end: () => bandTrack(film, found, Object.fromEntries(there.map((hand) => [hand, bands[hand]?.click]))),
  };
}

function movementScanner(film: ScannedFilm, { regions }: Extract<ScanWish, { kind: 'energy' }>): Scanner {
  const found: Partial<Record<Hand, Movement[]>> = {};
  const there = hands.filter((hand) => (regions[hand]?.length ?? 0) > 0);
  for (const hand of there) found[hand] = [];
  const small = (hand: Hand) =>
    (regions[hand] ?? []).map(({ x, y, width, height }) => ({
      x: x / film.scale,
      y: y / film.scale,
      width: width / film.scale,
      height: height / film.scale,
    }));
  let before: Uint8Array | undefined;
  return {
    next: (picture) => {
      const grey = picture === undefined ? undefined : greyOf(picture);
      for (const hand of there)
        found[hand]?.push(
          before === undefined || grey === undefined || picture === undefined
            ? { energy: 0, middle: undefined }
            : movementIn(before, grey, picture, small(hand)),
        );
      before = grey;
    },
    end: () => movementTrack(film, found),
  };
}
