import { cycleWords, type Lead, type MethodReading, type Stake } from '@evenhand/core/examine';
import { inUnit, numberText, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';

/** "0.00 to 3.11 s a cycle"; one number where both ends read the same. */
export function stakeText({ low, high }: Stake, unit: TimeUnit): string {
  const { decimals, symbol } = timeUnits[unit];
  return `${rangeText(inUnit(low, unit), inUnit(high, unit), decimals)} ${symbol} a cycle`;
}

/** "0 to 155 hours a year"; undefined when the yearly volume is not known. */
export function hoursText(hours: Lead['hoursAYear']): string | undefined {
  if (hours === undefined) return undefined;
  return `${rangeText(hours.low, hours.high, hours.high < 10 ? 1 : 0)} hours a year`;
}

function rangeText(low: number, high: number, decimals: number): string {
  const [from, to] = [numberText(low, decimals), numberText(high, decimals)];
  return from === to ? to : `${from} to ${to}`;
}

/** "left hand, body"; "both hands". */
export function whoText({ hand, about }: Pick<Lead, 'hand' | 'about'>): string {
  const who = hand === 'both' ? 'both hands' : `${hand} hand`;
  return about === undefined || about.length > 60 ? who : `${who}, ${about}`;
}

/** "left hand, body, every cycle"; "right hand, ring, cycles 2, 4". */
export function whereText(lead: Pick<Lead, 'hand' | 'about' | 'cycles'>, reading: MethodReading): string {
  const { length } = reading.cycles;
  const which = lead.cycles.length < length ? cycleWords(lead.cycles) : length === 1 ? '' : 'every cycle';
  // A lead on a cycle is about that cycle already.
  return which === '' || lead.about === which ? whoText(lead) : `${whoText(lead)}, ${which}`;
}
