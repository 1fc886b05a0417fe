import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { standardNormalQuantile, studentQuantile } from '../../ground/numerics/index.ts';
import { firstFault, rangeFault } from './inputs.ts';
import { roundedUp } from './rounding.ts';

/** How close the mean must come: a share of the mean (0.05 is ±5 %) or an amount in the unit of the readings. */
export type Precision =
  | { readonly kind: 'relative'; readonly share: number }
  | { readonly kind: 'absolute'; readonly amount: number };

/** How sure: a confidence, or the multiplier of the standard error that a book prints for it (1.96, 2, 2.58). */
export type Assurance =
  | { readonly kind: 'confidence'; readonly confidence: number }
  | { readonly kind: 'multiplier'; readonly multiplier: number };

/**
 * Which form:
 * `population`: the 40-formula, that is multiplier over precision times the population deviation (sum of squares over n);
 * `normal`: multiplier of the normal distribution times the sample deviation (n − 1);
 * `student`: Student's t with the degrees of freedom of the pilot times the sample deviation;
 * `student-iterated`: Student's t with the degrees of freedom of the number that comes out itself.
 */
export type CyclesForm = 'population' | 'normal' | 'student' | 'student-iterated';

/** What is known of a pilot: n readings with their mean and their sample deviation (n − 1), in one unit. */
export interface Pilot {
  readonly n: number;
  readonly mean: number;
  readonly deviation: number;
}

/**
 * How a form is made sure at a confidence: the 40-formula with 2 standard errors at 95 %, as it is printed, everything else
 * with the quantile of its distribution.
 */
export function assuranceOf(form: CyclesForm, confidence: number): Assurance {
  return form === 'population' && confidence === 0.95
    ? { kind: 'multiplier', multiplier: 2 }
    : { kind: 'confidence', confidence };
}

export interface CyclesWish {
  readonly form: CyclesForm;
  readonly precision: Precision;
  readonly assurance: Assurance;
}

export interface CyclesNeeded {
  /** As the formula gives it, 0 when all readings of the pilot are equal. */
  readonly unrounded: number;
  /** Rounded up; 1 or more, 2 or more where t is iterated. */
  readonly needed: number;
  /** How many readings are wanting beyond the pilot; 0 or more. */
  readonly more: number;
  /** z or t that was used. */
  readonly multiplier: number;
  /** The deviation that was used, population or sample as the form says, in the unit of the readings. */
  readonly deviation: number;
  /** Half the width of the interval that is wanted, in the unit of the readings. */
  readonly halfWidth: number;
  /** What limits the conclusion. */
  readonly notes: readonly Finding[];
}

/**
 * How many readings an element needs: (multiplier · deviation / half width)².
 * The 40-formula (40·√(n·Σx² − (Σx)²)/Σx)² is the form `population` with multiplier 2 and ±5 %; after the ILO and,
 * with t, after Niebel (both in the words of others; the sources stand at the reference tests).
 */
export function cyclesNeeded(pilot: Pilot, wish: CyclesWish): Result<CyclesNeeded, Finding> {
  const fault = pilotFault(pilot) ?? wishFault(wish);
  if (fault !== undefined) return fail(fault);
  const halfWidth = halfWidthOf(wish.precision, pilot.mean);
  const deviation =
    wish.form === 'population' ? pilot.deviation * Math.sqrt((pilot.n - 1) / pilot.n) : pilot.deviation;
  const { unrounded, multiplier } = solve(pilot, wish, deviation / halfWidth);
  if (!(unrounded < mostCycles)) {
    return fail(finding('define/too-many-cycles', {}, { limit: 'what can be counted' }));
  }
  const needed = Math.max(wish.form === 'student-iterated' ? 2 : 1, roundedUp(unrounded));
  const notes = pilot.deviation === 0 ? [finding('define/no-spread', {}, { count: pilot.n })] : [];
  return ok({
    unrounded,
    needed,
    more: Math.max(0, needed - pilot.n),
    multiplier,
    deviation,
    halfWidth,
    notes,
  });
}

export interface PrecisionReached {
  /** Half the width of the interval of the mean, in the unit of the readings. */
  readonly halfWidth: number;
  /** The same as a share of the mean. */
  readonly share: number;
  readonly multiplier: number;
}

/** How close the mean of a pilot is known already: t·s/√n, Student's t, two-sided. */
export function precisionReached(pilot: Pilot, confidence = 0.95): Result<PrecisionReached, Finding> {
  const fault = pilotFault(pilot) ?? confidenceFault(confidence);
  if (fault !== undefined) return fail(fault);
  const multiplier = studentQuantile(0.5 + confidence / 2, pilot.n - 1);
  const halfWidth = (multiplier * pilot.deviation) / Math.sqrt(pilot.n);
  return ok({ halfWidth, share: halfWidth / pilot.mean, multiplier });
}

/** More readings than this cannot be counted out one by one. */
const mostCycles = 1e15;

/** A finding when a confidence is not a share below 1, such as 95 where 0.95 is meant. */
export function confidenceFault(confidence: number): Finding | undefined {
  return rangeFault('The confidence', confidence, { least: 0.01, most: 0.999999 });
}

function solve({ n }: Pilot, { form, assurance }: CyclesWish, ratio: number) {
  if (form === 'student-iterated') return iterated(assurance, ratio);
  const multiplier = multiplierOf(assurance, form === 'student' ? n - 1 : undefined);
  return { multiplier, unrounded: (multiplier * ratio) ** 2 };
}

/** z when no degrees of freedom are given, else t with them. */
function multiplierOf(assurance: Assurance, degrees: number | undefined): number {
  if (assurance.kind === 'multiplier') return assurance.multiplier;
  const p = 0.5 + assurance.confidence / 2;
  return degrees === undefined ? standardNormalQuantile(p) : studentQuantile(p, degrees);
}

/**
 * Where n meets (t(n − 1)·s/half width)². The right side falls as n grows, so there is one such n and every n above it
 * is enough; found by halving to the last digit. Below two readings there is no t, so two are where it begins.
 */
function iterated(assurance: Assurance, ratio: number) {
  const wanted = (n: number) => (multiplierOf(assurance, n - 1) * ratio) ** 2;
  if (!(wanted(2) > 2)) return { unrounded: wanted(2), multiplier: multiplierOf(assurance, 1) };
  let [low, high] = [2, 4];
  while (wanted(high) > high && high < mostCycles) [low, high] = [high, high * 2];
  if (high >= mostCycles)
    return { unrounded: Number.POSITIVE_INFINITY, multiplier: multiplierOf(assurance, high) };
  for (let step = 0; step < 100 && high - low > 1e-12 * high; step++) {
    const middle = (low + high) / 2;
    if (wanted(middle) > middle) low = middle;
    else high = middle;
  }
  return { unrounded: high, multiplier: multiplierOf(assurance, high - 1) };
}

function halfWidthOf(precision: Precision, mean: number): number {
  return precision.kind === 'relative' ? precision.share * mean : precision.amount;
}

function pilotFault({ n, mean, deviation }: Pilot): Finding | undefined {
  if (Number.isSafeInteger(n) && n < 2) return finding('define/too-few-readings', {}, { found: n, least: 2 });
  return firstFault(
    rangeFault('The number of readings', n, { least: 2, whole: true }),
    rangeFault('The mean', mean, { above: 0 }),
    rangeFault('The standard deviation', deviation, { least: 0 }),
  );
}

function wishFault({ form, precision, assurance }: CyclesWish): Finding | undefined {
  if (assurance.kind === 'multiplier' && (form === 'student' || form === 'student-iterated')) {
    return finding('define/multiplier-with-t');
  }
  return firstFault(
    precision.kind === 'relative'
      ? rangeFault('The precision as a share of the mean', precision.share, { above: 0, below: 1 })
      : rangeFault('The precision', precision.amount, { above: 0 }),
    assurance.kind === 'confidence'
      ? confidenceFault(assurance.confidence)
      : rangeFault('The multiplier', assurance.multiplier, { above: 0, most: 10 }),
  );
}
