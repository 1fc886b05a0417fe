import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { percentText } from '../../../ground/units/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';
import { type BreakEven, breakEven } from './break-even.ts';
import { type LearningLoss, learningLoss } from './learning-loss.ts';
import { discountedPayback, type Payback, payback } from './payback.ts';
import { netPresentValue, rateFault } from './present-value.ts';
import { type ChangeCase, flowsOf } from './yearly-flows.ts';
import { microsecondsAnHour, type YearlySaving, yearlySaving } from './yearly-saving.ts';

export interface ChangeMoney {
  /** Of a year in which the method is learned, without running cost. */
  readonly yearly: YearlySaving;
  /** Extra hours and money of the units that are made while the method is learned, as far as the years reach. */
  readonly learning: { readonly units: number; readonly hours: number; readonly money: number };
  /** What each year brings: saving − running cost − loss by learning. */
  readonly flows: readonly number[];
  readonly netPresentValue: number;
  readonly payback: Payback;
  readonly discountedPayback: Payback;
  readonly breakEven: BreakEven;
  /** The conventions, one sentence each. */
  readonly conventions: readonly string[];
}

/** Hours, money, payback and present value of a change of method. */
export function moneyOf(change: ChangeCase): Result<ChangeMoney, Finding> {
  const fault = changeFault(change);
  if (fault !== undefined) return fail(fault);
  const yearly = yearlySaving(change);
  if (!yearly.ok) return yearly;
  const loss = lossOf(change);
  if (!loss.ok) return loss;
  const flows = flowsOf(change, loss.value);
  const investment = { cost: change.cost, flows };
  const value = netPresentValue(investment, change.discountRate);
  const simple = payback(investment);
  const discounted = discountedPayback(investment, change.discountRate);
  if (!value.ok) return value;
  if (!simple.ok) return simple;
  if (!discounted.ok) return discounted;
  const hours = (loss.value?.upTo(Math.floor(change.unitsAYear * change.years)) ?? 0) / microsecondsAnHour;
  return ok({
    yearly: yearly.value,
    learning: { units: loss.value?.units ?? 0, hours, money: hours * change.hourlyCost },
    flows,
    netPresentValue: value.value,
    payback: simple.value,
    discountedPayback: discounted.value,
    breakEven: breakEven(change, loss.value),
    conventions: conventionsOf(change, loss.value),
  });
}

function lossOf({ after, learning }: ChangeCase): Result<LearningLoss | undefined, Finding> {
  return learning === undefined ? ok(undefined) : learningLoss(after, learning);
}

function changeFault(change: ChangeCase): Finding | undefined {
  return firstOf(
    boundsFault('The cost of the change', change.cost, { least: 0, most: 1e12 }),
    boundsFault('The number of years', change.years, { least: 1, most: 50, whole: true }),
    rateFault(change.discountRate),
    boundsFault('The running cost a year', change.runningCost ?? 0, { least: -1e12, most: 1e12 }),
    boundsFault('The time for a unit before', change.before, { above: 0, most: 1e13 }),
    boundsFault('The time for a unit after', change.after, { above: 0, most: 1e13 }),
    boundsFault('The units a year', change.unitsAYear, { least: 0, most: 1e9 }),
    boundsFault('The cost of an hour', change.hourlyCost, { least: 0, most: 1e6 }),
  );
}

function conventionsOf({ discountRate }: ChangeCase, loss: LearningLoss | undefined): string[] {
  return [
    `Net present value: each year’s saving is taken at the end of its year and discounted at ${percentText(discountRate)} a year; the cost of the change falls at the start.`,
    'Payback: years until the yearly savings add up to the cost, in a straight line within a year; the simple one without discount.',
    'Hours that are saved become money only where the time set free is put to use or no longer paid.',
    ...(loss === undefined ? [] : [loss.words]),
  ];
}
