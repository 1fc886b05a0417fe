import type { SheetRow, TimeStudySheet, WorkedSheet } from '@evenhand/core/define';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { ratingScales } from '@evenhand/core/ground/tables';
import { countText, numberText, percentText, timeUnits } from '@evenhand/core/ground/units';
import type { Timed } from './define-source.ts';
import { allowanceLines, foreignLines, neededLines, shareLines, shortNumber } from './define-text-parts.ts';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

/** The study sheet for reading at a terminal. */
export function sheetText(sheet: TimeStudySheet, worked: WorkedSheet, { heading, source }: Timed): string {
  const { standard, allowances } = worked;
  const { timeStudy, rows, unit } = sheet;
  const { name, symbol } = timeUnits[unit];
  const lines = [
    ...wrapped(`${source.title}${source.demo ? ' (invented data)' : ''}: ${heading}`, '  ', ''),
    `Times in ${name}${name === symbol ? '' : ` (${symbol})`}; ${percentText(timeStudy.confidence, 0)} intervals by Student’s t`,
    '',
    ...summaryLines(rows, sheet),
    '',
    ...ratingLines(timeStudy, source.unrated),
    ...sittingLines(timeStudy),
    ...rows.flatMap((row) => readingLines(row, sheet)),
    ...wholeLines(sheet),
    ...foreignLines(sheet),
    ...neededLines(sheet),
    '',
    ...frequencyLines(sheet),
    ...shareLines(sheet, standard),
    `Basic time     ${timeIn(sheet, standard.standard.basic / timeStudy.piecesPerCycle)} a unit`,
    ...allowanceLines(sheet, allowances),
    ...standardLines(sheet, worked),
    ...(source.rule === undefined
      ? []
      : ['', ...wrapped(`How elements are found: ${source.rule}`, '  ', '')]),
  ];
  return `${lines.join('\n')}\n`;
}

function timeIn({ unit }: TimeStudySheet, value: number): string {
  return `${numberText(value, timeUnits[unit].decimals)} ${timeUnits[unit].symbol}`;
}

const workWords = { worker: 'worker', process: 'machine', inside: 'inside' } as const;

function summaryLines(rows: readonly SheetRow[], { unit }: TimeStudySheet): string[] {
  const mixed = rows.some(({ element }) => element.work !== 'worker');
  const time = (value: number | undefined) =>
    value === undefined ? '–' : numberText(value, timeUnits[unit].decimals);
  const head = ['element', 'n', 'mean', 'median', 'deviation', 'CV', 'interval of the mean', 'rating'];
  return tableLines(
    [...head.slice(0, 1), ...(mixed ? ['work'] : []), ...head.slice(1), 'basic time'],
    rows.map(({ element, summary, rated }) => [
      element.name,
      ...(mixed ? [workWords[element.work]] : []),
      String(summary?.n ?? 0),
      ...[summary?.mean, summary?.median, summary?.deviation].map(time),
      summary?.variation === undefined ? '–' : percentText(summary.variation),
      summary?.interval === undefined
        ? '–'
        : `${time(summary.interval.low)} to ${time(summary.interval.high)}`,
      rated === undefined ? 'not rated' : ratingText(rated.ratings),
      time(rated?.basic.mean ?? summary?.mean),
    ]),
  );
}

function ratingText({ mean, least, most }: { mean: number; least: number; most: number }): string {
  return least === most
    ? shortNumber(mean)
    : `${shortNumber(mean)} (${shortNumber(least)} to ${shortNumber(most)})`;
}

function ratingLines({ scale, elements }: TimeStudy, unrated: readonly string[]): string[] {
  const { name, standard } = ratingScales[scale];
  if (unrated.length === 0) return wrapped(`Rated on the ${name}; standard is ${standard}.`, '  ', '');
  const worked = elements.filter(({ work }) => work !== 'process').length;
  const which = unrated.length < worked ? 'The pace of elements without a rating' : 'The pace';
  return wrapped(
    `${which} was not rated: ${standard}, standard on the ${name}, was taken, so observed time stands for basic time. Without --rating the result holds only if the work was done at standard pace.`,
    '  ',
    '',
  );
}

function sittingLines({ sittings = [] }: TimeStudy): string[] {
  if (sittings.length === 0) return [];
  const words = sittings.map(({ start, operatorCode, date }) => {
    const who = operatorCode === undefined ? '' : `, operator ${operatorCode}`;
    return `from cycle ${start}${who}${date === undefined ? '' : `, ${date}`}`;
  });
  return wrapped(`${countText(sittings.length, 'sitting')}: ${words.join('; ')}.`, '  ', '');
}

function readingLines({ element, summary, trend, operators }: SheetRow, sheet: TimeStudySheet): string[] {
  if (summary === undefined) return [];
  const { setAside, missed, rule, proposals } = summary;
  const aside = setAside.map(
    ({ cycle, time: value, setAside: reason }) =>
      `set aside: cycle ${cycle}${value === undefined ? '' : `, ${timeIn(sheet, value)}`}: ${reason}`,
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
    element.name,
    ...(missed === 0 ? [] : [`  ${countText(missed, 'reading')} missed`]),
    ...[
      ...aside,
      ...outliers,
      trend?.words ?? 'Fewer than three readings: no drift can be judged.',
      ...(operators === undefined ? [] : [operators.words]),
    ].flatMap((text) => wrapped(text, '    ', '  ')),
  ];
}

/** Of a single element the whole cycle says nothing more. */
function wholeLines({ whole, rows }: TimeStudySheet): string[] {
  const words = [whole.trend?.words, whole.operators?.words].filter((text) => text !== undefined);
  if (rows.length < 2 || words.length === 0) return [];
  return ['', 'the whole cycle', ...words.flatMap((text) => wrapped(text, '    ', '  '))];
}

function frequencyLines({ timeStudy }: TimeStudySheet): string[] {
  return timeStudy.elements.flatMap(({ name, occurs }) => {
    if (occurs === undefined) return [];
    const { times, cycles } = occurs;
    const often =
      times < cycles
        ? `every ${shortNumber(cycles / times)} cycles`
        : `${shortNumber(times / cycles)} times in a cycle`;
    return wrapped(`“${name}” is done ${often}.`, '  ', '');
  });
}

function standardLines(
  sheet: TimeStudySheet,
  { standard: found, bootstrap, refused }: WorkedSheet,
): string[] {
  const { standard, interval, piecesPerHour } = found;
  const { confidence, piecesPerCycle } = sheet.timeStudy;
  const piece = (value: number) => timeIn(sheet, value / piecesPerCycle);
  const range =
    interval === undefined
      ? ', without an interval'
      : `, ${percentText(confidence, 0)} interval ${piece(interval.interval.low)} to ${piece(interval.interval.high)}`;
  return [
    `Standard time  ${piece(standard.standard)} a unit${range}`,
    `Output         ${numberText(piecesPerHour.rate, 1)} pieces an hour at standard (${piecesPerHour.whole} whole ones)`,
    ...(piecesPerCycle === 1
      ? []
      : [`A cycle of ${shortNumber(piecesPerCycle)} units takes ${timeIn(sheet, standard.standard)}.`]),
    ...(interval === undefined ? [] : wrapped(interval.words, '  ', '')),
    ...(bootstrap === undefined
      ? []
      : wrapped(
          `As a check, ${piece(bootstrap.interval.low)} to ${piece(bootstrap.interval.high)}: ${bootstrap.words}`,
          '  ',
          '',
        )),
    ...(refused === undefined ? [] : wrapped(`No draws stand beside it: ${refused}`, '  ', '')),
  ];
}
