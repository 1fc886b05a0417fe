import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { firstFault, rangeFault } from './inputs.ts';

/**
 * What falls along the line on double-logarithmic paper.
 * `unit` (Crawford): the time of the n-th unit is first · n^b.
 * `cumulative-average` (Wright): the average of the first n units is first · n^b.
 * b = log₂ rate. The same rate gives far shorter times in the second than in the first.
 */
export type LearningModel = 'unit' | 'cumulative-average';

export const learningModelWords: Readonly<Record<LearningModel, string>> = {
  unit: 'unit model (Crawford): each doubling of the number brings the time of a unit to the rate',
  'cumulative-average':
    'cumulative average model (Wright): each doubling of the number brings the average of all units to the rate',
};

export interface LearningCurve {
  readonly model: LearningModel;
  /** Time of the first unit, above 0, in any unit of time. */
  readonly first: number;
  /** 0.8 for an 80 % curve; above 0 and up to 1, for the cumulative average above 0.5. */
  readonly rate: number;
}

/** b = log₂ rate; 0 or below. */
export function learningExponent(rate: number): number {
  return Math.log2(rate);
}

/** A finding when a curve cannot be one. */
export function curveFault({ model, first, rate }: LearningCurve): Finding | undefined {
  const fault = firstFault(
    rangeFault('The time of the first unit', first, { above: 0 }),
    rangeFault('The learning rate', rate, { above: 0, most: 1 }),
  );
  if (fault !== undefined) return fault;
  return model === 'cumulative-average' && rate <= 0.5
    ? finding('define/learning-average', {}, { rate: percentText(rate) })
    : undefined;
}

/** Units are counted to here; beyond it the sum would say nothing that its parts do not. */
const mostUnits = 1e12;

/** Time of the n-th unit. @param unit 1 or more, whole */
export function unitTime(curve: LearningCurve, unit: number): Result<number, Finding> {
  const fault = curveFault(curve) ?? unitFault('The unit', unit);
  return fault === undefined ? ok(plainUnitTime(curve, unit)) : fail(fault);
}

/** Total time of the units from one to another, both counted. */
export function batchTime(curve: LearningCurve, from: number, to: number): Result<number, Finding> {
  const fault =
    curveFault(curve) ??
    unitFault('The first unit of the batch', from) ??
    rangeFault('The last unit of the batch', to, { least: from, most: mostUnits, whole: true });
  return fault === undefined ? ok(plainBatchTime(curve, from, to)) : fail(fault);
}

/** Total and average time of all units up to the n-th. */
export function timeUpTo(
  curve: LearningCurve,
  unit: number,
): Result<{ readonly total: number; readonly average: number }, Finding> {
  const total = batchTime(curve, 1, unit);
  return total.ok ? ok({ total: total.value, average: total.value / unit }) : total;
}

/** Time of the first unit when the time of a later one is known (of the unit itself, in both models). */
export function firstFrom(
  { model, rate }: Omit<LearningCurve, 'first'>,
  unit: number,
  time: number,
): Result<number, Finding> {
  const fault =
    curveFault({ model, rate, first: 1 }) ??
    unitFault('The unit', unit) ??
    rangeFault('The time of the unit', time, { above: 0 });
  return fault === undefined ? ok(time / plainUnitTime({ model, rate, first: 1 }, unit)) : fail(fault);
}

/**
 * The unit at which the time has come down to a wanted one, as a number with a fraction; the next whole unit is the first
 * that keeps within it.
 * @param time above 0; where it is not below the time of the first unit the answer is 1
 */
export function unitReaching(curve: LearningCurve, time: number): Result<number, Finding> {
  const fault = curveFault(curve) ?? rangeFault('The wanted time', time, { above: 0 });
  if (fault !== undefined) return fail(fault);
  if (time >= curve.first) return ok(1);
  if (curve.rate === 1) return fail(finding('define/learning-never'));
  const unit =
    curve.model === 'unit'
      ? (time / curve.first) ** (1 / learningExponent(curve.rate))
      : averageReaching(curve, time);
  return unit <= mostUnits
    ? ok(unit)
    : fail(finding('define/learning-far', {}, { most: '1,000,000,000,000' }));
}

/** Learning rate from the times (or averages) at two places of one line: b = ln(t₂/t₁)/ln(n₂/n₁). */
export function rateFromTwo(
  one: { readonly unit: number; readonly time: number },
  two: { readonly unit: number; readonly time: number },
): Result<{ readonly rate: number; readonly exponent: number }, Finding> {
  const fault = firstFault(
    unitFault('The first of the two units', one.unit),
    rangeFault('The second of the two units', two.unit, { above: one.unit, most: mostUnits, whole: true }),
    rangeFault('The first of the two times', one.time, { above: 0 }),
    rangeFault('The second of the two times', two.time, { above: 0 }),
  );
  if (fault !== undefined) return fail(fault);
  const exponent = Math.log(two.time / one.time) / Math.log(two.unit / one.unit);
  return ok({ rate: 2 ** exponent, exponent });
}

/**
 * The sum of n^b between two units as the area under the line from half a unit before to half a unit after it:
 * first/(1 + b)·((to + ½)^(1+b) − (from − ½)^(1+b)). Too high by 0.3 % from the first unit on, exact to ten digits
 * from the ten-thousandth. Unit model only.
 */
export function nearBatchTime(first: number, rate: number, from: number, to: number): number {
  const power = 1 + learningExponent(rate);
  if (Math.abs(power) < 1e-12) return first * Math.log((to + 0.5) / (from - 0.5));
  return (first / power) * ((to + 0.5) ** power - (from - 0.5) ** power);
}

function unitFault(what: string, unit: number): Finding | undefined {
  return rangeFault(what, unit, { least: 1, most: mostUnits, whole: true });
}

function plainUnitTime({ model, first, rate }: LearningCurve, unit: number): number {
  const exponent = learningExponent(rate);
  return model === 'unit' ? first * unit ** exponent : first * powerStep(unit, 1 + exponent);
}

/** n^p − (n − 1)^p without the loss of digits that the difference of two large numbers brings. */
function powerStep(unit: number, power: number): number {
  if (unit <= 1) return unit ** power;
  return -(unit ** power) * Math.expm1(power * Math.log1p(-1 / unit));
}

/** Units that are added one by one; beyond them the area under the line is exact to ten digits. */
const addedSingly = 20_000;

function plainBatchTime(curve: LearningCurve, from: number, to: number): number {
  const { model, first, rate } = curve;
  const exponent = learningExponent(rate);
  if (model === 'cumulative-average') {
    return from === to
      ? plainUnitTime(curve, to)
      : first * (to ** (1 + exponent) - (from - 1) ** (1 + exponent));
  }
  const single = Math.min(to, Math.max(from - 1, addedSingly));
  let sum = 0;
  for (let unit = single; unit >= from; unit--) sum += first * unit ** exponent;
  return single < to ? sum + nearBatchTime(first, rate, single + 1, to) : sum;
}

/** Unit times of the cumulative average fall as n grows; found by halving. */
function averageReaching(curve: LearningCurve, time: number): number {
  let [low, high] = [1, 2];
  while (plainUnitTime(curve, high) > time && high < 2 * mostUnits) [low, high] = [high, high * 2];
  for (let step = 0; step < 200 && high - low > 1e-12 * high; step++) {
    const middle = (low + high) / 2;
    if (plainUnitTime(curve, middle) > time) low = middle;
    else high = middle;
  }
  return high;
}
