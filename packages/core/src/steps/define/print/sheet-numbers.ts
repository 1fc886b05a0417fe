import { numberText, type TimeUnit, timeUnits } from '../../../ground/units/index.ts';

/** Nobody reads a longer number off a sheet. */
const mostPrinted = 1e13;

/** A number for a cell, or words where it is too long for one. */
export function shownNumber(value: number, decimals: number): string {
  return Math.abs(value) < mostPrinted ? numberText(value, decimals) : 'too large';
}

/** A time that is given in the unit, without it: for columns whose head names the unit. */
export function timeCell(time: number, unit: TimeUnit, more = 0): string {
  return shownNumber(time, timeUnits[unit].decimals + more);
}

/** The same with the unit behind it. */
export function timeWords(time: number, unit: TimeUnit, more = 0): string {
  return `${timeCell(time, unit, more)} ${timeUnits[unit].symbol}`;
}
