import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Bounds, boundsText } from '../field-numbers.ts';
import { plainNumber, short } from '../readings/cell-text.ts';

/** A number of a field; the error names the field. */
export function numberOf(text: string, what: string, bounds: Bounds = {}): Result<number, string> {
  const value = plainNumber(text.replace(/\s*%$/, ''));
  const { above, least, below, most, whole } = bounds;
  const outside =
    value === undefined ||
    (above !== undefined && value <= above) ||
    (least !== undefined && value < least) ||
    (below !== undefined && value >= below) ||
    (most !== undefined && value > most) ||
    (whole === true && !Number.isSafeInteger(value));
  if (!outside) return ok(value);
  const found = text.trim() === '' ? 'nothing is written' : `“${short(text.trim())}” is written`;
  return fail(`${what} is ${boundsText(bounds)}; ${found}.`);
}

/** Several results as one; the first that failed says why. */
export function all<Values extends readonly unknown[]>(
  ...results: { readonly [Key in keyof Values]: Result<Values[Key], string> }
): Result<Values, string> {
  const values: unknown[] = [];
  for (const result of results as readonly Result<unknown, string>[]) {
    if (!result.ok) return result;
    values.push(result.value);
  }
  return ok(values as unknown as Values);
}

/** Numbers between blanks, lines, tabs or semicolons; a decimal comma is one as long as no comma parts two numbers. */
export function numbersIn(text: string): Result<readonly number[], string> {
  const words = text.split(/[\s;]+/).filter((word) => word !== '');
  const values: number[] = [];
  for (const [index, word] of words.entries()) {
    const value = plainNumber(word);
    if (value === undefined) return fail(`“${short(word)}”, the ${ordinal(index + 1)} entry, is no number.`);
    values.push(value);
  }
  return ok(values);
}

function ordinal(count: number): string {
  const tail = count % 100 >= 11 && count % 100 <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th');
  return `${count}${tail}`;
}

/** Lines of a pasted table, each with its cells; empty lines are left out. */
export function linesIn(
  text: string,
): readonly { readonly line: number; readonly cells: readonly string[] }[] {
  return text.split('\n').flatMap((each, index) => {
    const cells = each
      .trim()
      .split(/\t|;|\s{2,}|,\s|\s(?=[-+]?[\d.,]+(?:\s|$))/)
      .map((cell) => cell.trim())
      .filter((cell) => cell !== '');
    return cells.length === 0 ? [] : [{ line: index + 1, cells }];
  });
}
