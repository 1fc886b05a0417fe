import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type CsvLine, csvTable } from './csv-cells.ts';

/** The columns of the table of motions, in the order in which they are written. */
export const csvColumns = ['hand', 'motion', 'start_s', 'end_s', 'object', 'from', 'to', 'cycle'] as const;
/** Columns that follow where motions are proposed and nobody has confirmed them. */
export const proposalColumns = ['said', 'confidence'] as const;
export type CsvColumn = (typeof csvColumns)[number] | (typeof proposalColumns)[number];

/** What the first line of a kind of table may name. */
export interface TableDesign<Column extends string> {
  /** As they are told to a person who has to write them. */
  readonly columns: readonly Column[];
  readonly needed: readonly Column[];
  /** Columns that are read where they are there and not asked for. */
  readonly silent?: readonly Column[];
  /** Other names of a column, taken where the table does not have the column itself. */
  readonly others?: Readonly<Partial<Record<Column, string>>>;
  /** Every other column with a name holds data too, so none is told to be unknown. */
  readonly open?: true;
}

export interface NamedTable<Column extends string> {
  readonly head: CsvLine;
  readonly lines: readonly CsvLine[];
  /** Which cell of a line holds a column, from 0; −1 when the table does not have it. */
  readonly cellOf: Readonly<Record<Column, number>>;
  readonly notes: readonly Finding[];
}

/** Takes the text apart and finds the columns; what stands between the cells is told by the first line. */
export function namedTable<Column extends string>(
  text: string,
  design: TableDesign<Column>,
): Result<NamedTable<Column>, readonly Finding[]> {
  const columns = columnWords(design);
  if (text.includes('\0')) return fail([finding('csv/not-text', { line: 1 }, { columns })]);
  const table = csvTable(text, bestDelimiter(text, design));
  const [head, ...lines] = table.lines;
  if (head === undefined) return fail([finding('csv/empty', { line: 1 }, { columns })]);
  const names = columnNames(head, design);
  const faults = [...headFaults(head, names, design), ...table.faults];
  if (faults.length > 0) return fail(faults);
  if (lines.length === 0) return fail([finding('csv/empty', { line: head.line }, { columns })]);
  const wrong = lines.filter((line) => !fits(line, names.length));
  if (wrong.length > 0) {
    return fail(
      wrong.map(({ line, cells }) =>
        finding('csv/cells', { line }, { found: cells.length, expected: names.length }),
      ),
    );
  }
  const cellOf = Object.fromEntries(known(design).map((column) => [column, names.indexOf(column)]));
  const notes = design.open ? [] : unknownColumns(head, names, design);
  return ok({ head, lines, cellOf: cellOf as Record<Column, number>, notes });
}

/** The columns that the first line names, whatever else is wrong with the table. */
export function headOf<Column extends string>(text: string, design: TableDesign<Column>) {
  const [head] = csvTable(text, bestDelimiter(text, design), 1).lines;
  return { head, names: head === undefined ? [] : columnNames(head, design) };
}

/** Comma, semicolon (spreadsheets of countries with a decimal comma) or tab (copied from a spreadsheet). */
function bestDelimiter<Column extends string>(text: string, design: TableDesign<Column>): string {
  const matches = (delimiter: string) => {
    const [head] = csvTable(text, delimiter, 1).lines;
    return head === undefined ? 0 : columnNames(head, design).filter((name) => isKnown(name, design)).length;
  };
  return [',', ';', '\t'].reduce((best, next) => (matches(next) > matches(best) ? next : best));
}

function known<Column extends string>({ columns, silent = [] }: TableDesign<Column>): readonly Column[] {
  return [...columns, ...silent];
}

function isKnown<Column extends string>(name: string, design: TableDesign<Column>): name is Column {
  return (known(design) as readonly string[]).includes(name);
}

function columnNames<Column extends string>(head: CsvLine, design: TableDesign<Column>): string[] {
  const names = head.cells.map((cell) => cell.trim().toLowerCase());
  return names.map(
    (name) =>
      known(design).find((column) => design.others?.[column] === name && !names.includes(column)) ?? name,
  );
}

function headFaults<Column extends string>(
  head: CsvLine,
  names: readonly string[],
  design: TableDesign<Column>,
): Finding[] {
  const columns = columnWords(design);
  const found = firstLetters(head.cells.join(', '));
  const missing = design.needed
    .filter((column) => !names.includes(column))
    .map((column) => finding('csv/missing-column', { line: head.line }, { column, columns, found }));
  const twice = names.flatMap((name, index) =>
    isKnown(name, design) && names.indexOf(name) < index
      ? [
          finding(
            'csv/duplicate-column',
            { line: head.line, column: index + 1 },
            {
              column:
                design.others?.[name] === head.cells[index]?.toLowerCase() ? (head.cells[index] ?? '') : name,
            },
          ),
        ]
      : [],
  );
  return [...missing, ...twice];
}

/** "frame, hand, x, y, and z, opening, presence where they are known". */
function columnWords<Column extends string>({ columns, needed }: TableDesign<Column>): string {
  const free = columns.filter((column) => !needed.includes(column));
  const asked = columns.filter((column) => needed.includes(column)).join(', ');
  return free.length === 0 ? asked : `${asked}, and ${free.join(', ')} where they are known`;
}

/** A line of something that is no table may be very long. */
function firstLetters(text: string): string {
  return text.length <= 120 ? text : `${text.slice(0, 120)} …`;
}

/** Spreadsheets pad lines with empty cells; anything else means that a cell was lost or a comma was not quoted. */
function fits(line: CsvLine, expected: number): boolean {
  return line.cells.length >= expected && line.cells.slice(expected).every((cell) => cell === '');
}

function unknownColumns<Column extends string>(
  head: CsvLine,
  names: readonly string[],
  design: TableDesign<Column>,
): Finding[] {
  return names.flatMap((name, index) =>
    name === '' || isKnown(name, design)
      ? []
      : [
          finding(
            'csv/unknown-column',
            { line: head.line, column: index + 1 },
            { column: head.cells[index] ?? '', columns: design.columns.join(', ') },
          ),
        ],
  );
}
