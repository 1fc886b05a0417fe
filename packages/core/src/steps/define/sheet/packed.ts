import type { TimeStudy, TimeStudyElement, TimeStudyReading } from '../../../ground/study/index.ts';
import { cellsOf, readingsIn } from './sheet-row.ts';
import type { SheetCell, SheetRow, TimeStudySheet } from './sheet-types.ts';

/** The readings of an element as columns, which go to another thread without being copied one by one. */
interface PackedReadings {
  readonly cycle: Int32Array;
  /** Microseconds; −1 where the reading was missed. */
  readonly us: Float64Array;
  /** 0 where there is none. */
  readonly rating: Float64Array;
  /** By position. */
  readonly setAside: readonly (readonly [index: number, reason: string])[];
}

/** A time study whose readings are columns. */
export interface PackedTimeStudy {
  readonly head: TimeStudy;
  readonly readings: readonly PackedReadings[];
}

export function packTimeStudy(timeStudy: TimeStudy): PackedTimeStudy {
  return {
    head: { ...timeStudy, elements: timeStudy.elements.map((element) => ({ ...element, readings: [] })) },
    readings: timeStudy.elements.map(({ readings }) => packReadings(readings)),
  };
}

function packReadings(readings: readonly TimeStudyReading[]): PackedReadings {
  const n = readings.length;
  const [cycle, us, rating] = [new Int32Array(n), new Float64Array(n), new Float64Array(n)];
  const setAside: [number, string][] = [];
  readings.forEach((reading, index) => {
    cycle[index] = reading.cycle;
    us[index] = reading.us ?? -1;
    rating[index] = reading.rating ?? 0;
    if (reading.setAside !== undefined) setAside.push([index, reading.setAside]);
  });
  return { cycle, us, rating, setAside };
}

export function unpackTimeStudy({ head, readings }: PackedTimeStudy): TimeStudy {
  return {
    ...head,
    elements: head.elements.map((element, index): TimeStudyElement => {
      const packed = readings[index];
      return packed === undefined ? element : { ...element, readings: unpackReadings(packed) };
    }),
  };
}

function unpackReadings({ cycle, us, rating, setAside }: PackedReadings): TimeStudyReading[] {
  const reasons = new Map(setAside);
  return Array.from(cycle, (number, index) => {
    const [time, own, reason] = [us[index] ?? -1, rating[index] ?? 0, reasons.get(index)];
    return {
      cycle: number,
      ...(time < 0 ? {} : { us: time }),
      ...(own === 0 ? {} : { rating: own }),
      ...(reason === undefined ? {} : { setAside: reason }),
    };
  });
}

/**
 * A sheet without what is there once for every reading: what goes back from another thread. Only of a time study by
 * readings; the readings of one by a record are not in the time study, so its sheet stays whole.
 */
export function slimSheet(sheet: TimeStudySheet): TimeStudySheet {
  if (sheet.timeStudy.source.kind === 'record') return sheet;
  const rows = sheet.rows.map((row) => ({
    ...row,
    element: { ...row.element, readings: [] },
    cells: [],
    rated: row.rated === undefined ? undefined : { ...row.rated, readings: [] },
  }));
  const standard = sheet.standard === undefined ? undefined : { ...sheet.standard, rows: [], measured: [] };
  return { ...sheet, timeStudy: packTimeStudy(sheet.timeStudy).head, rows, standard };
}

/** Puts the readings back into a slim sheet. Basic times of single readings and `standard.measured` stay empty. */
export function filledSheet(sheet: TimeStudySheet, timeStudy: TimeStudy): TimeStudySheet {
  if (timeStudy.source.kind === 'record') return sheet;
  const rows = sheet.rows.map((row, index) =>
    withCells(row, timeStudy.elements[index] ?? row.element, timeStudy),
  );
  const studyRows = rows.flatMap(({ element, summary, rated }) =>
    summary === undefined ? [] : [{ name: element.name, summary, rated }],
  );
  const standard = sheet.standard === undefined ? undefined : { ...sheet.standard, rows: studyRows };
  return { ...sheet, timeStudy, rows, standard };
}

/** The cells are made when they are first asked for: of a long study that takes longer than a page may stand still. */
function withCells(row: SheetRow, element: TimeStudyElement, timeStudy: TimeStudy): SheetRow {
  let made: readonly SheetCell[] | undefined;
  return {
    ...row,
    element,
    get cells() {
      made ??= cellsOf(element, readingsIn(element, timeStudy), row.summary);
      return made;
    },
  };
}
