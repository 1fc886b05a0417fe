import type { Trace } from '@evenhand/core/examine';
import type { MotionKind } from '@evenhand/core/ground/tables';

export interface Column {
  readonly head: string;
  readonly number?: boolean;
}

export interface TableRow {
  readonly key: string;
  /** One text for each column; the first is the head of the row. */
  readonly cells: readonly string[];
  /** Where the figures of the row can be seen. */
  readonly traces?: (() => readonly Trace[]) | undefined;
  /** The colours of motions that stand before the first text. */
  readonly kinds?: readonly MotionKind[] | undefined;
}

export interface TableData {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly TableRow[];
}

/** Tables as a spreadsheet takes them: a line for the caption, tabs between cells, a line for each row. */
export function tabbedText(tables: readonly TableData[]): string {
  return tables
    .map(({ caption, columns, rows }) =>
      [[caption], columns.map(({ head }) => head), ...rows.map(({ cells }) => cells)]
        .map((cells) => cells.map(cellText).join('\t'))
        .join('\n'),
    )
    .join('\n\n');
}

/** A minus that spreadsheets take for one, no tab or line end inside a cell, and nothing that would be read as a formula. */
function cellText(text: string): string {
  const plain = text.replace(/[\t\r\n]+/g, ' ').replace(/−(?=\d)/g, '-');
  const number = /^[+-]?[\d.]+( to -?[\d.]+)?$/.test(plain);
  return !number && /^[=+@-]/.test(plain) ? `'${plain}` : plain;
}
