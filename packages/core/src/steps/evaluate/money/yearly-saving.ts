import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';
import { type Saving, savingOf } from '../saving.ts';

/** The work of one year under two methods. Times are for one unit and for all persons together, in microseconds. */
export interface YearOfWork {
  readonly before: number;
  readonly after: number;
  readonly unitsAYear: number;
  /** What one hour of the work costs, wages and what hangs on them, in any currency. */
  readonly hourlyCost: number;
}

export interface YearlySaving extends Saving {
  /** Microseconds saved on one unit; below 0 when it takes longer. */
  readonly timeAUnit: number;
  readonly hours: number;
  /** In the currency of the hourly cost. */
  readonly money: number;
}

export const microsecondsAnHour = timeUnits.hours.microseconds;

/**
 * Hours and money that a year of the same output needs less: (before − after) · units · hourly cost.
 * Hours become money only where the time that is set free is put to use or no longer paid.
 */
export function yearlySaving(year: YearOfWork): Result<YearlySaving, Finding> {
  const fault = yearFault(year);
  if (fault !== undefined) return fail(fault);
  const { before, after, unitsAYear, hourlyCost } = year;
  const timeAUnit = before - after;
  const hours = (timeAUnit * unitsAYear) / microsecondsAnHour;
  return ok({ ...savingOf(before, after), timeAUnit, hours, money: hours * hourlyCost });
}

export function yearFault({ before, after, unitsAYear, hourlyCost }: YearOfWork): Finding | undefined {
  return firstOf(
    boundsFault('The time for a unit before', before, { above: 0 }),
    boundsFault('The time for a unit after', after, { above: 0 }),
    boundsFault('The units a year', unitsAYear, { least: 0 }),
    boundsFault('The cost of an hour', hourlyCost, { least: 0 }),
  );
}
