import { shortNumber } from '../../../ground/findings/index.ts';
import { countText, percentText, timeUnits } from '../../../ground/units/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';
import type { Part } from './sheet-flow.ts';
import { shownNumber, timeCell, timeWords } from './sheet-numbers.ts';
import { type TablePlace, type TableRow, textTable } from './text-table.ts';

const none = '–';

/** Work of the worker beside that of a machine; undefined where no machine is in the study. */
export function machineTable({ standard, unit }: TimeStudySheet, place: TablePlace): Part | undefined {
  if (standard === undefined) return undefined;
  const { elements, parts } = standard.standard;
  if (!elements.some(({ work }) => work !== 'worker')) return undefined;
  const basicOf = (work: keyof typeof parts) =>
    elements.filter((element) => element.work === work).reduce((sum, { perCycle }) => sum + perCycle, 0);
  const row = (name: string, work: keyof typeof parts): TableRow => ({
    cells: [name, timeCell(basicOf(work), unit), timeCell(parts[work], unit)],
  });
  const longer = parts.inside > parts.process ? 'inside work, so the machine waits' : 'machine time';
  return textTable(
    {
      title: 'Worker and machine',
      titleAt: 'beside',
      label: 'Work outside and inside machine time',
      columns: [
        { head: `In ${timeUnits[unit].name}`, align: 'start', grow: 1 },
        { head: 'Basic a cycle', align: 'end' },
        { head: 'With allowance', align: 'end' },
      ],
      rows: [
        row('Work outside machine time', 'worker'),
        row('Machine time', 'process'),
        row('Work inside machine time', 'inside'),
        {
          cells: [
            parts.inside > parts.process ? 'The machine waits' : 'The worker waits for the machine',
            '',
            timeCell(Math.abs(parts.process - parts.inside), unit),
          ],
        },
        {
          cells: [
            `Cycle: outside work and the longer of the other two, here ${longer}`,
            timeCell(standard.standard.basic, unit),
            timeCell(standard.standard.relaxed, unit),
          ],
          bold: true,
          ruled: true,
        },
      ],
      together: true,
    },
    place,
  );
}

/** From the basic time of the cycle to pieces an hour. */
export function stepsTable(
  { standard, unit, timeStudy, allowances }: TimeStudySheet,
  place: TablePlace,
): Part | undefined {
  if (standard === undefined || allowances === undefined) return undefined;
  const { basic, relaxed, contingency, standard: cycle } = standard.standard;
  const pieces = timeStudy.piecesPerCycle;
  const { rate, whole } = standard.piecesPerHour;
  const row = (name: string, value: string, more: Omit<TableRow, 'cells'> = {}): TableRow => ({
    cells: [name, value],
    ...more,
  });
  return textTable(
    {
      title: 'The standard, step by step',
      titleAt: 'beside',
      label: 'The standard, step by step',
      columns: [
        { head: '', align: 'start', grow: 1 },
        { head: '', align: 'end' },
      ],
      rows: [
        row('Basic time of a cycle', timeWords(basic, unit)),
        row('Allowance for relaxation and machine time', timeWords(relaxed - basic, unit)),
        ...(contingency > 0
          ? [
              row(
                `Contingency, ${percentText(timeStudy.allowances.contingency)} of the sum`,
                timeWords(contingency, unit),
              ),
            ]
          : []),
        row('Standard time of a cycle', timeWords(cycle, unit), { bold: true, ruled: true }),
        ...(pieces === 1
          ? []
          : [
              row(
                `Standard time of a piece, ${shortNumber(pieces)} a cycle`,
                timeWords(cycle / pieces, unit, 1),
              ),
            ]),
        row(
          'Output at the standard',
          `${shownNumber(rate, 1)} pieces an hour, ${countText(whole, 'whole one')}`,
        ),
      ],
      together: true,
    },
    place,
  );
}

/** The rows of the published table that were chosen; undefined where the allowance was agreed. */
export function relaxationTable({ allowances }: TimeStudySheet, place: TablePlace): Part | undefined {
  const relaxation = allowances?.relaxation;
  if (relaxation === undefined) return undefined;
  const percent = (value: number) => `${shortNumber(value)} %`;
  return textTable(
    {
      title: 'Rows of the table',
      titleAt: 'beside',
      label: 'Rows of the allowance table',
      columns: [
        { head: 'Allowance', align: 'start', grow: 1 },
        { head: 'Of basic time', align: 'end' },
      ],
      rows: [
        ...relaxation.parts.map(({ words, percent: each }): TableRow => ({ cells: [words, percent(each)] })),
        { cells: ['Sum', percent(relaxation.percent)], bold: true, ruled: true },
      ],
      together: true,
    },
    place,
  );
}

/** Who was timed, when and by whom; undefined where nothing was noted. */
export function sittingsTable(sheet: TimeStudySheet, place: TablePlace): Part | undefined {
  const sittings = sheet.timeStudy.sittings ?? [];
  if (sittings.length === 0) return undefined;
  const last = sheet.cycles.at(-1) ?? 1;
  const rows = sittings.map(({ start, operatorCode, observer, date }, index): TableRow => {
    const next = sittings[index + 1];
    const to = next === undefined ? Math.max(start, last) : next.start - 1;
    const cycles = to <= start ? String(start) : `${start}–${to}`;
    return { cells: [cycles, operatorCode ?? none, date ?? none, observer ?? none] };
  });
  return textTable(
    {
      title: 'Sittings',
      titleAt: 'beside',
      label: 'Sittings',
      columns: [
        { head: 'Cycles', align: 'start' },
        { head: 'Operator (code)', align: 'start', grow: 1 },
        { head: 'Date', align: 'start' },
        { head: 'Observed by', align: 'start', grow: 1.5 },
      ],
      rows,
    },
    place,
  );
}
