import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { CsvLine } from './csv-cells.ts';

/**
 * Seconds digit by digit, so that no decimal is lost; what lies beyond the microsecond is rounded. Nothing for what is
 * no plain number of 0 or more.
 */
export function secondsOf(text: string): Micros | undefined {
  const match = /^(\d*)(?:[.,](\d*))?$/.exec(text.trim());
  const whole = match?.[1] ?? '';
  const rest = match?.[2] ?? '';
  if (match === null || whole + rest === '') return undefined;
  const six = Number(rest.slice(0, 6).padEnd(6, '0')) + (Number(rest[6] ?? 0) >= 5 ? 1 : 0);
  const time = Number(whole) * 1_000_000 + six;
  return Number.isSafeInteger(time) ? micros(time) : undefined;
}

/**
 * A file that writes 1.5 and 1,5 may mean a thousand by one of the two: not to be guessed.
 * @param cells which cells of a line hold times, from 0
 */
export function decimalMarkFaults(lines: readonly CsvLine[], cells: readonly number[]): Finding[] {
  let first: { mark: string; text: string; line: number } | undefined;
  for (const line of lines) {
    for (const cell of cells) {
      const text = line.cells[cell]?.trim() ?? '';
      const mark = /^\d*([.,])\d*$/.exec(text)?.[1];
      if (mark === undefined) continue;
      first ??= { mark, text, line: line.line };
      if (mark === first.mark) continue;
      const words = { found: text, other: first.text, line: first.line };
      return [finding('csv/decimal-mark', { line: line.line, column: cell + 1 }, words)];
    }
  }
  return [];
}

const mostCycles = 1_000_000;

/** The number of a cycle from 1; spreadsheets like to write 1 as 1.0 or 1,0. */
export function cycleOf(text: string): number | undefined {
  const number = Number(text.replace(/[.,]0+$/, ''));
  return /^\d+(?:[.,]0+)?$/.test(text) && number >= 1 && number <= mostCycles ? number : undefined;
}
