import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { type Interval, standardNormalQuantile, standardNormalShare } from '../../ground/numerics/index.ts';
import { type AllowanceConvention, allowanceFactor } from './allowances.ts';
import { type Assurance, confidenceFault } from './cycles-needed.ts';
import { firstFault, rangeFault } from './inputs.ts';
import { roundedUp } from './rounding.ts';

/**
 * How close a share must come. `of-the-whole`: so many points of the whole (0.05 is ±5 points, p ± 0.05);
 * `of-the-share`: a part of the share itself (0.1 of a share of 30 % is ±3 points).
 */
export interface SharePrecision {
  readonly kind: 'of-the-whole' | 'of-the-share';
  readonly amount: number;
}

export interface ObservationsNeeded {
  readonly unrounded: number;
  /** Rounded up; 1 or more. */
  readonly needed: number;
  readonly multiplier: number;
}

/**
 * Number of random observations: z²·p·(1 − p)/e² with e in points of the whole, or with e = amount · p.
 * @param share the share that is expected, above 0 and below 1
 */
export function observationsNeeded(
  share: number,
  { kind, amount }: SharePrecision,
  assurance: Assurance,
): Result<ObservationsNeeded, Finding> {
  const fault = firstFault(
    rangeFault('The expected share', share, { above: 0, below: 1 }),
    rangeFault('The precision', amount, { above: 0, below: 1 }),
    assuranceFault(assurance),
  );
  if (fault !== undefined) return fail(fault);
  const multiplier = multiplierOf(assurance);
  const error = kind === 'of-the-whole' ? amount : amount * share;
  const unrounded = (multiplier / error) ** 2 * share * (1 - share);
  if (!(unrounded < Number.MAX_SAFE_INTEGER)) {
    return fail(finding('define/too-many-cycles', {}, { limit: 'what can be counted' }));
  }
  return ok({ unrounded, needed: Math.max(1, roundedUp(unrounded)), multiplier });
}

export interface ShareSeen {
  readonly share: number;
  readonly standardError: number;
  readonly halfWidth: number;
  /** p ± z·√(p(1 − p)/n), kept between 0 and 1. */
  readonly interval: Interval;
  /** After Wilson (1927, from memory): also of use when it was seen rarely or nearly always. */
  readonly wilson: Interval;
  readonly notes: readonly Finding[];
}

/** What observations say about a share. @param seen how often of `count` random observations */
export function shareSeen(seen: number, count: number, assurance: Assurance): Result<ShareSeen, Finding> {
  const fault =
    rangeFault('The number of observations', count, { least: 1, whole: true }) ?? assuranceFault(assurance);
  if (fault !== undefined) return fail(fault);
  if (!(Number.isSafeInteger(seen) && seen >= 0 && seen <= count)) {
    return fail(
      finding('define/seen-of', {}, { seen: Number.isFinite(seen) ? seen : 'no number of', count }),
    );
  }
  const share = seen / count;
  const multiplier = multiplierOf(assurance);
  const confidence = confidenceOf(assurance);
  const standardError = Math.sqrt((share * (1 - share)) / count);
  const halfWidth = multiplier * standardError;
  return ok({
    share,
    standardError,
    halfWidth,
    interval: { low: Math.max(0, share - halfWidth), high: Math.min(1, share + halfWidth), confidence },
    wilson: wilsonOf(share, count, multiplier, confidence),
    notes: Math.min(seen, count - seen) < 5 ? [finding('define/few-seen')] : [],
  });
}

function wilsonOf(share: number, count: number, z: number, confidence: number): Interval {
  const part = z ** 2 / count;
  const middle = (share + part / 2) / (1 + part);
  const half = (z * Math.sqrt((share * (1 - share)) / count + part / (4 * count))) / (1 + part);
  return { low: Math.max(0, middle - half), high: Math.min(1, middle + half), confidence };
}

export interface ShareLimits {
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

/** Control limits p ± multiplier·√(p(1 − p)/n), not below 0 nor above 1. @param multiplier 3 is the custom */
export function shareLimits(share: number, count: number, multiplier = 3): Result<ShareLimits, Finding> {
  const fault = firstFault(
    rangeFault('The share', share, { least: 0, most: 1 }),
    rangeFault('The number of observations', count, { least: 1, whole: true }),
    rangeFault('The multiplier', multiplier, { above: 0, most: 10 }),
  );
  if (fault !== undefined) return fail(fault);
  const standardError = Math.sqrt((share * (1 - share)) / count);
  const half = multiplier * standardError;
  return ok({ standardError, low: Math.max(0, share - half), high: Math.min(1, share + half) });
}

/** Observations of one day or shift. */
export interface SampledDay {
  readonly name: string;
  readonly seen: number;
  readonly count: number;
}

export interface ShareChart {
  readonly share: number;
  readonly days: readonly (SampledDay &
    ShareLimits & { readonly share: number; readonly outside: boolean })[];
}

/** A p-chart: the share of each day against limits about the share of all days together. */
export function shareChart(days: readonly SampledDay[], multiplier = 3): Result<ShareChart, Finding> {
  for (const { seen, count } of days) {
    const fault = rangeFault('The number of observations', count, { least: 1, whole: true });
    if (fault !== undefined) return fail(fault);
    if (!(Number.isSafeInteger(seen) && seen >= 0 && seen <= count)) {
      return fail(
        finding('define/seen-of', {}, { seen: Number.isFinite(seen) ? seen : 'no number of', count }),
      );
    }
  }
  const count = days.reduce((sum, day) => sum + day.count, 0);
  if (count === 0) return fail(finding('define/too-few-readings', {}, { found: 0, least: 1 }));
  const share = days.reduce((sum, day) => sum + day.seen, 0) / count;
  const rows: ShareChart['days'][number][] = [];
  for (const day of days) {
    const limits = shareLimits(share, day.count, multiplier);
    if (!limits.ok) return limits;
    const own = day.seen / day.count;
    const outside = own < limits.value.low - 1e-12 || own > limits.value.high + 1e-12;
    rows.push({ ...day, ...limits.value, share: own, outside });
  }
  return ok({ share, days: rows });
}

export interface SampledWork {
  /** Time over which observations were spread, above 0. */
  readonly time: number;
  /** Share of it at this work, above 0 and up to 1. */
  readonly share: number;
  /** Rating as a share of standard: 1 is standard performance. */
  readonly pace: number;
  /** Pieces finished in that time (pieces, not observations), above 0. */
  readonly pieces: number;
  readonly allowance: number;
  readonly convention: AllowanceConvention;
}

export interface SampledStandard {
  /** Times of one piece, in the unit of the time. */
  readonly observed: number;
  readonly basic: number;
  readonly standard: number;
  readonly convention: AllowanceConvention;
}

/** Standard time of a piece from work sampling: time · share · pace / pieces, with the allowance. */
export function standardFromSampling(work: SampledWork): Result<SampledStandard, Finding> {
  const { time, share, pace, pieces, allowance, convention } = work;
  const fault = firstFault(
    rangeFault('The time', time, { above: 0 }),
    rangeFault('The share', share, { above: 0, most: 1 }),
    rangeFault('The rating as a share of standard', pace, { above: 0, most: 2 }),
    rangeFault('The number of pieces', pieces, { above: 0 }),
  );
  if (fault !== undefined) return fail(fault);
  const factor = allowanceFactor({ share: allowance, convention });
  if (!factor.ok) return factor;
  const observed = (time * share) / pieces;
  const basic = observed * pace;
  return ok({ observed, basic, standard: basic * factor.value, convention });
}

function assuranceFault(assurance: Assurance): Finding | undefined {
  return assurance.kind === 'confidence'
    ? confidenceFault(assurance.confidence)
    : rangeFault('The multiplier', assurance.multiplier, { above: 0, most: 10 });
}

function multiplierOf(assurance: Assurance): number {
  return assurance.kind === 'multiplier'
    ? assurance.multiplier
    : standardNormalQuantile(0.5 + assurance.confidence / 2);
}

function confidenceOf(assurance: Assurance): number {
  return assurance.kind === 'confidence'
    ? assurance.confidence
    : 2 * standardNormalShare(assurance.multiplier) - 1;
}
