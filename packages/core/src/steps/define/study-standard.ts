import { fail, ok, type Result } from '../../ground/base/index.ts';
import type { Finding } from '../../ground/findings/index.ts';
import type { RatingScaleId } from '../../ground/tables/index.ts';
import { type ElementSummary, summarise } from './element-summary.ts';
import { rangeFault } from './inputs.ts';
import { type BasicTimes, basicTimes } from './rating.ts';
import { countedReadings, type Reading, readingFaults } from './reading.ts';
import {
  type MeasuredElement,
  type MeasuredStandard,
  measuredStandard,
  type Uncertainty,
} from './standard-interval.ts';
import {
  type AllowancePlan,
  insideFault,
  type Output,
  outputIn,
  type TimedElement,
} from './standard-time.ts';

/** An element as it was timed. */
export interface StudyElement extends Omit<TimedElement, 'basic'> {
  readonly readings: readonly Reading[];
  /** For all readings without one of their own. Process elements are not rated. */
  readonly rating?: number | undefined;
}

export interface StudyPlan extends Uncertainty {
  readonly scale: RatingScaleId;
  /** For all elements without one of their own. */
  readonly rating?: number | undefined;
  readonly allowances: AllowancePlan;
  /** Pieces finished in a cycle, above 0. */
  readonly piecesPerCycle: number;
  /** An hour in the unit of the readings, such as 60 for decimal minutes. */
  readonly hour: number;
  /** How a time is told to a person, with its unit; a bare number when left out. */
  readonly timeText?: ((time: number) => string) | undefined;
}

export interface StudyRow {
  readonly name: string;
  readonly summary: ElementSummary;
  /** Undefined for a process element, which is not rated. */
  readonly rated: BasicTimes | undefined;
}

export interface StudyStandard extends MeasuredStandard {
  readonly rows: readonly StudyRow[];
  readonly measured: readonly MeasuredElement[];
  readonly piecesPerHour: Output;
}

/**
 * From readings to the standard: summary of each element, basic times, standard time and its interval.
 * Every fault of a reading is told, not the first alone.
 */
export function studyStandard(
  elements: readonly StudyElement[],
  plan: StudyPlan,
): Result<StudyStandard, readonly Finding[]> {
  const faults = faultsOf(elements, plan);
  if (faults.length > 0) return fail(faults);
  const rows: StudyRow[] = [];
  for (const element of elements) {
    const row = rowOf(element, plan);
    if (!row.ok) return fail([row.error]);
    rows.push(row.value);
  }
  const made = standardOfRows(elements, rows, plan);
  return made.ok ? made : fail([made.error]);
}

/**
 * The standard of elements whose readings were summed up and rated before.
 * @param rows one for each element, in its order, of readings without a fault
 */
export function standardOfRows(
  elements: readonly StudyElement[],
  rows: readonly StudyRow[],
  plan: StudyPlan,
): Result<StudyStandard, Finding> {
  const measured = elements.map(
    (element, index): MeasuredElement => ({
      ...element,
      readings: measuredReadings(element.readings, rows[index]?.rated),
    }),
  );
  const result = measuredStandard(measured, plan.allowances, plan);
  if (!result.ok) return result;
  const piecesPerHour = outputIn(plan.hour, result.value.standard.standard, plan.piecesPerCycle);
  if (!piecesPerHour.ok) return piecesPerHour;
  const notes = [...rows.flatMap(({ summary }) => summary.notes), ...result.value.notes];
  return ok({ ...result.value, notes, rows, measured, piecesPerHour: piecesPerHour.value });
}

function faultsOf(elements: readonly StudyElement[], plan: StudyPlan): Finding[] {
  return [
    rangeFault('The hour in the unit of the readings', plan.hour, { above: 0 }),
    rangeFault('The number of pieces in a cycle', plan.piecesPerCycle, { above: 0 }),
    insideFault(elements),
    ...elements.flatMap(({ name, readings }) => readingFaults(name, readings)),
  ].filter((fault) => fault !== undefined);
}

function rowOf({ name, work, readings, rating }: StudyElement, plan: StudyPlan): Result<StudyRow, Finding> {
  const summary = summarise(name, readings, plan.confidence, plan.timeText);
  if (!summary.ok) return summary;
  if (work === 'process') return ok({ name, summary: summary.value, rated: undefined });
  const source = { scale: plan.scale, element: rating, study: plan.rating };
  const rated = basicTimes(name, readings, source, plan.confidence);
  return rated.ok ? ok({ name, summary: summary.value, rated: rated.value }) : rated;
}

function measuredReadings(
  readings: readonly Reading[],
  rated: BasicTimes | undefined,
): MeasuredElement['readings'] {
  return rated === undefined
    ? countedReadings(readings).map(({ cycle, time }) => ({ cycle, basic: time }))
    : rated.readings.map(({ cycle, basic }) => ({ cycle, basic }));
}
