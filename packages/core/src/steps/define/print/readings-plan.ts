import { shortNumber } from '../../../ground/findings/index.ts';
import { textWidth } from '../../../ground/scene/index.ts';
import type { SheetCell, SheetRow, TimeStudySheet } from '../sheet/index.ts';
import { bandsIn, type RunBand } from './run-facts.ts';
import type { SheetMarks } from './sheet-marks.ts';
import { timeCell } from './sheet-numbers.ts';
import type { TablePlace } from './text-table.ts';

/** Sizes of the letters and widths in the table of readings, points. */
export const readingSizes = { time: 7, small: 5.8, mark: 4.8 } as const;
/** A bracket may reach over the edge of the numbers. */
export const bracketWidth = textWidth(')', readingSizes.time, 400);

/** What stands in the cell of one reading. */
export interface Written {
  readonly text: string;
  readonly aside: boolean;
  readonly mark: string;
  readonly rating: string;
}

export interface ReadingsPlan extends TablePlace {
  readonly sheet: TimeStudySheet;
  readonly column: number;
  /** From the right edge of a column to the right edge of its number. */
  readonly behind: number;
  readonly bands: readonly RunBand[];
  readonly marks: SheetMarks;
  /** Each row's readings by cycle. */
  readonly written: readonly ReadonlyMap<number, Written>[];
  readonly whole: ReadonlyMap<number, string>;
}

/** What stands in the cells, and how wide a column must be for all of it. */
export function readingsPlan(sheet: TimeStudySheet, marks: SheetMarks, place: TablePlace): ReadingsPlan {
  const written = sheet.rows.map((row) => writtenOf(row, sheet, marks));
  const whole = wholeOf(sheet);
  let [number, mark] = [textWidth(String(sheet.cycles.at(-1) ?? 1), readingSizes.small, 400), 0];
  for (const text of whole.values()) number = Math.max(number, textWidth(text, readingSizes.time, 600));
  for (const row of written) {
    for (const cell of row.values()) {
      const brackets = cell.aside ? bracketWidth : 0;
      number = Math.max(
        number,
        textWidth(cell.text, readingSizes.time, 400) - brackets,
        textWidth(cell.rating, readingSizes.small, 400),
      );
      mark = Math.max(mark, textWidth(cell.mark, readingSizes.mark, 400));
    }
  }
  for (const cycle of sheet.cycles)
    mark = Math.max(mark, textWidth(marks.ofCycle(cycle), readingSizes.mark, 400));
  const behind = bracketWidth + (mark === 0 ? 0 : mark + 0.6);
  return {
    ...place,
    sheet,
    marks,
    written,
    whole,
    behind,
    column: number + behind + 4,
    bands: bandsIn(sheet, sheet.cycles),
  };
}

function writtenOf(
  { element, cells }: SheetRow,
  { unit }: TimeStudySheet,
  marks: SheetMarks,
): ReadonlyMap<number, Written> {
  return new Map(cells.map((cell) => [cell.cycle, written(cell, element.id, unit, marks)]));
}

function written(
  { cycle, time, rating, setAside, proposal }: SheetCell,
  element: string,
  unit: TimeStudySheet['unit'],
  marks: SheetMarks,
): Written {
  const aside = setAside !== undefined;
  const text = time === undefined ? 'M' : timeCell(time, unit);
  return {
    text: aside ? `(${text})` : text,
    aside,
    mark: `${marks.of(element, cycle)}${proposal === undefined ? '' : '?'}`,
    rating: rating === undefined ? '' : shortNumber(rating),
  };
}

/** Only where it adds up more than one element. */
function wholeOf({ whole, rows, unit }: TimeStudySheet): ReadonlyMap<number, string> {
  const summed = rows.filter(({ element }) => element.occurs === undefined && element.work !== 'inside');
  if (summed.length < 2) return new Map();
  return new Map(
    whole.cycles.flatMap(({ cycle, time }): [number, string][] =>
      time === undefined ? [] : [[cycle, timeCell(time, unit)]],
    ),
  );
}
