import type { Finding } from '../../../ground/findings/index.ts';
import type { Sample } from '../../../ground/numerics/index.ts';
import type { TimeStudy } from '../../../ground/study/index.ts';
import { allowanceEditions, ratingScales, sources } from '../../../ground/tables/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import type { ElementSummary } from '../element-summary.ts';
import type { BasicTimes } from '../rating.ts';
import type { Reading } from '../reading.ts';
import type { SheetAllowances, SheetRow, TimeStudySheet, WorkedStandard } from '../sheet/index.ts';
import type { StandardElement } from '../standard-time.ts';
import type { StudyStandard } from '../study-standard.ts';
import type { Trend } from '../trend.ts';
import type { Variance } from '../variance.ts';
import type { DefineReport } from './report-schema.ts';

/** Where the readings of a sheet come from. */
export interface ReportSource {
  /** Of the study, or the name of the table. */
  readonly title: string;
  readonly demo: boolean;
  readonly basis: DefineReport['basis'];
  /** Elements whose pace nobody rated, so that standard was taken. */
  readonly unrated: readonly string[];
  /** How elements were found in a record. */
  readonly rule: string | undefined;
  readonly notes: readonly Finding[];
}

/** The standard of a sheet, its allowances, and the draws beside its interval. */
export interface WorkedSheet extends Omit<WorkedStandard, 'sheet'> {
  readonly standard: StudyStandard;
  readonly allowances: SheetAllowances;
}

/** A sheet that has a standard as plain data. Times are in the unit of the sheet; shares are of 1. */
export function defineReport(sheet: TimeStudySheet, worked: WorkedSheet, source: ReportSource): DefineReport {
  const { timeStudy, unit } = sheet;
  const { confidence, piecesPerCycle, precision } = timeStudy;
  const { microseconds, symbol } = timeUnits[unit];
  const stored = source.basis === 'time-study';
  return {
    ok: true,
    reportVersion: 1,
    title: source.title,
    demo: source.demo,
    timeStudy: stored ? { id: timeStudy.id, name: timeStudy.name } : undefined,
    method: timeStudy.source.method,
    basis: source.basis,
    cycles: [...sheet.cycles],
    piecesPerCycle,
    unit: { id: unit, symbol },
    confidence,
    precision:
      precision.kind === 'relative' ? precision : { kind: 'absolute', amount: precision.us / microseconds },
    rating: ratingOf(timeStudy, source.unrated),
    elements: sheet.rows.map((row) => elementOf(row, stored)),
    whole: { ...wholeOf(sheet) },
    foreign: (timeStudy.foreign ?? []).map(({ cycle, element, us, what }) => ({
      ...{ cycle, time: us / microseconds, what },
      element: timeStudy.elements.find(({ id }) => id === element)?.name,
    })),
    allowance: allowanceOf(sheet, worked.allowances),
    ...timesOf(worked, piecesPerCycle),
    enough: {
      enough: sheet.pilot.enough,
      moreCycles: sheet.pilot.moreCycles,
      words: sheet.pilot.words,
    },
    rule: source.rule,
    notes: [...source.notes],
  };
}

function ratingOf({ scale, ratingError }: TimeStudy, unrated: readonly string[]): DefineReport['rating'] {
  return {
    rated: unrated.length === 0,
    scale,
    standard: ratingScales[scale].standard,
    unrated: [...unrated],
    error: ratingError,
  };
}

function wholeOf({ whole }: TimeStudySheet): DefineReport['whole'] {
  return {
    cycles: [...whole.cycles],
    trend: trendIn(whole.trend),
    operators: operatorsIn(whole.operators),
  };
}

type ReportElement = DefineReport['elements'][number];

function elementOf(row: SheetRow, stored: boolean): ReportElement {
  const { element, summary, rated, standard, forms } = row;
  if (summary === undefined || standard === undefined) {
    throw new RangeError('a report is made of a sheet that has a standard');
  }
  const { perCycle, factor }: StandardElement = standard;
  return {
    id: stored ? element.id : undefined,
    name: element.name,
    work: element.work,
    relaxation: element.relaxation,
    frequency: standard.frequency ?? 1,
    readings: row.cells.map(readingOf),
    summary: summaryOf(summary),
    rated: rated === undefined ? undefined : ratedOf(rated),
    perCycle,
    factor,
    standard: standard.standard,
    trend: trendIn(row.trend),
    operators: operatorsIn(row.operators),
    needed: forms.map(({ form, needed }) => ({
      form,
      multiplier: needed.multiplier,
      unrounded: needed.unrounded,
      needed: needed.needed,
      more: needed.more,
    })),
  };
}

function readingOf({ cycle, time, rating, setAside }: Reading | SheetRow['cells'][number]) {
  return { cycle, time, rating, setAside };
}

function sampleIn({ n, mean, deviation, variation, interval }: Sample) {
  return { n, mean, deviation, variation, interval };
}

function summaryOf(summary: ElementSummary): ReportElement['summary'] {
  const { sum, median, least, most, missed, setAside, proposals, rule } = summary;
  return {
    ...sampleIn(summary),
    ...{ sum, median, least, most, missed, rule },
    setAside: setAside.map(readingOf),
    proposals: proposals.map(({ cycle, time, words }) => ({ cycle, time, words })),
  };
}

function ratedOf({ basic, ratings, ratedBy }: BasicTimes): NonNullable<ReportElement['rated']> {
  const { mean, least, most, deviation } = ratings;
  return { basic: sampleIn(basic), ratings: { mean, least, most, deviation }, ratedBy };
}

function trendIn(trend: Trend | undefined): ReportElement['trend'] {
  if (trend === undefined) return undefined;
  const { change, changeInterval, drifts, words, line } = trend;
  return { change, changeInterval, chance: line.chance, drifts, words };
}

function operatorsIn(variance: Variance | undefined): ReportElement['operators'] {
  if (variance === undefined) return undefined;
  const { ratio, between, within, chance, explained, differs, words } = variance;
  return { ratio, degrees: [between.degrees, within.degrees], chance, explained, differs, words };
}

function allowanceOf(
  { timeStudy, words }: TimeStudySheet,
  { worker, other, relaxation }: SheetAllowances,
): DefineReport['allowance'] {
  const { process, contingency, relaxation: given } = timeStudy.allowances;
  return {
    share: worker.share,
    convention: worker.convention,
    process,
    contingency,
    other: { share: other.share, convention: other.convention },
    words: words.allowance,
    table:
      relaxation === undefined || given.kind !== 'table'
        ? undefined
        : {
            edition: relaxation.edition,
            column: given.column,
            parts: relaxation.parts.map((part) => ({ ...part })),
            caution: relaxation.caution,
            source: sources[allowanceEditions[relaxation.edition].source].reference,
          },
  };
}

function timesOf(
  { standard: found, bootstrap, refused }: WorkedSheet,
  piecesPerCycle: number,
): Pick<DefineReport, 'cycle' | 'piece'> {
  const { standard, interval, piecesPerHour } = found;
  const part = (value: number) => value / piecesPerCycle;
  return {
    cycle: {
      basic: standard.basic,
      relaxed: standard.relaxed,
      contingency: standard.contingency,
      standard: standard.standard,
      parts: standard.parts,
      interval,
      draws: bootstrap === undefined ? undefined : { ...bootstrap },
      noDraws: refused,
    },
    piece: {
      basic: part(standard.basic),
      standard: part(standard.standard),
      low: interval === undefined ? undefined : part(interval.interval.low),
      high: interval === undefined ? undefined : part(interval.interval.high),
      anHour: piecesPerHour.rate,
      wholeAnHour: piecesPerHour.whole,
    },
  };
}
