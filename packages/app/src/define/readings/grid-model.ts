import type { TimeStudySheet } from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import { shortNumber } from '@evenhand/core/ground/findings';
import type { ForeignElement, TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';
import { ratingScales } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { readingAt } from '../define-edits.ts';
import { groupBy } from '../group-by.ts';
import { cellText } from './cell-text.ts';
import { columnWidth, type GridLine, gridCycles, gridLines } from './grid-columns.ts';

/** What the table of readings shows: the readings of the study at once, what is worked out from them when it is there. */
export interface GridModel {
  readonly timeStudy: TimeStudy;
  readonly unit: TimeUnit;
  /** With the times of the record filled in. */
  readonly elements: readonly TimeStudyElement[];
  readonly cycles: readonly number[];
  readonly lines: readonly GridLine[];
  /** Width of the column of a cycle in pixels. */
  readonly column: number;
  /** Words of the outlier rule by element and cycle. */
  readonly proposals: ReadonlyMap<string, ReadonlyMap<number, string>>;
  readonly foreign: ReadonlyMap<number, readonly ForeignElement[]>;
  /** Cycles of which every reading is set aside. */
  readonly asideCycles: ReadonlySet<number>;
}

export function gridModel(timeStudy: TimeStudy, sheet: TimeStudySheet, ratings: boolean): GridModel {
  const { source, unit } = timeStudy;
  const rows = new Map(sheet.rows.map((row) => [row.element.id, row]));
  const elements =
    source.kind === 'readings'
      ? timeStudy.elements
      : timeStudy.elements.map((element) => filledFrom(element, rows.get(element.id)?.element));
  const proposals = new Map(
    sheet.rows.map((row) => [
      row.element.id,
      new Map((row.summary?.proposals ?? []).map(({ cycle, words }) => [cycle, words])),
    ]),
  );
  return {
    timeStudy,
    unit,
    elements,
    cycles: gridCycles(source.kind, source.kind === 'readings' ? cyclesOf(elements) : sheet.cycles),
    lines: gridLines(elements, ratings),
    column: columnWidth(Math.max(cellText(longest(elements), unit).length, lastCycle(sheet).length)),
    proposals,
    foreign: groupBy(timeStudy.foreign ?? [], ({ cycle }) => cycle),
    asideCycles: asideCycles(elements),
  };
}

function longest(elements: readonly TimeStudyElement[]): number {
  let most = 0;
  for (const { readings } of elements) for (const { us = 0 } of readings) most = Math.max(most, us);
  return most;
}

function lastCycle({ cycles }: TimeStudySheet): string {
  return String(cycles.at(-1) ?? 1);
}

/** The name and all else as they stand now, the readings as the record gave them. */
function filledFrom(element: TimeStudyElement, filled: TimeStudyElement | undefined): TimeStudyElement {
  return filled === undefined ? { ...element, readings: [] } : { ...element, readings: filled.readings };
}

function cyclesOf(elements: readonly TimeStudyElement[]): readonly number[] {
  const cycles = new Set<number>();
  for (const { readings } of elements) for (const { cycle } of readings) cycles.add(cycle);
  return [...cycles].sort((a, b) => a - b);
}

function asideCycles(elements: readonly TimeStudyElement[]): ReadonlySet<number> {
  const [aside, counted] = [new Set<number>(), new Set<number>()];
  for (const { readings } of elements) {
    for (const { cycle, setAside } of readings) (setAside === undefined ? counted : aside).add(cycle);
  }
  return new Set([...aside].filter((cycle) => !counted.has(cycle)));
}

export interface CellView {
  readonly text: string;
  readonly state: 'empty' | 'missed' | 'counted' | 'aside' | 'common';
  /** Why the rule asks to look at it. */
  readonly proposal: string | undefined;
  /** What is to be known of it beside its number. */
  readonly words: string;
}

const emptyCell: CellView = { text: '', state: 'empty', proposal: undefined, words: '' };

export function cellView(model: GridModel, line: GridLine, cycle: number): CellView {
  const element = model.elements[line.element];
  const reading = element === undefined ? undefined : readingAt(element, cycle);
  if (element === undefined || reading === undefined) return emptyCell;
  if (line.kind === 'rating') {
    const common = element.rating ?? model.timeStudy.rating;
    const rating = reading.rating ?? common;
    if (rating === undefined || reading.us === undefined) return emptyCell;
    const state = reading.rating === undefined ? 'common' : 'counted';
    return { text: shortNumber(rating), state, proposal: undefined, words: '' };
  }
  if (reading.us === undefined) return { text: '–', state: 'missed', proposal: undefined, words: 'missed' };
  const text = cellText(reading.us, model.unit);
  if (reading.setAside !== undefined) {
    return { text, state: 'aside', proposal: undefined, words: `set aside: ${reading.setAside}` };
  }
  const proposal = model.proposals.get(element.id)?.get(cycle);
  return { text, state: 'counted', proposal, words: proposal === undefined ? '' : 'proposed to look at' };
}

/** The current cell in a line of words. */
export function cellWords(model: GridModel, line: GridLine, cycle: number): string {
  const element = model.elements[line.element];
  if (element === undefined) return '';
  const reading = readingAt(element, cycle);
  const place = `${element.name}, cycle ${cycle}`;
  if (reading === undefined) return `${place}: no reading.`;
  const rating = reading.rating ?? element.rating ?? model.timeStudy.rating;
  const parts = [
    reading.us === undefined ? 'missed' : timesIn(reading.us, model.unit),
    element.work === 'process'
      ? 'machine-paced, not rated'
      : rating === undefined
        ? 'not rated'
        : `rating ${shortNumber(rating)} on the ${ratingScales[model.timeStudy.scale].name}${reading.rating === undefined ? ` (that of the ${element.rating === undefined ? 'study' : 'element'})` : ''}`,
  ];
  return `${place}: ${parts.join(', ')}.`;
}

function timesIn(us: number, unit: TimeUnit): string {
  const time = timeText(micros(us), unit);
  return unit === 'seconds' ? time : `${time} (${timeText(micros(us), 'seconds')})`;
}

/** Where a fault or a note points. */
export function lineOf(model: GridModel, element: string, kind: GridLine['kind'] = 'time'): number {
  const at = model.elements.findIndex(({ id }) => id === element);
  return model.lines.findIndex((line) => line.element === at && line.kind === kind);
}
