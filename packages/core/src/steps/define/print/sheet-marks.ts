import { micros } from '../../../ground/base/index.ts';
import { countText, inUnit } from '../../../ground/units/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';
import { timeWords } from './sheet-numbers.ts';

/** What stands behind a reading: a number for a reason, a letter for a foreign element. */
export interface SheetMarks {
  readonly of: (element: string, cycle: number) => string;
  /** Behind the number of a cycle: what happened in it, but in no certain element. */
  readonly ofCycle: (cycle: number) => string;
  /** Each reason with its number and where it applies. */
  readonly setAside: readonly string[];
  /** Each foreign element with its letter. */
  readonly foreign: readonly string[];
}

/** More places than these are not listed again: they stand marked in the table of readings. */
const mostPlaces = 12;

export function sheetMarks(sheet: TimeStudySheet): SheetMarks {
  const reasons = new Map<string, Map<number, string[]>>();
  for (const { element, cells } of sheet.rows) {
    for (const { cycle, setAside } of cells) {
      if (setAside === undefined) continue;
      const places = reasons.get(setAside) ?? new Map<number, string[]>();
      reasons.set(setAside, places);
      places.set(cycle, [...(places.get(cycle) ?? []), element.name]);
    }
  }
  const numbers = new Map([...reasons.keys()].map((reason, index) => [reason, String(index + 1)]));
  const aside = new Map<string, string>();
  for (const { element, cells } of sheet.rows) {
    for (const { cycle, setAside } of cells) {
      if (setAside !== undefined) aside.set(`${element.id} ${cycle}`, numbers.get(setAside) ?? '');
    }
  }
  const foreign = foreignMarks(sheet);
  return {
    of: (element, cycle) =>
      [aside.get(`${element} ${cycle}`), foreign.marks.get(`${element} ${cycle}`)]
        .filter((mark) => mark !== undefined)
        .join(','),
    ofCycle: (cycle) => foreign.marks.get(` ${cycle}`) ?? '',
    setAside: [...reasons].map(
      ([reason, places]) => `${numbers.get(reason)}: ${reason} (${placeWords(places, sheet)}).`,
    ),
    foreign: foreign.lines,
  };
}

function placeWords(places: ReadonlyMap<number, readonly string[]>, { rows }: TimeStudySheet): string {
  const readIn = (cycle: number) =>
    rows.filter(({ cells }) => cells.some((cell) => cell.cycle === cycle)).length;
  const list = [...places].sort(([a], [b]) => a - b);
  const words = list.slice(0, mostPlaces).map(([cycle, names]) => {
    const whose =
      names.length > 1 && names.length === readIn(cycle)
        ? 'all readings'
        : names.map((name) => `“${name}”`).join(', ');
    return `cycle ${cycle}, ${whose}`;
  });
  const rest = list.length - words.length;
  return `${words.join('; ')}${rest === 0 ? '' : `; and ${countText(rest, 'more cycle')}, marked above`}`;
}

/** A, B … Z, AA, AB … */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}

function foreignMarks({ timeStudy, rows, unit }: TimeStudySheet) {
  const marks = new Map<string, string>();
  const names = new Map(rows.map(({ element }) => [element.id, element.name]));
  const lines = (timeStudy.foreign ?? []).map(({ cycle, element, us, what }, index) => {
    const letter = letterOf(index);
    const name = element === undefined ? undefined : names.get(element);
    const at = `${name === undefined ? '' : (element ?? '')} ${cycle}`;
    marks.set(at, marks.has(at) ? `${marks.get(at)},${letter}` : letter);
    const during = name === undefined ? '' : `, during “${name}”`;
    return `${letter}: cycle ${cycle}${during}: ${what}, ${timeWords(inUnit(micros(us), unit), unit)}.`;
  });
  return { marks, lines };
}
