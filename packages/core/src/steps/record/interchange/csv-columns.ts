import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type CsvLine, type CsvTable, csvTable } from './csv-cells.ts';

/** The columns of the table of motions, in the order in which they are written. */
export const csvColumns = ['hand', 'motion', 'start_s', 'end_s', 'object', 'from', 'to', 'cycle'] as const;
export type CsvColumn = (typeof csvColumns)[number];

const needed: readonly CsvColumn[] = ['hand', 'motion', 'start_s', 'end_s'];
const columnNames = csvColumns.join(', ');

export interface MotionTable {
  readonly lines: readonly CsvLine[];
  /** Which cell of a line holds a column, from 0; −1 when the table does not have it. */
  readonly cellOf: Readonly<Record<CsvColumn, number>>;
  readonly notes: readonly Finding[];
}

/** Takes the text apart and finds the columns; what stands between the cells is told by the first line. */
export function motionTable(text: string): Result<MotionTable, readonly Finding[]> {
  const table = bestTable(text);
  const [head, ...lines] = table.lines;
  if (head === undefined) return fail([finding('csv/empty', { line: 1 }, { columns: columnNames })]);
  const names = head.cells.map(columnName);
  const faults = [...headFaults(head, names), ...table.faults];
  if (faults.length > 0) return fail(faults);
  if (lines.length === 0) return fail([finding('csv/empty', { line: head.line }, { columns: columnNames })]);
  const wrong = lines.filter((line) => !fits(line, names.length));
  if (wrong.length > 0) {
    return fail(
      wrong.map(({ line, cells }) =>
        finding('csv/cells', { line }, { found: cells.length, expected: names.length }),
      ),
    );
  }
  const cellOf = Object.fromEntries(csvColumns.map((column) => [column, names.indexOf(column)]));
  return ok({ lines, cellOf: cellOf as Record<CsvColumn, number>, notes: unknownColumns(head, names) });
}

/** Comma, semicolon (spreadsheets of countries with a decimal comma) or tab (copied from a spreadsheet). */
function bestTable(text: string): CsvTable {
  const known = (table: CsvTable) =>
    table.lines[0]?.cells.filter((cell) => isColumn(columnName(cell))).length ?? 0;
  return [',', ';', '\t']
    .map((delimiter) => csvTable(text, delimiter))
    .reduce((best, table) => (known(table) > known(best) ? table : best));
}

function columnName(cell: string): string {
  return cell.trim().toLowerCase();
}

function isColumn(name: string): name is CsvColumn {
  return (csvColumns as readonly string[]).includes(name);
}

function headFaults(head: CsvLine, names: readonly string[]): Finding[] {
  const missing = needed
    .filter((column) => !names.includes(column))
    .map((column) => finding('csv/missing-column', { line: head.line }, { column, columns: columnNames }));
  const twice = names.flatMap((column, index) =>
    isColumn(column) && names.indexOf(column) < index
      ? [finding('csv/duplicate-column', { line: head.line, column: index + 1 }, { column })]
      : [],
  );
  return [...missing, ...twice];
}

/** Spreadsheets pad lines with empty cells; anything else means that a cell was lost or a comma was not quoted. */
function fits(line: CsvLine, expected: number): boolean {
  return line.cells.length >= expected && line.cells.slice(expected).every((cell) => cell === '');
}

function unknownColumns(head: CsvLine, names: readonly string[]): Finding[] {
  return names.flatMap((name, index) =>
    name === '' || isColumn(name)
      ? []
      : [
          finding(
            'csv/unknown-column',
            { line: head.line, column: index + 1 },
            { column: head.cells[index] ?? '', columns: columnNames },
          ),
        ],
  );
}
