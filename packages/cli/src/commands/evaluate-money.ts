import type { CaseField } from '@evenhand/core/evaluate';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { MoneyCase, Study } from '@evenhand/core/ground/study';
import type { Call, OptionFacts } from '../command.ts';
import { readNumber, readPercent } from './define-words.ts';

type Range = { readonly low: number; readonly high: number };

interface MoneyOption {
  readonly option: string;
  readonly field: Exclude<CaseField, 'before' | 'after'>;
  readonly read: (option: string, text: string) => Result<number, string>;
  readonly facts: OptionFacts;
}

const ranged = 'or LOW..LIKELY..HIGH';

const moneyFields: readonly MoneyOption[] = [
  ...amount('units-a-year', 'unitsAYear', 'units made in a year, for the money;'),
  ...amount('hourly-cost', 'hourlyCost', 'what an hour of the work costs;'),
  ...amount('cost', 'cost', 'cost of the change;'),
  ...amount('years', 'years', 'years for which the new method is expected to run; left out, 3;'),
  ...share('discount', 'discountRate', 'yearly rate of discount; left out, 0;'),
  ...amount(
    'running',
    'runningCost',
    'what the new method costs each year beyond the old one, where it saves as --running=-200; left out, 0;',
  ),
  ...amount(
    'first-unit',
    'firstUnit',
    'time of the first unit in times of the learned time, with --learning;',
  ),
  ...share('learning', 'learningRate', 'learning rate (unit model), with --first-unit;'),
];

function amount(option: string, field: MoneyOption['field'], help: string): MoneyOption[] {
  return [{ option, field, read: readNumber, facts: { value: 'N', help: `${help} ${ranged}` } }];
}

function share(option: string, field: MoneyOption['field'], help: string): MoneyOption[] {
  return [{ option, field, read: readPercent, facts: { value: 'PERCENT', help: `${help} ${ranged}` } }];
}

export const moneyOptions: Readonly<Record<string, OptionFacts>> = {
  ...Object.fromEntries(moneyFields.map(({ option, facts }) => [option, facts])),
  currency: { value: 'SIGN', help: 'left out, €' },
  basis: { value: 'measured|equal-pace', help: 'which saving is turned into money; left out, measured' },
};

/**
 * The money case that the options say; what they leave out is as the kept comparison has it. Undefined where neither
 * speaks of money. The error is a sentence.
 */
export function readMoney(
  call: Call,
  study: Study,
  kept: MoneyCase | undefined,
): Result<MoneyCase | undefined, string> {
  if (Object.keys(moneyOptions).every((option) => call.text(option) === undefined)) return ok(kept);
  const basis = call.text('basis') ?? kept?.basis ?? 'measured';
  if (basis !== 'measured' && basis !== 'equal-pace')
    return fail(`--basis ${basis} is not known; it can be measured or equal-pace.`);
  const values: Partial<Record<CaseField, number>> = startingValues(study, kept);
  const ranges: Partial<Record<CaseField, Range>> = { ...knownRanges(kept) };
  for (const { option, field, read } of moneyFields) {
    const text = call.text(option);
    if (text === undefined) continue;
    const found = readRanged(option, text, read);
    if (!found.ok) return found;
    values[field] = found.value.likely;
    if (found.value.range === undefined) delete ranges[field];
    else ranges[field] = found.value.range;
  }
  return madeCase(values, ranges, basis, call.text('currency') ?? kept?.currency ?? '€');
}

function startingValues(
  { operation }: Study,
  kept: MoneyCase | undefined,
): Partial<Record<CaseField, number>> {
  const { unitsAYear } = operation;
  const usual = { years: 3, discountRate: 0, ...(unitsAYear === undefined ? {} : { unitsAYear }) };
  if (kept === undefined) return usual;
  const { learning, runningCost } = kept;
  return {
    unitsAYear: kept.unitsAYear,
    hourlyCost: kept.hourlyCost,
    cost: kept.cost,
    years: kept.years,
    discountRate: kept.discountRate,
    ...(runningCost === undefined ? {} : { runningCost }),
    ...(learning === undefined ? {} : { firstUnit: learning.firstUnit, learningRate: learning.rate }),
  };
}

function knownRanges(kept: MoneyCase | undefined): Partial<Record<CaseField, Range>> {
  const known = Object.entries(kept?.ranges ?? {}).filter(([, range]) => range !== undefined);
  return Object.fromEntries(known) as Partial<Record<CaseField, Range>>;
}

function madeCase(
  values: Partial<Record<CaseField, number>>,
  ranges: Partial<Record<CaseField, Range>>,
  basis: MoneyCase['basis'],
  currency: string,
): Result<MoneyCase, string> {
  const {
    unitsAYear,
    hourlyCost,
    cost,
    years = 3,
    discountRate = 0,
    runningCost,
    firstUnit,
    learningRate,
  } = values;
  const missing = (option: string) => fail(`For the money, the option --${option} N is missing.`);
  if (unitsAYear === undefined) return missing('units-a-year');
  if (hourlyCost === undefined) return missing('hourly-cost');
  if (cost === undefined) return missing('cost');
  if ((firstUnit === undefined) !== (learningRate === undefined))
    return fail('Learning needs both --first-unit N and --learning PERCENT.');
  return ok({
    currency,
    basis,
    unitsAYear,
    hourlyCost,
    cost,
    years,
    discountRate,
    ...(runningCost === undefined ? {} : { runningCost }),
    ...(firstUnit === undefined || learningRate === undefined
      ? {}
      : { learning: { firstUnit, rate: learningRate } }),
    ...(Object.keys(ranges).length === 0 ? {} : { ranges }),
  });
}

/** "36", or "30..36..45" for low, likely and high. */
function readRanged(
  option: string,
  text: string,
  read: MoneyOption['read'],
): Result<{ readonly likely: number; readonly range: Range | undefined }, string> {
  const parts = text.split('..');
  if (parts.length !== 1 && parts.length !== 3)
    return fail(`--${option} ${text} is neither a number nor LOW..LIKELY..HIGH.`);
  const numbers: number[] = [];
  for (const part of parts) {
    const number = read(option, part);
    if (!number.ok)
      return parts.length === 1 ? number : fail(`${number.error} It stands in ${text}, LOW..LIKELY..HIGH.`);
    numbers.push(number.value);
  }
  const [first = 0, second, third] = numbers;
  if (second === undefined || third === undefined) return ok({ likely: first, range: undefined });
  return ok({ likely: second, range: { low: first, high: third } });
}
