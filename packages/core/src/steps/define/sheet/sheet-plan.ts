import { fail, micros, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { TimeStudy } from '../../../ground/study/index.ts';
import { inUnit, percentText, timeText, timeUnits } from '../../../ground/units/index.ts';
import {
  type Allowance,
  conventionWords,
  inConvention,
  type Relaxation,
  relaxationFrom,
} from '../allowances.ts';
import type { StudyPlan } from '../study-standard.ts';
import type { SheetAllowances } from './sheet-types.ts';

/** What the standard is worked out with. */
export function planOf(timeStudy: TimeStudy, { worker }: SheetAllowances): StudyPlan {
  const { unit, scale, rating, ratingError, confidence, piecesPerCycle, allowances } = timeStudy;
  const { microseconds } = timeUnits[unit];
  return {
    scale,
    rating,
    ratingError,
    confidence,
    piecesPerCycle,
    allowances: {
      convention: allowances.convention,
      worker: worker.share,
      process: allowances.process,
      contingency: allowances.contingency,
    },
    hour: inUnit(micros(3_600_000_000), unit),
    timeText: (time) => timeText(micros(Math.round(time * microseconds)), unit),
  };
}

/** The allowance of the worker in the convention of the study, and in the other one. */
export function allowancesOf({ allowances }: TimeStudy): Result<SheetAllowances, Finding> {
  const { convention, relaxation: given } = allowances;
  let relaxation: Relaxation | undefined;
  let agreed: Allowance;
  if (given.kind === 'table') {
    const table = relaxationFrom(given.edition, given.column, given.choices);
    if (!table.ok) return table;
    relaxation = table.value;
    agreed = table.value;
  } else agreed = { share: given.share, convention };
  const worker = inConvention(agreed, convention);
  if (!worker.ok) return fail(worker.error);
  const other = inConvention(
    worker.value,
    convention === 'share-of-shift' ? 'share-of-basic-time' : 'share-of-shift',
  );
  return other.ok ? ok({ worker: worker.value, other: other.value, relaxation }) : other;
}

/** The allowances in a sentence or two, with the figure in the other convention, so that nobody takes one for the other. */
export function allowanceWords({ allowances }: TimeStudy, { worker, other }: SheetAllowances): string {
  const { process, contingency } = allowances;
  const more = [
    process === 0 ? '' : ` On machine-paced time ${percentText(process)} in the same convention.`,
    contingency === 0 ? '' : ` Contingency ${percentText(contingency)} of the sum on top.`,
  ];
  return `Relaxation allowance ${percentText(worker.share)}, ${conventionWords[worker.convention]}. The same in the other convention is ${percentText(other.share)}, ${conventionWords[other.convention]}.${more.join('')}`;
}
