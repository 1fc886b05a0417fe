import { type Finding, finding } from '../../../ground/findings/index.ts';

/** One line of the table with the line of the text on which it begins, from 1. */
export interface CsvLine {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  readonly lines: readonly CsvLine[];
  readonly faults: readonly Finding[];
}

/**
 * Takes comma-separated text apart after RFC 4180, with any one character between the cells. Lines may end in CR LF,
 * LF or CR. A cell without quotation marks is trimmed; a quoted one is taken as it stands. Lines with nothing in any
 * cell are left out.
 * @param most reading stops after so many lines; left out, at the end of the text
 */
export function csvTable(text: string, delimiter: string, most = Number.POSITIVE_INFINITY): CsvTable {
  const reader: Reader = { text, delimiter, at: text.startsWith('\uFEFF') ? 1 : 0, line: 1, faults: [] };
  const lines: CsvLine[] = [];
  while (reader.at < text.length && lines.length < most) {
    const { line } = reader;
    const cells = readLine(reader);
    if (cells.some((cell) => cell !== '')) lines.push({ line, cells });
  }
  return { lines, faults: reader.faults };
}

interface Reader {
  readonly text: string;
  readonly delimiter: string;
  readonly faults: Finding[];
  at: number;
  line: number;
}

function readLine(reader: Reader): string[] {
  const cells: string[] = [];
  for (;;) {
    cells.push(readCell(reader, cells.length + 1));
    const { text, at } = reader;
    if (text[at] === reader.delimiter) {
      reader.at += 1;
      continue;
    }
    skipLineEnd(reader);
    return cells;
  }
}

function skipLineEnd(reader: Reader): void {
  if (reader.at >= reader.text.length) return;
  reader.at += reader.text.startsWith('\r\n', reader.at) ? 2 : 1;
  reader.line += 1;
}

function readCell(reader: Reader, column: number): string {
  const start = skipBlanks(reader.text, reader.at, reader.delimiter);
  if (reader.text[start] === '"') return readQuoted(reader, start, column);
  return readPlain(reader).trim();
}

function readPlain(reader: Reader): string {
  const { text, delimiter } = reader;
  let end = reader.at;
  while (end < text.length && text[end] !== delimiter && text[end] !== '\n' && text[end] !== '\r') end += 1;
  const cell = text.slice(reader.at, end);
  reader.at = end;
  return cell;
}

function readQuoted(reader: Reader, start: number, column: number): string {
  const { text } = reader;
  const { line } = reader;
  let cell = '';
  let from = start + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) {
      reader.faults.push(finding('csv/quote', { line, column }));
      reader.at = text.length;
      return cell + text.slice(from);
    }
    cell += text.slice(from, quote);
    from = quote + 1;
    if (text[from] !== '"') break;
    cell += '"';
    from += 1;
  }
  reader.at = from;
  reader.line += (cell.match(/\r\n|\r|\n/g) ?? []).length;
  if (readPlain(reader).trim() !== '') {
    reader.faults.push(finding('csv/after-quote', { line: reader.line, column }));
  }
  return cell;
}

function skipBlanks(text: string, from: number, delimiter: string): number {
  let at = from;
  while ((text[at] === ' ' || text[at] === '\t') && text[at] !== delimiter) at += 1;
  return at;
}

/** A cell as RFC 4180 wants it: quoted when it holds a comma, a quotation mark, a line end or outer blanks. */
export function csvCell(text: string): string {
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Text that a spreadsheet would take for a formula is given an apostrophe before it, so that opening a file that came
 * from somebody else runs nothing. `unguardText` takes just that apostrophe away again.
 */
export function guardText(text: string): string {
  return /^'*[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
}

export function unguardText(text: string): string {
  return /^'+[=+\-@\t\r\n]/.test(text) ? text.slice(1) : text;
}
