import { numberText, percentText } from '../../../ground/units/index.ts';
import type { ComparedMoney } from '../comparison/comparison.ts';
import type { ChangeMoney } from '../money/change-case.ts';
import type { CaseField, Outlook } from '../money/outlook.ts';
import type { Payback } from '../money/payback.ts';

/** A line of the table of low, likely and high. */
export interface MoneyRow {
  readonly name: string;
  readonly low: string;
  readonly likely: string;
  readonly high: string;
}

/** Amounts without decimals from a hundred on, grouped by thousands: "€ 12 340". */
export function amountText(amount: number, currency: string): string {
  const decimals = Math.abs(amount) >= 100 ? 0 : 2;
  return `${currency} ${grouped(amount, decimals)}`;
}

/** Low, likely and high of what a change of method brings. */
export function moneyRows({ low, likely, high }: Outlook, currency: string): readonly MoneyRow[] {
  const row = (name: string, text: (money: ChangeMoney) => string): MoneyRow => ({
    name,
    low: text(low),
    likely: text(likely),
    high: text(high),
  });
  const { units } = likely.learning;
  return [
    row(
      'Hours saved a year',
      ({ yearly }) => `${numberText(yearly.hours, Math.abs(yearly.hours) >= 100 ? 0 : 1)} h`,
    ),
    row('Money saved a year', ({ yearly }) => amountText(yearly.money, currency)),
    ...(units === 0
      ? []
      : [row('Lost while it is learned', ({ learning }) => amountText(learning.money, currency))]),
    row('Payback', ({ payback }) => paybackText(payback)),
    row('Discounted payback', ({ discountedPayback }) => paybackText(discountedPayback)),
    row('Net present value', ({ netPresentValue }) => amountText(netPresentValue, currency)),
    row('Break-even, units a year', breakEvenText),
  ];
}

export function paybackText({ years }: Payback): string {
  return years === undefined ? 'not reached' : `${numberText(years, 2)} years`;
}

/** What the money is reckoned with: "180 000 units a year (120 000 to 200 000), € 34 an hour, …". */
export function moneyGivenWords({ given, ranged }: Pick<ComparedMoney, 'given' | 'ranged'>): string {
  const { likely, ranges } = ranged;
  const { currency } = given;
  const part = (field: CaseField, value: number, behind: string) => {
    const text = (of: number) => plain(fieldText(field, of, currency, String));
    const range = ranges[field];
    const within = range === undefined ? '' : ` (${text(range.low)} to ${text(range.high)})`;
    return `${text(value)}${behind}${within}`;
  };
  const { runningCost = 0, learning } = likely;
  return [
    part('unitsAYear', likely.unitsAYear, ' units a year'),
    part('hourlyCost', likely.hourlyCost, ' an hour'),
    part('cost', likely.cost, ' for the change'),
    part('years', likely.years, likely.years === 1 ? ' year' : ' years'),
    part('discountRate', likely.discountRate, ' discount a year'),
    ...(runningCost === 0 && ranges.runningCost === undefined
      ? []
      : [part('runningCost', runningCost, ' more running cost a year')]),
    ...(learning === undefined
      ? []
      : [
          `first unit ${plain(numberText(learning.firstUnit, 2))} times as long`,
          `${plain(percentText(learning.rate))} learning rate`,
        ]),
  ].join(', ');
}

/** Without noughts behind the decimal point. */
function plain(text: string): string {
  return text.replace(/(\.\d*?)0+(?!\d)/, '$1').replace(/\.(?!\d)/, '');
}

/** "What matters most: the cost of an hour, € 30 to € 40: € −500 to € 9 000." Undefined where nothing has a range. */
export function mattersMostWords(
  { tornado }: Outlook,
  currency: string,
  timeText: (us: number) => string,
): string | undefined {
  const [widest] = tornado;
  if (widest === undefined) return undefined;
  const value = (of: number) => fieldText(widest.field, of, currency, timeText);
  const name = `${widest.name[0]?.toLowerCase() ?? ''}${widest.name.slice(1).replace(/,.*$/, '')}`;
  const ends = `${amountText(widest.low.netPresentValue, currency)} to ${amountText(widest.high.netPresentValue, currency)}`;
  return `What matters most: ${name}. From ${value(widest.low.value)} to ${value(widest.high.value)} the net present value goes from ${ends}.`;
}

function breakEvenText({ breakEven }: ChangeMoney): string {
  return breakEven.unitsAYear === undefined ? 'none' : grouped(breakEven.unitsAYear, 0);
}

/** Thousands apart by a thin space, so that no comma is taken for a decimal one. */
function grouped(value: number, decimals: number): string {
  const [whole = '', rest] = numberText(value, decimals).split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u2009');
  return rest === undefined ? spaced : `${spaced}.${rest}`;
}

/** What a field of the case is worth, as it is written beside a bar. */
export function fieldText(
  field: CaseField,
  value: number,
  currency: string,
  timeText: (us: number) => string,
): string {
  switch (field) {
    case 'before':
    case 'after':
      return timeText(value);
    case 'unitsAYear':
      return grouped(value, 0);
    case 'years':
      return numberText(value, 0);
    case 'discountRate':
    case 'learningRate':
      return percentText(value);
    case 'firstUnit':
      return `× ${numberText(value, 2)}`;
    default:
      return amountText(value, currency);
  }
}
