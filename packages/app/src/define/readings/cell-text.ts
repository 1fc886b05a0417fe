import { ratingFault } from '@evenhand/core/define';
import { fail, micros, ok, type Result } from '@evenhand/core/ground/base';
import type { RatingScaleId } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeNumber } from '@evenhand/core/ground/units';

/** The rating of a reading or an element; nothing takes it away. */
export function readRating(text: string, what: string, scale: RatingScaleId): Result<number | null, string> {
  const trimmed = text.trim();
  if (trimmed === '') return ok(null);
  const value = plainNumber(trimmed);
  if (value === undefined) return fail(`“${short(trimmed)}” is not a rating. Write a number, such as 95.`);
  const fault = ratingFault(what, value, scale);
  return fault === undefined ? ok(value) : fail(fault.message);
}

/** A number with a point or a comma; undefined when the text is none. */
export function plainNumber(text: string): number | undefined {
  const trimmed = text.trim().replace(/−/g, '-').replace(',', '.');
  return /^-?(?:\d+\.?\d*|\.\d+)$/.test(trimmed) ? Number(trimmed) : undefined;
}

export function short(text: string): string {
  return text.length <= 40 ? text : `${text.slice(0, 39)}…`;
}

/** How the time of a reading stands in its cell: without its unit, with as many decimals as the unit has on the sheet. */
export function cellText(us: number, unit: TimeUnit): string {
  return timeNumber(micros(us), unit, sheetDecimals[unit]);
}

/** The same with all its digits, for editing: nothing is lost by opening a cell and closing it again. */
export function fullCellText(us: number, unit: TimeUnit): string {
  return timeNumber(micros(us), unit, allDecimals[unit]).replace(/\.?0+$/, '');
}

const allDecimals: Readonly<Record<TimeUnit, number>> = {
  seconds: 6,
  minutes: 8,
  winks: 5,
  tmu: 5,
  hours: 10,
};

/** Decimals in the narrow cells of the sheet; a cell opens with all of them. */
export const sheetDecimals: Readonly<Record<TimeUnit, number>> = {
  seconds: 2,
  minutes: 3,
  winks: 1,
  tmu: 1,
  hours: 6,
};
