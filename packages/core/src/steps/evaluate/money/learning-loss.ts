import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { percentText } from '../../../ground/units/index.ts';
import { boundsFault, firstOf, shortText } from '../inputs.ts';

/** How a new method is learned, by the unit model (Crawford): the time of the n-th unit is first · n^(log₂ rate). */
export interface Learning {
  /** Time of the first unit ÷ the time that the method takes once it is learned, 1 or more. */
  readonly firstUnit: number;
  /** To what share each doubling of the number brings the time of a unit, above 0 and below 1; 0.9 for a 90 % curve. */
  readonly rate: number;
}

export interface LearningLoss {
  /** Units until the method takes no longer than its own time; 0 when nothing has to be learned. */
  readonly units: number;
  /** Extra time of the units up to the n-th, in the unit of time given. @param n 0 or more, whole */
  readonly upTo: (n: number) => number;
  /** Of all units that take longer. */
  readonly total: number;
  readonly words: string;
}

const mostUnits = 1e9;

/**
 * What learning costs: every unit takes its time on the curve until that is no longer than the learned time, and from
 * then on the learned time. The loss is the sum of what is above the learned time.
 * @param learned time of a unit once the method is learned, above 0
 */
export function learningLoss(learned: number, learning: Learning): Result<LearningLoss, Finding> {
  const { firstUnit, rate } = learning;
  const fault = firstOf(
    boundsFault('The learned time of a unit', learned, { above: 0 }),
    boundsFault('The first unit, in times of the learned time,', firstUnit, { least: 1, most: 1000 }),
    boundsFault('The learning rate, as a share,', rate, { above: 0, below: 1 }),
  );
  if (fault !== undefined) return fail(fault);
  const exponent = Math.log2(rate);
  const reached = firstUnit ** (-1 / exponent);
  if (!(reached <= mostUnits)) {
    return fail(finding('evaluate/learning-slow', {}, { rate: percentText(rate), most: '1,000,000,000' }));
  }
  // The unit at which the curve meets the learned time loses nothing, so it does not matter on which side it is counted.
  const units = Math.ceil(reached) - 1;
  const upTo = (n: number) => {
    const counted = Math.min(n, units);
    return counted <= 0 ? 0 : learned * (firstUnit * sumOfPowers(counted, exponent) - counted);
  };
  return ok({ units, upTo, total: upTo(units), words: learningWords(learning, units) });
}

function learningWords({ firstUnit, rate }: Learning, units: number): string {
  if (units === 0) return 'Nothing is lost by learning.';
  return `The first unit takes ${shortText(firstUnit)} times as long as it will later, each doubling of the number brings the time of a unit to ${percentText(rate)} (unit model, Crawford), and the time is reached after ${units} units. What the units before that take longer is paid in the year in which they are made.`;
}

/** So many terms are added one by one; the rest is integrated. */
const addedDirectly = 1000;

/**
 * 1^b + 2^b + … + n^b for −40 < b < 0. Beyond the first thousand terms by the formula of Euler and Maclaurin to its second
 * correction, whose remainder is below one part in 10¹².
 */
function sumOfPowers(n: number, b: number): number {
  let sum = 0;
  const direct = Math.min(n, addedDirectly);
  for (let unit = direct; unit >= 1; unit -= 1) sum += unit ** b;
  if (n === direct) return sum;
  const integral =
    Math.abs(b + 1) < 1e-9 ? Math.log(n / direct) : (n ** (b + 1) - direct ** (b + 1)) / (b + 1);
  return sum + integral + (n ** b - direct ** b) / 2 + (b * (n ** (b - 1) - direct ** (b - 1))) / 12;
}
