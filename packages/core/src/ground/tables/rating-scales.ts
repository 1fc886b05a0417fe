import type { SourceId } from './sources.ts';

/**
 * A scale on which the pace of work is rated. `standard` is the rating of standard performance (walking 4 miles an hour
 * on the flat), `normal` that of the pace a quarter slower, without an incentive. Ratings are given to the nearest 5.
 */
export interface RatingScaleFacts {
  readonly name: string;
  readonly standard: number;
  readonly normal: number;
  readonly source: SourceId;
}

/** Four scales in use; the upper figure of each is a third above the lower one, 133 being rounded as it is printed. */
export const ratingScales = {
  '0-100': { name: '0–100 standard scale (BS 3138)', standard: 100, normal: 75, source: 'rating-scales' },
  '60-80': { name: '60–80 scale', standard: 80, normal: 60, source: 'rating-scales' },
  '75-100': { name: '75–100 scale', standard: 100, normal: 75, source: 'rating-scales' },
  '100-133': { name: '100–133 scale', standard: 133, normal: 100, source: 'rating-scales' },
} as const satisfies Readonly<Record<string, RatingScaleFacts>>;

export type RatingScaleId = keyof typeof ratingScales;
