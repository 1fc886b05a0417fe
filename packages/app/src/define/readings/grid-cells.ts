import { toUs } from '@evenhand/core/define';
import type { Edit } from '@evenhand/core/ground/edit';
import { changeReading, readingAt, setReading } from '../define-edits.ts';
import { fullCellText, readRating } from './cell-text.ts';
import type { Cursor } from './grid-columns.ts';
import type { GridModel } from './grid-model.ts';
import { cellKey } from './grid-state.ts';

/** The nearest cell that the table has. */
export function within({ line, column }: Cursor, { lines, cycles }: GridModel): Cursor {
  return {
    line: Math.max(0, Math.min(line, lines.length - 1)),
    column: Math.max(0, Math.min(column, cycles.length - 1)),
  };
}

/** The cell in which the cursor stands; undefined in a table without any. */
export function currentCell(model: GridModel, { line, column }: Cursor) {
  const at = model.lines[line];
  const cycle = model.cycles[column];
  const shown = at === undefined ? undefined : model.elements[at.element];
  const element = at === undefined ? undefined : model.timeStudy.elements[at.element];
  if (at === undefined || cycle === undefined || shown === undefined || element === undefined)
    return undefined;
  return {
    line: at,
    kind: at.kind,
    cycle,
    /** As it stands in the study; of a record without its times. */
    element,
    stored: readingAt(element, cycle),
    /** With the time of the record. */
    reading: readingAt(shown, cycle),
    key: cellKey(element.id, at.kind, cycle),
  };
}

export type Cell = NonNullable<ReturnType<typeof currentCell>>;

/** What stands in a cell when it is opened. */
export function textOf({ unit }: GridModel, { kind, reading }: Cell): string {
  if (kind === 'rating') return reading?.rating === undefined ? '' : String(reading.rating);
  if (reading === undefined) return '';
  if (reading.us === undefined) return '-';
  const time = fullCellText(reading.us, unit);
  return reading.setAside === undefined ? time : `${time} (${reading.setAside})`;
}

/** The edit of what was typed, if it changes anything, or what is wrong with it. */
export function takeText(
  model: GridModel,
  cell: Cell,
  text: string,
): { readonly edit: Edit | undefined } | string {
  const { timeStudy, unit } = model;
  if (text === textOf(model, cell)) return { edit: undefined };
  if (cell.kind === 'rating') {
    const rating = readRating(text, `“${cell.element.name}” in cycle ${cell.cycle}`, timeStudy.scale);
    if (!rating.ok) return rating.error;
    if (cell.reading?.us === undefined) {
      return text.trim() === ''
        ? { edit: undefined }
        : 'There is no reading here to rate. Write its time first.';
    }
    return { edit: changeReading(timeStudy, cell.element, cell.cycle, { rating: rating.value }) };
  }
  const entry = toUs(text, unit);
  if (!entry.ok) return entry.error.message;
  const { value } = entry;
  if (value.kind === 'empty') return { edit: setReading(timeStudy, cell.element, cell.cycle, null) };
  if (value.kind === 'missed') {
    return { edit: setReading(timeStudy, cell.element, cell.cycle, { cycle: cell.cycle }) };
  }
  const change = { us: value.us, setAside: value.setAside ?? null };
  return { edit: changeReading(timeStudy, cell.element, cell.cycle, change) };
}
