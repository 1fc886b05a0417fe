import type { SheetAllowances, SheetRow, StudyStandard, TimeStudySheet } from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import { finding } from '@evenhand/core/ground/findings';
import { allowanceEditions, sources } from '@evenhand/core/ground/tables';
import { numberText, percentText, timeText, timeUnits } from '@evenhand/core/ground/units';
import { formWords } from './define-forms.ts';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

export function shortNumber(value: number): string {
  return numberText(value, 2).replace(/\.?0+$/, '');
}

/** What happened and is no part of the work. */
export function foreignLines({ timeStudy, unit }: TimeStudySheet): string[] {
  const { foreign = [], elements } = timeStudy;
  if (foreign.length === 0) return [];
  const words = foreign.map(({ cycle, element, us, what }) => {
    const name = elements.find(({ id }) => id === element)?.name;
    const during = name === undefined ? '' : ` during “${name}”`;
    return `cycle ${cycle}${during}, ${timeText(micros(us), unit)}: ${what}`;
  });
  return ['', 'foreign elements, in no reading', ...words.flatMap((text) => wrapped(text, '    ', '  '))];
}

export function neededLines({ rows, timeStudy, unit, pilot }: TimeStudySheet): string[] {
  const { precision, confidence } = timeStudy;
  const wish =
    precision.kind === 'relative' ? percentText(precision.share) : timeText(micros(precision.us), unit);
  const cells = rows.flatMap(({ element, summary, forms }) =>
    forms.map(({ form, needed }, index) => [
      index === 0 ? element.name : '',
      index === 0 ? String(summary?.n ?? 0) : '',
      formWords[form],
      numberText(needed.multiplier, 3),
      numberText(needed.unrounded, 2),
      String(needed.needed),
      String(needed.more),
    ]),
  );
  const head = ['element', 'taken', 'form', 'factor', 'unrounded', 'needed', 'more'];
  return [
    '',
    `Cycles needed for a mean within ±${wish} at ${percentText(confidence)}`,
    ...(cells.length === 0 ? [] : tableLines(head, cells)),
    ...rows.flatMap(wantingLines),
    ...wrapped(pilot.words, '  ', ''),
  ];
}

function wantingLines({ element, summary, forms }: SheetRow): string[] {
  if (forms.length > 0) return [];
  const n = summary?.n ?? 0;
  const why =
    n < 2
      ? finding('define/too-few-readings', {}, { found: n, least: 2 })
      : finding('define/too-many-cycles', {}, { limit: 'what can be counted' });
  return wrapped(`${element.name}: ${why.message}`, '  ', '');
}

/** Where a machine runs: which of machine and inside work the cycle waits for. */
export function shareLines({ unit, timeStudy }: TimeStudySheet, { standard }: StudyStandard): string[] {
  if (timeStudy.elements.every(({ work }) => work === 'worker')) return [];
  const time = (value: number) => `${numberText(value, timeUnits[unit].decimals)} ${timeUnits[unit].symbol}`;
  const { worker, process, inside } = standard.parts;
  const longer = inside > process ? 'the inside work' : 'the machine';
  return wrapped(
    `With allowances, in a cycle: worker ${time(worker)}, machine ${time(process)}, inside its run ${time(inside)}. Outside work and the longer of the two others add up; here it is ${longer}.`,
    '  ',
    '',
  );
}

export function allowanceLines(
  { timeStudy, words }: TimeStudySheet,
  { worker, relaxation }: SheetAllowances,
): string[] {
  const { contingency, process } = timeStudy.allowances;
  const own = timeStudy.elements.flatMap(({ name, relaxation: share }) =>
    share === undefined ? [] : [`“${name}” ${percentText(share)}`],
  );
  if (worker.share === 0 && process === 0 && own.length === 0) {
    const more = contingency === 0 ? '' : ` A contingency of ${percentText(contingency)} stands on top.`;
    const none = `Allowance      none was given, so none is in the standard time; people need one.${more}`;
    return wrapped(none, '  ', '');
  }
  const single = own.length === 0 ? '' : ` Of single elements, in the same convention: ${own.join('; ')}.`;
  const lines = wrapped(`Allowance      ${words.allowance}${single}`, '  ', '');
  if (relaxation === undefined) return lines;
  const edition = allowanceEditions[relaxation.edition];
  const parts = relaxation.parts.map((part) => `${part.words} ${shortNumber(part.percent)} %`);
  return [
    ...lines,
    ...[
      `${edition.name}: ${parts.join('; ')}: ${shortNumber(relaxation.percent)} % of basic time.`,
      edition.differs,
      `Source: ${sources[edition.source].reference}.`,
      `Caution: ${relaxation.caution}`,
    ].flatMap((text) => wrapped(text, '    ', '  ')),
  ];
}
