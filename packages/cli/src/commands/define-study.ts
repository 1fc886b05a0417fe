import {
  type CyclesForm,
  type CyclesNeeded,
  cyclesNeeded,
  type Pilot,
  type Precision,
  type StudyRow,
  type StudyStandard,
  studyStandard,
  type Trend,
  trendOf,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { ratingScales } from '@evenhand/core/ground/tables';
import { numberText, timeUnits } from '@evenhand/core/ground/units';
import { badUse } from '../command.ts';
import type { DefineChoice } from './define-choice.ts';
import type { TimedReadings } from './define-source.ts';
import { nameKey, strayName } from './define-words.ts';

/** What is printed of one form of the number of cycles. */
export interface FormNeeded extends CyclesNeeded {
  readonly form: CyclesForm;
}

export interface SheetRow extends StudyRow {
  /** Undefined with fewer than three readings. */
  readonly trend: Trend | undefined;
  /** Undefined with one reading, or where the number cannot be counted; `why` says so. */
  readonly needed: readonly FormNeeded[] | undefined;
  readonly why: Finding | undefined;
}

export interface Sheet extends Omit<StudyStandard, 'rows'> {
  readonly rows: readonly SheetRow[];
  readonly rated: boolean;
}

export const sheetForms = ['population', 'normal', 'student-iterated'] as const;

/** Summary, standard, drift and cycles needed of the readings. */
export function sheetOf(
  { elements, piecesPerCycle }: TimedReadings,
  choice: DefineChoice,
): Result<Sheet, readonly Finding[]> {
  const names = elements.map(({ name }) => name);
  const stray = strayName('rating', choice.rating, names) ?? strayName('every', choice.every, names);
  const zero = [...choice.every.byName.values(), choice.every.all ?? 1].find((every) => !(every > 0));
  if (stray !== undefined || zero !== undefined) {
    return fail([badUse(stray ?? `--every ${zero} is not above 0.`, 'evenhand help define')]);
  }
  const { decimals, symbol, microseconds } = timeUnits[choice.unit];
  const made = studyStandard(
    elements.map((element) => ({
      ...element,
      rating: choice.rating.byName.get(nameKey(element.name)),
      frequency: 1 / (choice.every.byName.get(nameKey(element.name)) ?? choice.every.all ?? 1),
    })),
    {
      scale: choice.scale,
      rating: choice.rating.all ?? ratingScales[choice.scale].standard,
      allowances: {
        convention: choice.convention,
        worker: choice.allowance,
        process: 0,
        contingency: choice.contingency,
      },
      piecesPerCycle,
      hour: timeUnits.hours.microseconds / microseconds,
      confidence: choice.confidence,
      ratingError: choice.ratingError,
      timeText: (time) => `${numberText(time, decimals)} ${symbol}`,
    },
  );
  if (!made.ok) return made;
  const rows = made.value.rows.map((row, index): SheetRow => {
    const trend = trendOf(row.name, elements[index]?.readings ?? [], choice.confidence);
    return { ...row, trend: trend.ok ? trend.value : undefined, ...neededOf(row, choice) };
  });
  const rated = choice.rating.all !== undefined || choice.rating.byName.size === elements.length;
  return ok({ ...made.value, rows, rated });
}

function neededOf(
  { summary }: StudyRow,
  { precision, confidence }: DefineChoice,
): Pick<SheetRow, 'needed' | 'why'> {
  const { n, mean, deviation } = summary;
  if (deviation === undefined)
    return { needed: undefined, why: finding('define/too-few-readings', {}, { found: n, least: 2 }) };
  const found = formsNeeded({ n, mean, deviation }, precision, confidence, sheetForms);
  return found.ok ? { needed: found.value, why: undefined } : { needed: undefined, why: found.error };
}

/** The 40-formula is made with 2 standard errors at 95 %, as it is printed; at another confidence z stands for them. */
export function formsNeeded(
  pilot: Pilot,
  precision: Precision,
  confidence: number,
  forms: readonly CyclesForm[],
): Result<readonly FormNeeded[], Finding> {
  const found: FormNeeded[] = [];
  for (const form of forms) {
    const forty = form === 'population' && confidence === 0.95;
    const assurance = forty
      ? ({ kind: 'multiplier', multiplier: 2 } as const)
      : ({ kind: 'confidence', confidence } as const);
    const needed = cyclesNeeded(pilot, { form, precision, assurance });
    if (!needed.ok) return needed;
    found.push({ form, ...needed.value });
  }
  return ok(found);
}

export const formWords: Readonly<Record<CyclesForm, string>> = {
  population: '40-formula (population deviation)',
  normal: 'z (sample deviation)',
  student: 't of the pilot (sample deviation)',
  'student-iterated': 't iterated (sample deviation)',
};
