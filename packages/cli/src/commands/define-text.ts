import type { StandardTime } from '@evenhand/core/define';
import { type RatingScaleId, ratingScales } from '@evenhand/core/ground/tables';
import { countText, numberText, percentText, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import type { DefineChoice } from './define-choice.ts';
import type { TimedReadings } from './define-source.ts';
import { formWords, type Sheet, type SheetRow } from './define-study.ts';
import { wrapped } from './wrapped.ts';

/** The study sheet for reading at a terminal. */
export function sheetText(readings: TimedReadings, sheet: Sheet, choice: DefineChoice): string {
  const { unit, confidence } = choice;
  const { name, symbol } = timeUnits[unit];
  const demo = readings.demo ? ' (invented data)' : '';
  const lines = [
    ...wrapped(`${readings.title}${demo}: ${readings.heading}`, '  ', ''),
    `Times in ${name}${name === symbol ? '' : ` (${symbol})`}; ${percentText(confidence, 0)} intervals by Student’s t`,
    '',
    ...tableLines(
      ['element', 'n', 'mean', 'median', 'deviation', 'CV', 'interval of the mean', 'rating', 'basic time'],
      sheet.rows.map((row) => rowCells(row, unit)),
    ),
    '',
    ...ratingLines(sheet, choice.scale, choice.rating.byName.size > 0),
    ...readings.elements.flatMap((_, index) => readingLines(sheet.rows[index], unit)),
    ...neededLines(sheet, choice),
    ...standardLines(readings, sheet, choice),
    ...(readings.rule === undefined
      ? []
      : ['', ...wrapped(`How elements are found: ${readings.rule}`, '  ', '')]),
  ];
  return `${lines.join('\n')}\n`;
}

function rowCells({ name, summary, rated }: SheetRow, unit: TimeUnit): string[] {
  const time = (value: number) => numberText(value, timeUnits[unit].decimals);
  const { n, mean, median, deviation, variation, interval } = summary;
  return [
    name,
    String(n),
    time(mean),
    time(median),
    deviation === undefined ? '–' : time(deviation),
    variation === undefined ? '–' : percentText(variation),
    interval === undefined ? '–' : `${time(interval.low)} to ${time(interval.high)}`,
    rated === undefined ? 'not rated' : numberText(rated.ratings.mean, 1).replace(/\.0$/, ''),
    time(rated?.basic.mean ?? mean),
  ];
}

/** Columns as wide as their widest cell; the first to the left, the others to the right. */
export function tableLines(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const widths = head.map((title, at) => Math.max(title.length, ...rows.map((row) => row[at]?.length ?? 0)));
  return [head, ...rows].map((cells) =>
    cells
      .map((cell, at) => (at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}

function ratingLines({ rated }: Sheet, scale: RatingScaleId, someRated: boolean): string[] {
  const { name, standard } = ratingScales[scale];
  if (rated) return wrapped(`Rated on the ${name}; standard is ${standard}.`, '  ', '');
  const which = someRated ? 'The pace of elements without a rating' : 'The pace';
  return wrapped(
    `${which} was not rated: ${standard}, standard on the ${name}, was taken, so observed time stands for basic time. Without --rating the result holds only if the work was done at standard pace.`,
    '  ',
    '',
  );
}

function readingLines(row: SheetRow | undefined, unit: TimeUnit): string[] {
  if (row === undefined) return [];
  const { name, summary, trend } = row;
  const { setAside, missed, rule, proposals } = summary;
  const time = (value: number) => `${numberText(value, timeUnits[unit].decimals)} ${timeUnits[unit].symbol}`;
  const aside = setAside.map(
    ({ cycle, time: value, setAside: reason }) =>
      `set aside: cycle ${cycle}${value === undefined ? '' : `, ${time(value)}`}: ${reason}`,
  );
  const outliers =
    rule === undefined
      ? [`Fewer than four readings: no outlier is looked for.`]
      : [
          `${proposals.length === 0 ? 'No outlier' : countText(proposals.length, 'outlier')} proposed. ${rule.words}${proposals.length === 0 ? '' : ' All of them count.'}`,
          ...proposals.map(({ words }) => words),
        ];
  return [
    '',
    name,
    ...(missed === 0 ? [] : [`  ${countText(missed, 'reading')} missed`]),
    ...[...aside, ...outliers, trend?.words ?? 'Fewer than three readings: no drift can be judged.'].flatMap(
      (text) => wrapped(text, '    ', '  '),
    ),
  ];
}

function neededLines({ rows }: Sheet, { precision, confidence }: DefineChoice): string[] {
  const head = ['element', 'taken', 'form', 'factor', 'unrounded', 'needed', 'more'];
  const cells = rows.flatMap(({ name, summary, needed = [] }) =>
    needed.map(({ form, multiplier, unrounded, needed: count, more }, index) => [
      index === 0 ? name : '',
      index === 0 ? String(summary.n) : '',
      formWords[form],
      numberText(multiplier, 3),
      numberText(unrounded, 2),
      String(count),
      String(more),
    ]),
  );
  const wanting = rows.flatMap(({ name, why }) => (why === undefined ? [] : [`${name}: ${why.message}`]));
  const title = `Cycles needed for a mean within ±${percentText(precision.share)} at ${percentText(confidence)}`;
  return [
    '',
    title,
    ...(cells.length === 0 ? [] : tableLines(head, cells)),
    ...wanting.flatMap((text) => wrapped(text, '  ', '')),
  ];
}

function standardLines({ piecesPerCycle }: TimedReadings, sheet: Sheet, choice: DefineChoice): string[] {
  const { standard, interval, piecesPerHour } = sheet;
  const { decimals, symbol } = timeUnits[choice.unit];
  const time = (value: number) => `${numberText(value / piecesPerCycle, decimals)} ${symbol}`;
  const range =
    interval === undefined
      ? ', without an interval'
      : `, ${percentText(choice.confidence, 0)} interval ${time(interval.interval.low)} to ${time(interval.interval.high)}`;
  return [
    '',
    ...frequencyLines(standard),
    `Basic time     ${time(standard.basic)} a unit`,
    ...wrapped(allowanceText(choice, standard), '  ', ''),
    `Standard time  ${time(standard.standard)} a unit${range}`,
    `Output         ${numberText(piecesPerHour.rate, 1)} pieces an hour at standard (${piecesPerHour.whole} whole ones)`,
    ...(piecesPerCycle === 1
      ? []
      : [
          `A cycle of ${countText(piecesPerCycle, 'unit')} takes ${numberText(standard.standard, decimals)} ${symbol}.`,
        ]),
    ...(interval === undefined ? [] : wrapped(interval.words, '  ', '')),
  ];
}

function frequencyLines({ elements }: StandardTime): string[] {
  return elements.flatMap(({ name, frequency = 1 }) =>
    frequency === 1
      ? []
      : wrapped(
          `“${name}” is done every ${numberText(1 / frequency, 2).replace(/\.?0+$/, '')} cycles.`,
          '  ',
          '',
        ),
  );
}

function allowanceText({ allowance, contingency }: DefineChoice, { words }: StandardTime): string {
  const more = contingency === 0 ? '' : ` A contingency of ${percentText(contingency)} stands on top.`;
  return allowance === 0
    ? `Allowance      none was given, so none is in the standard time; people need one.${more}`
    : `Allowance      ${percentText(allowance)}. ${words}${more}`;
}
