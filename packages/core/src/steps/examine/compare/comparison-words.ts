import { roundMicros } from '../../../ground/base/index.ts';
import { countText, percentText, type TimeUnit, timeText } from '../../../ground/units/index.ts';
import type { ComparedCycle, Comparison } from './comparison.ts';

export interface ComparisonWords {
  /** "Improved method, cycle 3: 9.69 s for 2 units = 4.85 s a unit." */
  readonly upper: string;
  readonly lower: string;
  /** "2.75 s a unit less: 36 % of the time saved, 57 % more output in the same time." */
  readonly difference: string;
  /** What the comparison does not say. */
  readonly caution: string;
}

/** The comparison in words; every figure with its unit. */
export function comparisonWords(comparison: Comparison, unit: TimeUnit): ComparisonWords {
  return {
    upper: sideWords(comparison.upper, unit),
    lower: sideWords(comparison.lower, unit),
    difference: differenceWords(comparison, unit),
    caution:
      'These are two single cycles as they were recorded, each at its own pace; two cycles prove no difference between methods.',
  };
}

function sideWords({ name, time, units, unitTime, all }: ComparedCycle, unit: TimeUnit): string {
  const each = units === 1 ? '' : ` = ${timeWords(unitTime, unit)} a unit`;
  const head = `${name}: ${timeText(time, unit)} for ${countText(units, 'unit')}${each}.`;
  if (all?.interval === undefined) return head;
  const { low, high } = all.interval;
  const range = `${timeWords(low, unit)} to ${timeWords(high, unit)}`;
  return `${head} Mean of its ${all.n} cycles ${timeWords(all.mean, unit)} (95 % interval ${range}).`;
}

function timeWords(time: number, unit: TimeUnit): string {
  return timeText(roundMicros(time), unit);
}

function differenceWords({ change, upper, lower }: Comparison, unit: TimeUnit): string {
  const plain = upper.units === 1 && lower.units === 1;
  const per = plain ? 'a cycle' : 'a unit';
  const whole = plain ? '' : ` ${cycleWords(change.cycle, unit)}`;
  if (change.unit === 0) return `No difference ${per}.${whole}`;
  const amount = timeWords(Math.abs(change.unit), unit);
  return change.unit < 0
    ? `${amount} ${per} less: ${shareText(change.saved)} of the time saved, ${shareText(change.gained)} more output in the same time.${whole}`
    : `${amount} ${per} more: ${shareText(-change.saved)} more time, ${shareText(-change.gained)} less output in the same time.${whole}`;
}

function cycleWords(change: number, unit: TimeUnit): string {
  if (change === 0) return 'The cycles are equally long.';
  return `The lower cycle itself is ${timeWords(Math.abs(change), unit)} ${change < 0 ? 'shorter' : 'longer'}.`;
}

/** Whole per cent, with a decimal where that would say too little. */
export function shareText(share: number): string {
  return percentText(share, Math.abs(share) < 0.1 ? 1 : 0);
}
