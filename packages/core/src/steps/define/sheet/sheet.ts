import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Study, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import { ratingFault } from '../rating.ts';
import type { Reading } from '../reading.ts';
import { insideFault, planFault } from '../standard-time.ts';
import { type StudyElement, type StudyPlan, type StudyRow, standardOfRows } from '../study-standard.ts';
import { pilotProgress } from './pilot.ts';
import { sheetElements } from './sheet-elements.ts';
import { allowancesOf, allowanceWords, planOf } from './sheet-plan.ts';
import { operatorsIn, rowOf, studyElementOf, trendIn } from './sheet-row.ts';
import type { SheetAllowances, SheetFault, SheetRow, TimeStudySheet, WholeCycle } from './sheet-types.ts';

const noAllowances: SheetAllowances = {
  worker: { share: 0, convention: 'share-of-basic-time' },
  other: { share: 0, convention: 'share-of-shift' },
  relaxation: undefined,
};

/**
 * Works out a time study. Never fails as a whole: what can be said of an element is said of it, and what stands in the
 * way of a standard is told with its place.
 */
export function timeStudySheet(study: Study, timeStudy: TimeStudy): TimeStudySheet {
  const {
    method,
    elements,
    missing,
    faults: sourceFaults,
    notes: sourceNotes,
  } = sheetElements(study, timeStudy);
  const allowances = allowancesOf(timeStudy);
  const plan = planOf(timeStudy, allowances.ok ? allowances.value : noAllowances);
  const timed = elements.map((element) => studyElementOf(element, timeStudy));
  const rows = elements.map((element, index) =>
    rowOf(element, timed[index] as StudyElement, timeStudy, plan),
  );
  const faults: SheetFault[] = [
    ...sourceFaults,
    ...headFaults(timeStudy, rows),
    ...rows.flatMap((row) => row.faults),
    ...insideFaults(elements),
  ];
  const agreed = allowances.ok ? planFault(plan.allowances) : allowances.error;
  if (agreed !== undefined) faults.push({ finding: agreed, field: 'allowances' });
  const worked = faults.length > 0 ? undefined : standardOfRows(timed, rows.flatMap(studyRowOf), plan);
  if (worked?.ok === false) faults.push({ finding: worked.error, field: 'elements' });
  const standard = worked?.ok === true ? worked.value : undefined;
  return {
    timeStudy,
    method,
    unit: timeStudy.unit,
    cycles: cyclesIn(rows),
    rows: rows.map((row, index) => ({ ...row, standard: standard?.standard.elements[index] })),
    missing,
    whole: wholeOf(rows, timeStudy, plan),
    pilot: pilotProgress(rows, timeStudy),
    allowances: allowances.ok ? allowances.value : undefined,
    standard,
    words: {
      allowance: allowances.ok ? allowanceWords(timeStudy, allowances.value) : '',
      interval: standard?.interval?.words ?? '',
    },
    faults,
    notes: once([
      ...sourceNotes,
      ...(standard?.notes ?? rows.flatMap(({ summary }) => summary?.notes ?? [])),
    ]),
  };
}

function studyRowOf({ element, summary, rated }: SheetRow): StudyRow[] {
  return summary === undefined ? [] : [{ name: element.name, summary, rated }];
}

/** Each element that is said to be inside the run of a machine that is not there. */
function insideFaults(elements: readonly TimeStudyElement[]): SheetFault[] {
  if (elements.some(({ work }) => work === 'process')) return [];
  return elements.flatMap((element) => {
    const fault = insideFault([element]);
    return fault === undefined ? [] : [{ finding: fault, element: element.id }];
  });
}

function headFaults({ rating, scale, elements }: TimeStudy, rows: readonly SheetRow[]): SheetFault[] {
  const found: SheetFault[] = [];
  if (elements.length === 0) found.push({ finding: finding('define/no-elements'), field: 'elements' });
  if (rating !== undefined) {
    const fault = ratingFault('the time study', rating, scale);
    if (fault !== undefined) found.push({ finding: fault, field: 'rating' });
    return found;
  }
  for (const { element, cells } of rows) {
    if (element.work === 'process' || element.rating !== undefined) continue;
    const bare = cells.find(
      (cell) => cell.time !== undefined && cell.setAside === undefined && cell.rating === undefined,
    );
    if (bare === undefined) continue;
    const words = { element: element.name, cycle: bare.cycle };
    found.push({ finding: finding('define/no-rating', {}, words), element: element.id, field: 'rating' });
  }
  return found;
}

function cyclesIn(rows: readonly SheetRow[]): readonly number[] {
  const cycles = new Set<number>();
  for (const { cells } of rows) for (const { cycle } of cells) cycles.add(cycle);
  return [...cycles].sort((a, b) => a - b);
}

function wholeOf(rows: readonly SheetRow[], timeStudy: TimeStudy, { confidence }: StudyPlan): WholeCycle {
  const counted = rows.filter(({ element }) => element.occurs === undefined && element.work !== 'inside');
  const sums = new Map<number, { time: number; count: number }>();
  for (const { cells } of counted) {
    for (const { cycle, time, setAside } of cells) {
      const sum = sums.get(cycle) ?? { time: 0, count: 0 };
      sums.set(cycle, sum);
      if (time === undefined || setAside !== undefined || !(time > 0)) continue;
      sum.time += time;
      sum.count += 1;
    }
  }
  const cycles = [...sums]
    .map(([cycle, { time, count }]) => ({ cycle, time: count === counted.length ? time : undefined }))
    .sort((a, b) => a.cycle - b.cycle);
  const readings: readonly Reading[] = cycles;
  return {
    cycles,
    trend: trendIn('whole cycle', readings, confidence),
    operators: operatorsIn(readings, timeStudy.sittings),
  };
}

function once(notes: readonly Finding[]): Finding[] {
  return [...new Map(notes.map((note) => [note.message, note])).values()];
}
