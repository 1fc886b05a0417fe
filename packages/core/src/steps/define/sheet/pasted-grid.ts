import { type Finding, finding } from '../../../ground/findings/index.ts';
import { csvTable } from '../../record/index.ts';

/** A cell of a pasted text that holds something, with its place in the text. */
export interface GridCell {
  readonly text: string;
  /** From 1. */
  readonly line: number;
  readonly column: number;
}

/** Rows of cells, all of one length; an empty cell is undefined. */
export type Grid = readonly (readonly (GridCell | undefined)[])[];

/** The column of cycles is named so, or not at all. */
export const cycleWord = /^(?:cycles?|no\.?|nr\.?|number|#|n)$/i;

/** A number, also a wrong one, with or without a unit and a reason; “2nd press” is none. */
const figure =
  /^[+\-−]?[.,]?\d[\d.,:\s]*(?:s|sec|seconds?|min|minutes?|winks?|tmu|h|hours?)?\s*(?:\(.*\))?$/is;
const missed = /^(?:[-–—−]|m|missed)$/i;

/** Something that names an element, and is neither a time nor a missed reading. */
export function isName({ text }: GridCell): boolean {
  return !figure.test(text) && !missed.test(text);
}

/** A whole number from 1, which spreadsheets also write as 1.0 or 1,0; undefined for anything else. */
export function wholeNumber(text: string): number | undefined {
  const match = /^(\d{1,9})(?:[.,]0+)?$/.exec(text);
  const value = match === null ? 0 : Number(match[1]);
  return value < 1 ? undefined : value;
}

/** The cells of a text with the cycles down and the elements across, however it was written. */
export function gridOf(text: string): { readonly grid: Grid; readonly faults: readonly Finding[] } {
  const { separator, note } = separatorOf(text);
  const { lines, faults } = csvTable(text, separator);
  const width = lines.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const grid: (GridCell | undefined)[][] = [];
  let next = lines[0]?.line ?? 1;
  for (const { line, cells } of lines) {
    // A line without anything is a cycle without a reading, so it keeps its place.
    for (; next < line; next += 1) grid.push(Array.from({ length: width }, () => undefined));
    next = line + 1;
    grid.push(
      Array.from({ length: width }, (_, at) => {
        const cell = cells[at]?.trim().replace(/\s+/g, ' ') ?? '';
        return cell === '' ? undefined : { text: cell, line, column: at + 1 };
      }),
    );
  }
  return { grid: upright(grid), faults: note === undefined ? faults : [note, ...faults] };
}

/**
 * Tabs part the cells where there are any, else semicolons that stand in every line, else commas that do. Where no line has
 * more than one number with a decimal comma it is one column, and a note says so.
 */
function separatorOf(text: string): { readonly separator: string; readonly note?: Finding } {
  if (text.includes('\t')) return { separator: '\t' };
  const lines = text
    .replace(/"[^"]*"|\([^)\r\n]*\)/g, '')
    .split(/[\r\n]+/)
    .filter((line) => line.trim() !== '');
  if (lines.every((line) => line.includes(';'))) return { separator: ';' };
  if (!lines.some((line) => line.includes(','))) return { separator: '\t' };
  const [head = '', ...rest] = lines;
  const body = /\d/.test(head) ? lines : rest;
  if (!(body.length < lines.length && head.includes(',')) && body.every((line) => decimal.test(line))) {
    return { separator: '\t', note: finding('define/paste-comma', { line: 1 }) };
  }
  return { separator: lines.every((line) => line.includes(',')) ? ',' : '\t' };
}

const decimal = /^\s*[+\-−]?\d*(?:[.,]\d+)?\s*$/;

/** Names down the first column and none across the first line: the elements stand down, so the block is turned. */
function upright(grid: Grid): Grid {
  const [head = [], ...rest] = grid;
  const corner = head[0] !== undefined && cycleWord.test(head[0].text);
  const names = (corner || head[0] === undefined ? rest : grid).flatMap((row) => row[0] ?? []);
  const across = head.slice(1).flatMap((cell) => cell ?? []);
  const turned = head.length > 1 && names.length > 0 && names.every(isName) && !across.some(isName);
  return turned ? head.map((_, at) => grid.map((row) => row[at])) : grid;
}
