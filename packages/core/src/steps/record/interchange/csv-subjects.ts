import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { CsvLine } from './csv-cells.ts';
import { namesText } from './csv-names.ts';

/**
 * The lines of one subject: a person, a film, a sitting, whatever the table tells apart. Times of different subjects
 * have nothing to do with one another, so a table of several is read for one of them only.
 * @param cell which cell of a line names the subject, from 0; −1 when the table does not say
 */
export function linesOfSubject(
  { head, lines }: { readonly head: CsvLine; readonly lines: readonly CsvLine[] },
  cell: number,
  wish: string | undefined,
): Result<readonly CsvLine[], readonly Finding[]> {
  if (cell < 0) {
    return wish === undefined ? ok(lines) : fail([finding('csv/no-subjects', { line: head.line }, { wish })]);
  }
  const subjectOf = (line: CsvLine) => (line.cells[cell] ?? '').trim();
  const subjects = [...new Set(lines.map(subjectOf))];
  const where = { line: head.line, column: cell + 1 };
  const words = { count: subjects.length, first: subjects[0] ?? '', names: namesText(subjects) };
  if (wish === undefined) {
    return subjects.length > 1 ? fail([finding('csv/subjects', where, words)]) : ok(lines);
  }
  const own = lines.filter((line) => subjectOf(line) === wish.trim());
  return own.length > 0 ? ok(own) : fail([finding('csv/unknown-subject', where, { wish, ...words })]);
}
