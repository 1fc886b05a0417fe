import type { LagAgreement } from '@evenhand/core/examine';
import { percentText, type TimeUnit, timeText, timeUnits } from '@evenhand/core/ground/units';
import { valueText } from './figure-text.ts';
import type { TableData } from './table-text.ts';

/** At which lag the rows agree best, with how well they agree there and as recorded. */
export function lagWords({ best, atZero }: LagAgreement, unit: TimeUnit): string {
  if (best.agreement <= 0) return 'At no lag do the rows agree.';
  if (best.lag === 0) return `The rows agree best as they are: in ${percentText(atZero)}.`;
  const who =
    best.leads === 'left' || best.leads === 'right' ? `the ${best.leads} hand first` : 'either hand first';
  return `As recorded the rows agree in ${percentText(atZero)}; they agree best, in ${percentText(best.agreement)}, when they are ${timeText(best.lag, unit)} apart, ${who}.`;
}

export function lagTable({ best, atZero }: LagAgreement, unit: TimeUnit): TableData {
  return {
    caption: 'Agreement of the rows when one is moved against the other',
    columns: [
      { head: 'Lag' },
      { head: timeUnits[unit].symbol, number: true },
      { head: 'hand that is first' },
      { head: 'agreement, %', number: true },
    ],
    rows: [
      {
        key: 'recorded',
        cells: ['as recorded', valueText('time', 0, unit), 'neither', valueText('share', atZero, unit)],
      },
      {
        key: 'best',
        cells: [
          'best agreement',
          valueText('time', best.lag, unit),
          best.leads,
          valueText('share', best.agreement, unit),
        ],
        traces: best.traces,
      },
    ],
  };
}

/** @param step 1 for every lag of the curve, 10 for every tenth, counted from the middle so that lag 0 is one of them */
export function curveTable({ curve }: LagAgreement, unit: TimeUnit, step: number): TableData {
  const middle = (curve.length - 1) / 2;
  const which = step === 1 ? 'each lag' : `every ${step}th lag (a copy has all ${curve.length})`;
  return {
    caption: `Agreement of the rows at ${which}; below 0 the right hand is first`,
    columns: [
      { head: `lag, ${timeUnits[unit].symbol}`, number: true },
      { head: 'agreement, %', number: true },
    ],
    rows: curve
      .filter((_, index) => (index - middle) % step === 0)
      .map(({ lag, agreement }) => ({
        key: `${lag}`,
        cells: [valueText('time', lag, unit), valueText('share', agreement, unit)],
      })),
  };
}
