import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { firstOf, foundText } from '../inputs.ts';
import { type ChangeMoney, moneyOf } from './change-case.ts';
import type { ChangeCase } from './yearly-flows.ts';

/** What can be uncertain in a change of method. */
export type CaseField =
  | 'before'
  | 'after'
  | 'unitsAYear'
  | 'hourlyCost'
  | 'cost'
  | 'years'
  | 'discountRate'
  | 'runningCost'
  | 'firstUnit'
  | 'learningRate';

/** Names of the fields as the subject of a sentence. */
export const caseFields: Readonly<Record<CaseField, string>> = {
  before: 'The time for a unit before',
  after: 'The time for a unit after',
  unitsAYear: 'The units a year',
  hourlyCost: 'The cost of an hour',
  cost: 'The cost of the change',
  years: 'The number of years',
  discountRate: 'The yearly rate of discount',
  runningCost: 'The running cost a year',
  firstUnit: 'The first unit, in times of the learned time,',
  learningRate: 'The learning rate',
};

/** The likely case, and for what is uncertain the lowest and the highest value that is still reckoned with. */
export interface RangedCase {
  readonly likely: ChangeCase;
  readonly ranges: Readonly<Partial<Record<CaseField, { readonly low: number; readonly high: number }>>>;
}

/** What one field does alone, all others as likely: the bar of a tornado plot. */
export interface TornadoBar {
  readonly field: CaseField;
  readonly name: string;
  readonly low: { readonly value: number; readonly netPresentValue: number };
  readonly high: { readonly value: number; readonly netPresentValue: number };
  /** Distance between the two values, 0 or more. */
  readonly swing: number;
}

export interface Outlook {
  /** Every uncertain field at its worse end, as likely, and at its better end; an end is judged with the others as likely. */
  readonly low: ChangeMoney;
  readonly likely: ChangeMoney;
  readonly high: ChangeMoney;
  /** The widest first. */
  readonly tornado: readonly TornadoBar[];
}

export const outlookRule =
  'Low and high: every figure with a range at its worse end, or every one at its better end, at once; both are less likely than either alone.';

/** A table of low, likely and high, and what matters most for the net present value. */
export function outlookOf({ likely, ranges }: RangedCase): Result<Outlook, Finding> {
  const fields = (Object.keys(caseFields) as CaseField[]).filter((field) => ranges[field] !== undefined);
  const fault = firstOf(...fields.map((field) => orderFault(field, fieldOf(likely, field), ranges[field])));
  if (fault !== undefined) return fail(fault);
  const middle = moneyOf(likely);
  if (!middle.ok) return middle;
  const bars: TornadoBar[] = [];
  for (const field of fields) {
    const { low, high } = ranges[field] ?? { low: 0, high: 0 };
    const [atLow, atHigh] = [moneyOf(withValue(likely, field, low)), moneyOf(withValue(likely, field, high))];
    if (!atLow.ok) return atLow;
    if (!atHigh.ok) return atHigh;
    bars.push(barOf(field, [low, atLow.value.netPresentValue], [high, atHigh.value.netPresentValue]));
  }
  const [worst, best] = [moneyOf(extreme(likely, bars, 'worse')), moneyOf(extreme(likely, bars, 'better'))];
  if (!worst.ok) return worst;
  if (!best.ok) return best;
  // The sort keeps the order of the fields among bars of one width.
  const tornado = [...bars].sort((a, b) => b.swing - a.swing);
  return ok({ low: worst.value, likely: middle.value, high: best.value, tornado });
}

function barOf(
  field: CaseField,
  [low, atLow]: readonly [number, number],
  [high, atHigh]: readonly [number, number],
): TornadoBar {
  return {
    field,
    name: caseFields[field],
    low: { value: low, netPresentValue: atLow },
    high: { value: high, netPresentValue: atHigh },
    swing: Math.abs(atHigh - atLow),
  };
}

function extreme(likely: ChangeCase, bars: readonly TornadoBar[], end: 'worse' | 'better'): ChangeCase {
  return bars.reduce((made, { field, low, high }) => {
    const lowIsWorse = low.netPresentValue <= high.netPresentValue;
    return withValue(made, field, lowIsWorse === (end === 'worse') ? low.value : high.value);
  }, likely);
}

function fieldOf(change: ChangeCase, field: CaseField): number {
  if (field === 'firstUnit') return change.learning?.firstUnit ?? 1;
  if (field === 'learningRate') return change.learning?.rate ?? Number.NaN;
  return field === 'runningCost' ? (change.runningCost ?? 0) : change[field];
}

/** A rate of learning that is not given plays no part while the first unit takes no longer than the others. */
const anyRate = 0.9;

function withValue(change: ChangeCase, field: CaseField, value: number): ChangeCase {
  const learning = change.learning ?? { firstUnit: 1, rate: anyRate };
  if (field === 'firstUnit') return { ...change, learning: { ...learning, firstUnit: value } };
  if (field === 'learningRate') return { ...change, learning: { ...learning, rate: value } };
  return { ...change, [field]: value };
}

function orderFault(
  field: CaseField,
  likely: number,
  range: { readonly low: number; readonly high: number } | undefined,
): Finding | undefined {
  if (range === undefined) return undefined;
  const { low, high } = range;
  if (low <= likely && likely <= high) return undefined;
  const words = { low: foundText(low), likely: foundText(likely), high: foundText(high) };
  return finding('evaluate/range-order', {}, { what: caseFields[field], ...words });
}
