import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import {
  type Interval,
  sampleOf,
  standardNormalQuantile,
  studentQuantile,
} from '../../ground/numerics/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { confidenceFault } from './cycles-needed.ts';
import { largest, rangeFault, smallest } from './inputs.ts';
import { type AllowancePlan, type StandardTime, standardTime, type TimedElement } from './standard-time.ts';

/** An element with the basic times of its readings (of a process element the observed ones), each with its cycle. */
export interface MeasuredElement extends Omit<TimedElement, 'basic'> {
  readonly readings: readonly { readonly cycle: number; readonly basic: number }[];
}

export interface Uncertainty {
  /** Above 0 and below 1. */
  readonly confidence: number;
  /**
   * Standard deviation of the rater's level, as a share of the rating: an error that is common to all rated elements of
   * the study and that no number of readings makes smaller. 0 carries none.
   */
  readonly ratingError: number;
}

export interface StandardInterval {
  readonly interval: Interval;
  /** Standard errors in the unit of the standard time. */
  readonly samplingError: number;
  readonly ratingError: number;
  /** Degrees of freedom of the t that was used; without end when only the rating error counts. */
  readonly degrees: number | undefined;
  readonly words: string;
}

export interface MeasuredStandard {
  readonly standard: StandardTime;
  /** Undefined when an element has one reading; a note says so. */
  readonly interval: StandardInterval | undefined;
  readonly notes: readonly Finding[];
}

/**
 * The standard time of measured elements with an interval that carries sampling and rating error.
 * Sampling: each reading moves the standard time by weight · (reading − mean) / n; what the readings of one cycle move
 * is added before it is squared, so elements that vary together are told. Rating: the level of the rater multiplies all
 * rated time. Both are added as squares; t has the degrees of freedom after Satterthwaite (from memory), never more
 * than the cycles give. First order only; the bootstrap beside it is the check.
 */
export function measuredStandard(
  elements: readonly MeasuredElement[],
  plan: AllowancePlan,
  uncertainty: Uncertainty,
): Result<MeasuredStandard, Finding> {
  const fault = uncertaintyFault(uncertainty) ?? readingsFault(elements);
  if (fault !== undefined) return fail(fault);
  const timed = elements.map((element) => {
    const { readings: _, ...facts } = element;
    return { ...facts, basic: meanBasic(element) };
  });
  const standard = standardTime(timed, plan);
  if (!standard.ok) return standard;
  const thin = elements.find(({ readings }) => readings.length < 2);
  if (thin !== undefined) {
    const notes = [...standard.value.notes, finding('define/no-interval', {}, { element: thin.name })];
    return ok({ standard: standard.value, interval: undefined, notes });
  }
  const interval = intervalOf(elements, standard.value, plan, uncertainty);
  return ok({ standard: standard.value, interval, notes: standard.value.notes });
}

/** A finding when confidence or rating error cannot be one. */
export function uncertaintyFault({ confidence, ratingError }: Uncertainty): Finding | undefined {
  return (
    confidenceFault(confidence) ??
    rangeFault('The rating error as a share of the rating', ratingError, { least: 0, most: 0.5 })
  );
}

function readingsFault(elements: readonly MeasuredElement[]): Finding | undefined {
  for (const { name, readings } of elements) {
    if (readings.length === 0) return finding('define/no-reading', {}, { element: name });
    for (const { cycle, basic } of readings) {
      if (basic >= smallest && basic <= largest) continue;
      const wrong = rangeFault(`The basic time of “${name}” in cycle ${cycle}`, basic, { above: 0 });
      if (wrong !== undefined) return wrong;
    }
  }
  return undefined;
}

function meanBasic({ readings }: MeasuredElement): number {
  return sampleOf(readings.map(({ basic }) => basic)).mean;
}

/** What the standard time gains when the basic time of each element grows by one unit. */
export function weightsOf(standard: StandardTime, plan: AllowancePlan): readonly number[] {
  const insideSets = standard.parts.inside > standard.parts.process;
  return standard.elements.map(({ work, frequency = 1, factor }) => {
    const idle = work === 'inside' ? !insideSets : work === 'process' && insideSets;
    return idle ? 0 : frequency * factor * (1 + plan.contingency);
  });
}

function intervalOf(
  elements: readonly MeasuredElement[],
  standard: StandardTime,
  plan: AllowancePlan,
  { confidence, ratingError }: Uncertainty,
): StandardInterval {
  const weights = weightsOf(standard, plan);
  const { variance: sampling, degrees: samplingDegrees } = samplingVariance(elements, weights);
  const rated = standard.elements.reduce(
    (sum, { work, basic }, index) => sum + (work === 'process' ? 0 : (weights[index] ?? 0) * basic),
    0,
  );
  const rating = (ratingError * rated) ** 2;
  const total = sampling + rating;
  const degrees = sampling === 0 ? undefined : (samplingDegrees * total ** 2) / sampling ** 2;
  const p = 0.5 + confidence / 2;
  const multiplier = degrees === undefined ? standardNormalQuantile(p) : studentQuantile(p, degrees);
  const half = multiplier * Math.sqrt(total);
  return {
    interval: { low: Math.max(0, standard.standard - half), high: standard.standard + half, confidence },
    samplingError: Math.sqrt(sampling),
    ratingError: Math.sqrt(rating),
    degrees,
    words: methodWords(confidence, ratingError),
  };
}

function samplingVariance(elements: readonly MeasuredElement[], weights: readonly number[]) {
  const moves = new Map<number, number>();
  let [sum, satterthwaite] = [0, 0];
  for (const [index, { readings }] of elements.entries()) {
    const n = readings.length;
    const weight = weights[index] ?? 0;
    const { mean, deviation = 0 } = sampleOf(readings.map(({ basic }) => basic));
    const scale = (weight / n) * Math.sqrt(n / (n - 1));
    for (const { cycle, basic } of readings) {
      moves.set(cycle, (moves.get(cycle) ?? 0) + scale * (basic - mean));
    }
    const variance = (weight * deviation) ** 2 / n;
    sum += variance;
    satterthwaite += variance ** 2 / (n - 1);
  }
  let variance = 0;
  for (const move of moves.values()) variance += move ** 2;
  const alone = satterthwaite === 0 ? moves.size - 1 : sum ** 2 / satterthwaite;
  return { variance, degrees: Math.max(1, Math.min(alone, moves.size - 1)) };
}

function methodWords(confidence: number, ratingError: number): string {
  const rating =
    ratingError === 0
      ? 'No error of the rating is carried in it.'
      : `An error of ${percentText(ratingError)} (one standard deviation) in the level of the rating is carried in it; more readings do not make that smaller.`;
  return `${percentText(confidence, 0)} interval: the spread of the readings over the cycles, carried through rating, frequency and allowance (first order, Student’s t). ${rating} The allowance itself is taken as agreed, without error.`;
}
