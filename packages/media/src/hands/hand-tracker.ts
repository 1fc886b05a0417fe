import { type HandModels, handInput } from './hand-models.ts';
import { squareOfLandmarks, squareOfPalm } from './hand-square.ts';
import { palmInput } from './palm-anchors.ts';
import { findPalms, type Palm } from './palms.ts';
import { type Picture, type Square, sampleSquare, wholePicture } from './picture.ts';
import { isSameHand, middleOf, type Sighting, sightingOf } from './sighting.ts';

export interface TrackerSettings {
  /** Score from which a palm is looked at, 0 to 1. */
  readonly palm: number;
  /** Presence from which a hand counts, 0 to 1. */
  readonly presence: number;
  /** Palms are sought until so many hands are followed. */
  readonly wanted: number;
  /** No more hands than these are followed. */
  readonly most: number;
  /** With no hand followed palms are sought once in so many frames, and at once when a hand was lost. */
  readonly seekEvery: number;
  /** With some hands followed, but fewer than wanted, palms are sought once in so many frames. */
  readonly seekMoreEvery: number;
  /** With enough hands followed, palms are still sought once in so many frames, so that one more is noticed. */
  readonly lookEvery: number;
  /** A hand that is found is followed back through so many frames before it, as far as it can be. */
  readonly back: number;
  /** A palm in which the second model saw no hand is not looked at again for so many frames. */
  readonly refused: number;
  /** Every other search for palms looks at the picture with a margin of this share of its side around it. */
  readonly margin: number;
}

/**
 * Found by trying on real films: many palms are looked at, for the second model tells well whether there is a hand
 * (`docs/decisions/13-hand-landmarks.md`).
 */
export const usualSettings: TrackerSettings = {
  palm: 0.2,
  presence: 0.6,
  wanted: 2,
  most: 4,
  seekEvery: 2,
  seekMoreEvery: 4,
  lookEvery: 15,
  back: 20,
  refused: 8,
  margin: 0.3,
};

interface Followed {
  readonly trail: number;
  readonly square: Square;
}

/** A palm that was none, in pixels of the picture. */
interface Refused {
  readonly frame: number;
  readonly x: number;
  readonly y: number;
  readonly side: number;
}

/** One of the last frames, in which a hand may still be found afterwards. */
interface Kept {
  readonly frame: number;
  readonly picture: Picture;
  readonly seen: Sighting[];
}

/**
 * Follows the hands through the frames of a film, given one after another. A hand that is found in one frame is followed
 * forwards from then on and backwards through the last frames: a film can be read both ways, so a hand need not be found
 * anew in every frame in which it is blurred or cut off.
 */
export class HandTracker {
  readonly #models: HandModels;
  readonly #settings: TrackerSettings;
  readonly #palmPixels = new Float32Array(palmInput * palmInput * 3);
  readonly #handPixels = new Float32Array(handInput * handInput * 3);
  #followed: readonly Followed[] = [];
  #kept: Kept[] = [];
  #refused: Refused[] = [];
  #trails = 0;
  #searches = 0;
  #sinceSearch = Number.POSITIVE_INFINITY;

  constructor(models: HandModels, settings: TrackerSettings = usualSettings) {
    this.#models = models;
    this.#settings = settings;
  }

  /** The hands in the next picture, and those that come to light in earlier ones by it; each sighting is given once. */
  async next(frame: number, picture: Picture): Promise<readonly Sighting[]> {
    const seen: Sighting[] = [];
    for (const { trail, square } of this.#followed) await this.#look(frame, trail, picture, square, seen);
    const lost = seen.length < this.#followed.length;
    const earlier = this.#mustSeek(seen.length, lost) ? await this.#seek(frame, picture, seen) : [];
    this.#followed = seen.map(({ trail, landmarks }) => ({ trail, square: squareOfLandmarks(landmarks) }));
    this.#kept.push({ frame, picture, seen });
    if (this.#kept.length > this.#settings.back) this.#kept.shift();
    return [...seen, ...earlier];
  }

  /** The palms in a picture, best first. */
  async palms(picture: Picture, margin = 0): Promise<readonly Palm[]> {
    const square = wholePicture(picture, margin);
    sampleSquare(picture, square, palmInput, 'black', this.#palmPixels);
    const { boxes, scores } = await this.#models.palms(this.#palmPixels);
    return findPalms(boxes, scores, square, this.#settings.palm);
  }

  #mustSeek(seen: number, lost: boolean): boolean {
    const { wanted, seekEvery, seekMoreEvery, lookEvery } = this.#settings;
    this.#sinceSearch += 1;
    if (seen >= wanted) return this.#sinceSearch >= lookEvery;
    return lost || this.#sinceSearch >= (seen === 0 ? seekEvery : seekMoreEvery);
  }

  /** Looks for more hands; gives those that are found in earlier frames. */
  async #seek(frame: number, picture: Picture, seen: Sighting[]): Promise<readonly Sighting[]> {
    this.#sinceSearch = 0;
    this.#searches += 1;
    const palms = await this.palms(picture, this.#searches % 2 === 0 ? this.#settings.margin : 0);
    const earlier: Sighting[] = [];
    this.#refused = this.#refused.filter((one) => frame - one.frame < this.#settings.refused);
    for (const palm of palms) {
      if (seen.length >= this.#settings.most) break;
      if (seen.some((hand) => isInHand(palm, hand))) continue;
      if (this.#refused.some((one) => isSamePlace(palm, one))) continue;
      const found = await this.#look(frame, this.#trails + 1, picture, squareOfPalm(palm), seen);
      if (found === undefined) {
        this.#refused.push({ frame, ...placeOf(palm) });
        continue;
      }
      this.#trails += 1;
      earlier.push(...(await this.#followBack(found)));
    }
    return earlier;
  }

  async #followBack(from: Sighting): Promise<readonly Sighting[]> {
    const found: Sighting[] = [];
    let { landmarks } = from;
    for (const { frame, picture, seen } of this.#kept.toReversed()) {
      if (seen.length >= this.#settings.most) break;
      const hand = await this.#look(frame, from.trail, picture, squareOfLandmarks(landmarks), seen);
      if (hand === undefined) break;
      found.push(hand);
      ({ landmarks } = hand);
    }
    return found;
  }

  /** Looks for a hand in the square; one that is there and not among the seen yet is put to them. */
  async #look(
    frame: number,
    trail: number,
    picture: Picture,
    square: Square,
    seen: Sighting[],
  ): Promise<Sighting | undefined> {
    sampleSquare(picture, square, handInput, 'edge', this.#handPixels);
    const output = await this.#models.hand(this.#handPixels);
    if (output.presence < this.#settings.presence) return undefined;
    const sighting = sightingOf(frame, trail, square, output);
    if (seen.some((other) => isSameHand(other, sighting))) return undefined;
    seen.push(sighting);
    return sighting;
  }
}

const placeOf = ({ x, y, width, height }: Palm) => ({
  x: x + width / 2,
  y: y + height / 2,
  side: Math.max(width, height),
});

/** Whether two palms lie nearer than a third of their side and are about as large. */
function isSamePlace(palm: Palm, { x, y, side }: Refused): boolean {
  const place = placeOf(palm);
  const far = Math.hypot(place.x - x, place.y - y) > Math.min(place.side, side) / 3;
  return !far && Math.max(place.side / side, side / place.side) < 1.5;
}

/** Whether the middle of a palm lies in the palm of a hand that is followed already. */
function isInHand(palm: Palm, hand: Sighting): boolean {
  const middle = middleOf(hand);
  const [x, y] = [palm.x + palm.width / 2, palm.y + palm.height / 2];
  return Math.hypot(x - middle.x, y - middle.y) < 0.5 * hand.palm;
}
