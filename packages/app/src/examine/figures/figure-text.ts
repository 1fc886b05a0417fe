import type { Figure, FigureUnit } from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import type { Sample } from '@evenhand/core/ground/numerics';
import { numberText, type TimeUnit, timeNumber, timeUnits } from '@evenhand/core/ground/units';

/** What stands where a figure cannot be had. */
export const none = '–';

/** The head of a column: what its numbers are counted in. */
export function unitHead(of: FigureUnit, unit: TimeUnit): string {
  const heads: Readonly<Record<FigureUnit, string>> = {
    time: `${timeUnits[unit].symbol} a cycle`,
    share: '%',
    ratio: 'ratio',
    count: 'a cycle',
    rate: 'a minute',
  };
  return heads[of];
}

/** A value without its unit, which stands in the head of the column. */
export function valueText(of: FigureUnit, value: number | undefined, unit: TimeUnit): string {
  if (value === undefined) return none;
  if (of === 'time') return timeNumber(roundMicros(value), unit);
  if (of === 'share') return numberText(value * 100, 1);
  return numberText(value, of === 'rate' ? 1 : 2);
}

export function figureText({ unit: of, value }: Figure, unit: TimeUnit): string {
  return valueText(of, value, unit);
}

/** Standard deviation over the cycles; nothing where there is one cycle. */
export function deviationText({ unit: of, sample }: Figure, unit: TimeUnit): string {
  return valueText(of, sample?.deviation, unit);
}

/** "1.20 to 1.34": the confidence interval of the mean over the cycles. */
export function intervalText({ unit: of, sample }: Figure, unit: TimeUnit): string {
  return sampleInterval(of, sample, unit);
}

export function sampleInterval(of: FigureUnit, sample: Sample | undefined, unit: TimeUnit): string {
  if (sample?.interval === undefined) return none;
  const { low, high } = sample.interval;
  return `${valueText(of, low, unit)} to ${valueText(of, high, unit)}`;
}

/** Spread and interval say something only where a cycle came more than once. */
export function hasSpread(cycles: number): boolean {
  return cycles >= 2;
}

/** A value in the unit, as a place on the scale of a plot. */
export function inPlot(micros: number, unit: TimeUnit): number {
  return micros / timeUnits[unit].microseconds;
}
