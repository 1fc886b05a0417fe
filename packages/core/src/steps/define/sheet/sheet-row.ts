import { micros, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Sitting, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import { inUnit, timeUnits } from '../../../ground/units/index.ts';
import { allowanceFault } from '../allowances.ts';
import {
  assuranceOf,
  type CyclesForm,
  type CyclesNeeded,
  cyclesNeeded,
  type Pilot,
  type Precision,
  precisionReached,
} from '../cycles-needed.ts';
import { type ElementSummary, summarise } from '../element-summary.ts';
import { type BasicTimes, basicTimes, isRating, ratingFault } from '../rating.ts';
import { countedReadings, type Reading, readingFault } from '../reading.ts';
import type { StudyElement, StudyPlan } from '../study-standard.ts';
import { type Trend, trendOf } from '../trend.ts';
import { type ReadingGroup, type Variance, varianceBetween } from '../variance.ts';
import type { SheetCell, SheetFault, SheetRow } from './sheet-types.ts';

const forms: readonly CyclesForm[] = ['population', 'normal', 'student', 'student-iterated'];

/** The readings of an element in the unit of the study. */
export function readingsIn({ readings }: TimeStudyElement, { unit }: TimeStudy): readonly Reading[] {
  return readings.map(({ cycle, us, setAside, rating }) => ({
    cycle,
    time: us === undefined ? undefined : inUnit(micros(us), unit),
    ...(setAside === undefined ? {} : { setAside }),
    ...(rating === undefined ? {} : { rating }),
  }));
}

/** The element as the calculation of the standard wants it. */
export function studyElementOf(element: TimeStudyElement, timeStudy: TimeStudy): StudyElement {
  const { name, work, rating, relaxation, occurs } = element;
  return {
    name,
    work,
    rating,
    relaxation,
    frequency: occurs === undefined ? undefined : occurs.times / occurs.cycles,
    readings: readingsIn(element, timeStudy),
  };
}

/** Everything about one element that does not need the others. One that cannot be read takes nothing from them. */
export function rowOf(
  element: TimeStudyElement,
  study: StudyElement,
  timeStudy: TimeStudy,
  plan: StudyPlan,
): SheetRow {
  const faults = rowFaults(element, study, timeStudy);
  const summary = foundIn(summarise(element.name, study.readings, plan.confidence, plan.timeText));
  const rated = element.work === 'process' ? undefined : ratedOf(study, plan);
  if (summary === undefined && !faults.some(({ cycle }) => cycle !== undefined)) {
    const none = summarise(element.name, study.readings, plan.confidence);
    if (!none.ok) faults.push({ finding: none.error, element: element.id });
  }
  return {
    element,
    cells: cellsOf(element, study.readings, summary),
    summary,
    rated,
    standard: undefined,
    ...neededFor(summary, timeStudy),
    trend: trendIn(element.name, study.readings, plan.confidence),
    operators: operatorsIn(study.readings, timeStudy.sittings),
    faults,
  };
}

export function trendIn(name: string, readings: readonly Reading[], confidence: number): Trend | undefined {
  return countedReadings(readings).length < 3 ? undefined : foundIn(trendOf(name, readings, confidence));
}

/** Readings by the code of the operator; cycles before the first sitting and sittings without a code are left out. */
export function operatorsIn(
  readings: readonly Reading[],
  sittings: readonly Sitting[] | undefined,
): Variance | undefined {
  if (sittings === undefined) return undefined;
  const groups = new Map<string, number[]>();
  let at = -1;
  const inOrder = [...countedReadings(readings)].sort((a, b) => a.cycle - b.cycle);
  for (const { cycle, time } of inOrder) {
    while ((sittings[at + 1]?.start ?? Number.POSITIVE_INFINITY) <= cycle) at += 1;
    const code = sittings[at]?.operatorCode;
    if (code === undefined) continue;
    const group = groups.get(code);
    if (group === undefined) groups.set(code, [time]);
    else group.push(time);
  }
  const named = [...groups].map(([name, times]): ReadingGroup => ({ name, times }));
  return named.length < 2 ? undefined : foundIn(varianceBetween(named, 'operator'));
}

function foundIn<T>(result: Result<T, Finding>): T | undefined {
  return result.ok ? result.value : undefined;
}

function ratedOf({ name, readings, rating }: StudyElement, plan: StudyPlan): BasicTimes | undefined {
  const source = { scale: plan.scale, element: rating, study: plan.rating };
  return foundIn(basicTimes(name, readings, source, plan.confidence));
}

/** Each reading that cannot be one, and each that has no rating or one that is not on the scale. */
function rowFaults(element: TimeStudyElement, study: StudyElement, timeStudy: TimeStudy): SheetFault[] {
  const found: SheetFault[] = [];
  const { id, name, work } = element;
  for (const reading of study.readings) {
    const wrong = readingFault(name, reading);
    if (wrong !== undefined) found.push({ finding: wrong, element: id, cycle: reading.cycle });
    if (work === 'process' || reading.rating === undefined || reading.setAside !== undefined) continue;
    if (isRating(reading.rating, timeStudy.scale)) continue;
    const fault = ratingFault(`“${name}” in cycle ${reading.cycle}`, reading.rating, timeStudy.scale);
    if (fault !== undefined) found.push({ finding: fault, element: id, cycle: reading.cycle });
  }
  if (work !== 'process' && element.rating !== undefined) {
    const fault = ratingFault(`“${name}”`, element.rating, timeStudy.scale);
    if (fault !== undefined) found.push({ finding: fault, element: id });
  }
  if (element.relaxation !== undefined) {
    const { convention } = timeStudy.allowances;
    const fault = allowanceFault({ share: element.relaxation, convention }, `The allowance of “${name}”`);
    if (fault !== undefined) found.push({ finding: fault, element: id });
  }
  return found;
}

export function cellsOf(
  { readings }: TimeStudyElement,
  times: readonly Reading[],
  summary: ElementSummary | undefined,
): SheetCell[] {
  const proposals = new Map(summary?.proposals.map((proposal) => [proposal.index, proposal]));
  return readings.map(({ cycle, us, rating, setAside }, index) => ({
    cycle,
    time: times[index]?.time,
    us,
    rating,
    setAside,
    proposal: proposals.get(index),
  }));
}

function neededFor(
  summary: ElementSummary | undefined,
  { precision, confidence, unit }: TimeStudy,
): Pick<SheetRow, 'needed' | 'reached' | 'forms'> {
  if (summary?.deviation === undefined) return { needed: undefined, reached: undefined, forms: [] };
  const pilot: Pilot = { n: summary.n, mean: summary.mean, deviation: summary.deviation };
  const wish: Precision =
    precision.kind === 'relative'
      ? precision
      : { kind: 'absolute', amount: precision.us / timeUnits[unit].microseconds };
  const found = forms.flatMap((form): { form: CyclesForm; needed: CyclesNeeded }[] => {
    const needed = foundIn(
      cyclesNeeded(pilot, { form, precision: wish, assurance: assuranceOf(form, confidence) }),
    );
    return needed === undefined ? [] : [{ form, needed }];
  });
  return {
    needed: found.find(({ form }) => form === 'student-iterated')?.needed,
    reached: foundIn(precisionReached(pilot, confidence)),
    forms: found,
  };
}
