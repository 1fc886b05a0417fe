import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, type FindingPlace, finding } from '../../ground/findings/index.ts';
import { type Sample, sampleOf } from '../../ground/numerics/index.ts';
import { type RatingScaleId, ratingScales } from '../../ground/tables/index.ts';
import { confidenceFault } from './cycles-needed.ts';
import { foundText, rangeFault, shortNumber, smallest } from './inputs.ts';
import { countedReadings, type Reading, readingFaults } from './reading.ts';

/** Ratings above twice the standard are taken for a slip of the pen; our own limit, no source. */
export const highestPace = 2;

/** A scale by what it calls standard performance, above 0. */
export interface ScaleStandard {
  readonly standard: number;
}

/** The same rating on another scale: standard stays standard. @throws RangeError when a number is not above 0 */
export function convertRating(rating: number, from: ScaleStandard, to: ScaleStandard): number {
  for (const value of [rating, from.standard, to.standard]) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`a rating is above 0, got ${value}`);
  }
  return (rating * to.standard) / from.standard;
}

/** Whether it can be one of its scale: above 0, and not above twice the standard. */
export function isRating(rating: number, scale: RatingScaleId): boolean {
  return rating >= smallest && rating <= ratingScales[scale].standard * highestPace;
}

/** A finding when a rating cannot be one of its scale: 0, below it, or above twice the standard. */
export function ratingFault(
  what: string,
  rating: number,
  scale: RatingScaleId,
  where: FindingPlace = {},
): Finding | undefined {
  if (isRating(rating, scale)) return undefined;
  const { name, standard } = ratingScales[scale];
  const most = standard * highestPace;
  const words = { what, found: foundText(rating), scale: name, standard, most: shortNumber(most) };
  return finding('define/rating', where, words);
}

/**
 * Basic time: observed time · rating / standard rating. In the unit of the observed time.
 * @param observed above 0
 */
export function basicTime(observed: number, rating: number, scale: RatingScaleId): Result<number, Finding> {
  const fault =
    ratingFault('the time', rating, scale) ?? rangeFault('The observed time', observed, { above: 0 });
  if (fault !== undefined) return fail(fault);
  return ok((observed * rating) / ratingScales[scale].standard);
}

/** Where ratings stand that are not given with a reading: for the element, else for the whole study. */
export interface RatingSource {
  readonly scale: RatingScaleId;
  readonly element?: number | undefined;
  readonly study?: number | undefined;
}

export interface BasicReading {
  readonly cycle: number;
  readonly observed: number;
  readonly rating: number;
  readonly basic: number;
}

export interface BasicTimes {
  readonly readings: readonly BasicReading[];
  readonly observed: Sample;
  /** Of the basic times of the single readings. */
  readonly basic: Sample;
  /** Spread of the ratings that were given to the readings, on the scale. */
  readonly ratings: Sample & { readonly least: number; readonly most: number };
  /** The ratings as a person gave them: for each reading, or one for all. */
  readonly ratedBy: 'reading' | 'element' | 'study' | 'mixed';
}

/**
 * Basic times of the counted readings of an element, each with its own rating, else that of the element, else that of
 * the study. When the rating is right and given for each reading, basic times vary less than observed ones.
 */
export function basicTimes(
  element: string,
  readings: readonly Reading[],
  source: RatingSource,
  confidence = 0.95,
): Result<BasicTimes, Finding> {
  const fault = confidenceFault(confidence) ?? readingFaults(element, readings)[0];
  if (fault !== undefined) return fail(fault);
  const counted = countedReadings(readings);
  if (counted.length === 0) return fail(finding('define/no-reading', {}, { element }));
  const rated: BasicReading[] = [];
  for (const { cycle, time, rating: own } of counted) {
    const rating = own ?? source.element ?? source.study;
    if (rating === undefined) return fail(finding('define/no-rating', {}, { element, cycle }));
    if (!isRating(rating, source.scale)) {
      const wrong = ratingFault(`“${element}” in cycle ${cycle}`, rating, source.scale);
      if (wrong !== undefined) return fail(wrong);
    }
    const basic = (time * rating) / ratingScales[source.scale].standard;
    rated.push({ cycle, observed: time, rating, basic });
  }
  const own = counted.filter(({ rating }) => rating !== undefined).length;
  const other = source.element === undefined ? 'study' : 'element';
  return ok({
    readings: rated,
    observed: sampleOf(
      rated.map(({ observed }) => observed),
      confidence,
    ),
    basic: sampleOf(
      rated.map(({ basic }) => basic),
      confidence,
    ),
    ratings: spreadOf(
      rated.map(({ rating }) => rating),
      confidence,
    ),
    ratedBy: own === counted.length ? 'reading' : own === 0 ? other : 'mixed',
  });
}

function spreadOf(ratings: readonly number[], confidence: number): BasicTimes['ratings'] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const rating of ratings) {
    least = Math.min(least, rating);
    most = Math.max(most, rating);
  }
  return { ...sampleOf(ratings, confidence), least, most };
}
