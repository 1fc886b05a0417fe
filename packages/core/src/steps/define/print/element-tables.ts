import { shortNumber } from '../../../ground/findings/index.ts';
import { percentText, timeUnits } from '../../../ground/units/index.ts';
import type { SheetRow, TimeStudySheet } from '../sheet/index.ts';
import type { Part } from './sheet-flow.ts';
import { shownNumber, timeCell } from './sheet-numbers.ts';
import { occursWords, ownAllowanceWords, workWords } from './sheet-words.ts';
import { type TableColumn, type TablePlace, type TableRow, textTable } from './text-table.ts';

const none = '–';

/** The elements with their break points and how each is timed. */
export function elementsTable({ rows, timeStudy }: TimeStudySheet, place: TablePlace): Part {
  const columns: readonly TableColumn[] = [
    { head: '', align: 'end' },
    { head: 'Element', align: 'start', grow: 1 },
    { head: 'Ends when (break point)', align: 'start', grow: 1.15 },
    { head: 'Paced by', align: 'start' },
    { head: 'Occurs', align: 'start' },
    { head: 'Rating', align: 'start' },
    { head: 'Allowance', align: 'end' },
  ];
  const list = rows.map((row, index): TableRow => {
    const { element } = row;
    return {
      cells: [
        String(index + 1),
        element.name,
        element.endsWhen ?? none,
        workWords[element.work],
        occursWords(element),
        ratedWords(row),
        ownAllowanceWords(element, timeStudy),
      ],
    };
  });
  return textTable(
    {
      title: 'Elements and break points',
      label: 'Elements and break points',
      columns,
      rows: list,
      together: true,
    },
    place,
  );
}

function ratedWords({ element, rated }: SheetRow): string {
  if (element.work === 'process') return 'not rated';
  if (rated === undefined) return none;
  return {
    reading: 'each reading',
    element: `${shortNumber(rated.ratings.mean)}, the element`,
    study: `${shortNumber(rated.ratings.mean)}, the study`,
    mixed: 'some readings',
  }[rated.ratedBy];
}

/** Everything that is worked out of each element, down to its part of the standard. */
export function summaryTable(sheet: TimeStudySheet, place: TablePlace): Part {
  const { timeStudy, unit, rows, standard } = sheet;
  const confidence = percentText(timeStudy.confidence, 0);
  const number = (head: string): TableColumn => ({ head, align: 'end' });
  const columns: readonly TableColumn[] = [
    number(''),
    { head: 'Element', align: 'start', grow: 1 },
    number('n'),
    number('Mean'),
    number('Median'),
    number('Standard deviation'),
    number('Variation'),
    number(`${confidence} interval of the mean`),
    number('Needed / had'),
    number('Ratings'),
    number('Basic time'),
    number('Times a cycle'),
    number('Basic a cycle'),
    number('Allow- ance'),
    number('Standard a cycle'),
  ];
  const list = rows.map((row, index): TableRow => ({ cells: summaryCells(row, index, sheet) }));
  const foot: TableRow[] = [];
  if (standard !== undefined) {
    const { parts, contingency, basic } = standard.standard;
    const machine = parts.process > 0 || parts.inside > 0;
    if (contingency > 0) {
      const share = percentText(timeStudy.allowances.contingency);
      foot.push({ cells: footCells(`Contingency ${share}`, '', timeCell(contingency, unit)), ruled: true });
    }
    foot.push({
      cells: footCells(
        machine ? 'Cycle: outside work and the longer of machine time and inside work' : 'Cycle',
        timeCell(basic, unit),
        timeCell(standard.standard.standard, unit),
      ),
      bold: true,
      ruled: true,
    });
  }
  const title = `Summary, times in ${timeUnits[unit].name}`;
  return textTable(
    { title, label: 'Summary of the elements', columns, rows: [...list, ...foot], together: true },
    place,
  );
}

function footCells(name: string, basic: string, standard: string): readonly string[] {
  return ['', name, '', '', '', '', '', '', '', '', '', '', basic, '', standard];
}

function summaryCells(row: SheetRow, index: number, { unit }: TimeStudySheet): readonly string[] {
  const { element, summary, rated, standard } = row;
  const time = (value: number | undefined) => (value === undefined ? none : timeCell(value, unit));
  const aside = summary?.setAside.length ?? 0;
  const { interval, deviation } = summary ?? {};
  return [
    String(index + 1),
    element.name,
    summary === undefined ? none : `${summary.n}${aside === 0 ? '' : ` (+${aside})`}`,
    time(summary?.mean),
    time(summary?.median),
    time(deviation),
    summary === undefined || deviation === undefined ? none : percentText(deviation / summary.mean),
    interval === undefined ? none : `${time(interval.low)} to ${time(interval.high)}`,
    neededWords(row),
    ratingsWords(row),
    time(element.work === 'process' ? summary?.mean : rated?.basic.mean),
    frequencyWords(row),
    time(standard?.perCycle),
    standard === undefined ? none : `× ${shownNumber(standard.factor, 3)}`,
    time(standard?.standard),
  ];
}

function neededWords({ needed, summary }: SheetRow): string {
  if (needed === undefined || summary === undefined) return none;
  return `${needed.needed > 999_999 ? 'very many' : needed.needed} / ${summary.n}`;
}

function ratingsWords({ element, rated }: SheetRow): string {
  if (element.work === 'process') return 'not rated';
  if (rated === undefined) return none;
  const { mean, least, most } = rated.ratings;
  return least === most
    ? shortNumber(least)
    : `${shownNumber(mean, 1)} (${shortNumber(least)}–${shortNumber(most)})`;
}

function frequencyWords({ element: { occurs } }: SheetRow): string {
  return occurs === undefined ? '1' : `${occurs.times} in ${occurs.cycles}`;
}
