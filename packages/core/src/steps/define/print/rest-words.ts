import { shortNumber } from '../../../ground/findings/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import {
  type AllowanceColumn,
  allowanceEditions,
  ratingScales,
  sources,
} from '../../../ground/tables/index.ts';
import type { SheetRow, TimeStudySheet } from '../sheet/index.ts';
import { shownNumber, timeWords } from './sheet-numbers.ts';

/** What stands in the way of a standard, each sentence once. */
export function sheetFaultWords({ faults }: TimeStudySheet): readonly string[] {
  return [...new Set(faults.map(({ finding }) => finding.message))];
}

/** How sure the standard is, and what its interval carries. */
export function sureWords({ standard, words, pilot, unit, timeStudy }: TimeStudySheet): readonly string[] {
  const interval = standard?.interval;
  return [
    words.interval,
    interval === undefined
      ? ''
      : `Standard error from the readings ${timeWords(interval.samplingError, unit, 1)}, from the rating ${timeWords(interval.ratingError, unit, 1)}.`,
    timeStudy.elements.length === 0 ? '' : pilot.words,
    timeStudy.elements.length === 0
      ? ''
      : 'The cycles needed are by Student’s t with the degrees of freedom of the number itself.',
  ];
}

/** Drift and operators: what is shown is said in full, the rest counted. */
export function steadyWords({ rows, whole }: TimeStudySheet): readonly string[] {
  const trends = rows.filter(({ trend }) => trend !== undefined);
  const variances = rows.filter(({ operators }) => operators !== undefined);
  return [
    whole.trend?.words ?? '',
    ...trends.flatMap(({ trend }) => (trend?.drifts === true ? [trend.words] : [])),
    restWords(
      trends.filter(({ trend }) => trend?.drifts === false),
      'No drift is shown in',
    ),
    whole.operators?.words ?? '',
    ...variances.flatMap(({ element, operators }) =>
      operators?.differs === true ? [`“${element.name}”: ${operators.words}`] : [],
    ),
    restWords(
      variances.filter(({ operators }) => operators?.differs === false),
      'No difference between operators is shown in',
    ),
  ];
}

function restWords(rows: readonly SheetRow[], words: string): string {
  if (rows.length === 0) return '';
  if (rows.length > 6) return `${words} ${rows.length} of the elements.`;
  return `${words} ${rows.map(({ element }) => `“${element.name}”`).join(', ')}.`;
}

const columnWords: Readonly<Record<AllowanceColumn, string>> = {
  one: '',
  men: ', column for men',
  women: ', column for women',
};

/** The allowances and what they are a share of; a standard without one says so first. */
export function conventionSentences({ allowances, words }: TimeStudySheet): string {
  return allowances?.worker.share === 0
    ? `No relaxation allowance is in it. ${words.allowance}`
    : words.allowance;
}

/** Where the allowance comes from and what it is a share of, with the caution of the table. */
export function allowanceParagraphs(sheet: TimeStudySheet): readonly string[] {
  const { timeStudy, allowances } = sheet;
  const { relaxation } = timeStudy.allowances;
  const table = relaxation.kind === 'table' ? allowanceEditions[relaxation.edition] : undefined;
  const { reference, seen } = table === undefined ? { reference: '', seen: 'read' } : sources[table.source];
  return [
    conventionSentences(sheet),
    allowances === undefined || allowances.worker.share === 0
      ? ''
      : `Either way basic time is multiplied by ${shownNumber(factorOf(allowances.worker), 3)}.`,
    table === undefined
      ? relaxation.kind === 'share' && relaxation.share > 0
        ? 'The share was agreed; no published table was used.'
        : ''
      : `${table.name}${relaxation.kind === 'table' ? columnWords[relaxation.column] : ''}. ${table.differs} Source: ${reference}${seen === 'read' ? '' : ' (seen in the words of others)'}.`,
    table?.caution ?? '',
  ];
}

function factorOf({ share, convention }: { readonly share: number; readonly convention: string }): number {
  return convention === 'share-of-shift' ? 1 / (1 - share) : 1 + share;
}

/** How the pace was rated, with the source of the scale. */
export function ratingWords({ timeStudy, rows }: TimeStudySheet): readonly string[] {
  const { scale } = timeStudy;
  const { name, standard, normal, source } = ratingScales[scale];
  const rated = rows.filter(({ element }) => element.work !== 'process');
  if (rated.length === 0) return [];
  const one = timeStudy.rating;
  const forAll = one !== undefined && rated.every((row) => row.rated?.ratedBy === 'study');
  return [
    forAll
      ? `One rating, ${shortNumber(one)}, is taken for all elements${one === standard ? ': the pace is taken as standard' : ''}.`
      : '',
    `${name}: ${standard} is standard performance, ${normal} the pace a quarter slower. Basic time is the observed time × rating ÷ ${standard}. Source: ${sources[source].reference}.`,
  ];
}

/** Elements that count once in every cycle although most cycles have no time of them. Half is our own limit. */
function rareWords({ rows, cycles }: TimeStudySheet): readonly string[] {
  return rows.flatMap(({ element, cells }) => {
    const timed = cells.filter(({ time }) => time !== undefined).length;
    if (element.occurs !== undefined || timed === 0 || timed >= cycles.length / 2) return [];
    return [
      `“${element.name}” has a time in ${timed} of ${cycles.length} cycles, but counts once in every cycle. If it is not done in every cycle, the standard is too long until that is said.`,
    ];
  });
}

/** What limits the sheet, and what it is not. */
export function limitWords(study: Study, sheet: TimeStudySheet): readonly string[] {
  const { notes, rows, missing } = sheet;
  const rule = rows.find(({ summary }) => summary?.rule !== undefined)?.summary?.rule;
  return [
    ...new Set(notes.map(({ message }) => message)),
    missing.length === 0 ? '' : `The record has elements that are not in this study: ${missing.join(', ')}.`,
    ...rareWords(sheet),
    rule?.words ?? '',
    study.demo === true ? 'The data are invented, for trying the program.' : '',
    'A standard is the time of a method under these conditions. It says nothing about a person, and whether the work may be done so is settled by local rules and qualified people.',
  ];
}
