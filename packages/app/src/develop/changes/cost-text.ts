import type { CostRange } from '@evenhand/core/develop';
import type { KeptChange, KeptWork } from '@evenhand/core/ground/study';

/** “800 €”, “800 € (600 to 1200)”. */
export function costText({ low, likely, high }: CostRange, currency: string): string {
  const sign = currency === '' ? '' : ` ${currency}`;
  return low === high ? `${likely}${sign}` : `${likely}${sign} (${low} to ${high})`;
}

/** What a person reads and writes in the field: `800`, or `600..800..1200`. */
export function costField(change: KeptChange | undefined): string {
  if (change?.cost === undefined) return '';
  const { cost, costRange } = change;
  return costRange === undefined ? String(cost) : `${costRange.low}..${cost}..${costRange.high}`;
}

export type CostEntry =
  | { readonly ok: true; readonly value: CostRange | undefined }
  | { readonly ok: false; readonly reason: string };

/** Empty for no cost. The reason is a sentence. */
export function readCostField(text: string): CostEntry {
  if (text.trim() === '') return { ok: true, value: undefined };
  const parts = text.split('..').map((part) => part.trim().replace(',', '.'));
  const numbers = parts.map(Number);
  const [low = 0, likely = low, high = likely] = numbers;
  if (parts.length === 2 || parts.length > 3 || parts.some((part) => !/^\d+(\.\d+)?$/.test(part)))
    return { ok: false, reason: 'Write one number, or low..likely..high, such as 600..800..1200.' };
  if (low > likely || likely > high || high > 1e12)
    return { ok: false, reason: 'The three numbers rise: low, likely, high.' };
  return { ok: true, value: { low, likely, high } };
}

/** Costs that are written in the work, by the id of the change. */
export function keptCosts({ changes = [] }: KeptWork): readonly (readonly [string, CostRange])[] {
  return changes.flatMap(({ change, cost, costRange }) =>
    cost === undefined
      ? []
      : [[change, { low: costRange?.low ?? cost, likely: cost, high: costRange?.high ?? cost }] as const],
  );
}
