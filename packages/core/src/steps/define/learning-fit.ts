import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import type { Interval } from '../../ground/numerics/index.ts';
import { confidenceFault } from './cycles-needed.ts';
import { largest, smallest } from './inputs.ts';
import type { LearningCurve, LearningModel } from './learning.ts';
import { learningModelWords } from './learning.ts';
import { lineOf } from './line.ts';

/** For the unit model the time of this unit, for the cumulative average that of all units up to this one. */
export interface LearningPoint {
  /** 1 or more, whole. */
  readonly unit: number;
  readonly time: number;
}

/** An interval of the exponent as wide as this says nothing: from a millionth to a thousandfold with each doubling. */
const widestExponents = 30;

export interface LearningFit extends LearningCurve {
  readonly exponent: number;
  /** Interval of the rate; not symmetric about it. */
  readonly rateInterval: Interval;
  /** Standard deviation of ln time about the line; about a share of the time. */
  readonly deviation: number;
  /** Share of the squares of the logarithms that the line explains, 0 to 1. */
  readonly explained: number;
  readonly points: number;
  readonly words: string;
}

/**
 * The learning curve through times: least squares of ln time over ln unit, with Student's t for the slope and
 * 2^slope for the rate. The fit may give a rate above 100 %, which says that times rise.
 * @param points three or more, at two different units or more
 */
export function fitLearning(
  model: LearningModel,
  points: readonly LearningPoint[],
  confidence = 0.95,
): Result<LearningFit, Finding> {
  const usable = points.every(
    ({ unit, time }) => Number.isSafeInteger(unit) && unit >= 1 && time >= smallest && time <= largest,
  );
  const places = new Set(points.map(({ unit }) => unit)).size;
  const fault =
    confidenceFault(confidence) ??
    (usable && points.length >= 3 && places >= 2 ? undefined : finding('define/learning-points'));
  if (fault !== undefined) return fail(fault);
  const line = lineOf(
    points.map(({ unit }) => Math.log(unit)),
    points.map(({ time }) => Math.log(time)),
    confidence,
  );
  const { low, high } = line.slopeInterval;
  if (!(high - low < widestExponents)) return fail(finding('define/learning-scatter'));
  return ok({
    model,
    first: Math.exp(line.intercept),
    rate: 2 ** line.slope,
    exponent: line.slope,
    rateInterval: { low: 2 ** low, high: 2 ** high, confidence },
    deviation: line.deviation,
    explained: line.explained ?? 1,
    points: points.length,
    words: `Fitted as the ${learningModelWords[model]}.`,
  });
}
