import type { TextEntry } from './text-entry.ts';

/** What is told about readings taken from a record or a table: part of the catalogue on the time standard. */
export const defineTexts = {
  'define/whole-cycle': {
    severity: 'note',
    text: 'No element of this method can be used, so the whole cycle is timed as one element. Name elements in the study to time each of them.',
  },
  'define/element-missed': {
    severity: 'note',
    text: '“{element}” was not found in {cycles}, so it has no reading there. Look at the motions there, or time it by hand.',
  },
  'define/element-no-time': {
    severity: 'note',
    text: '“{element}” takes no time in {cycles}, so it counts as not done there and has no reading. Look at the motions there.',
  },
  'define/table-no-element': {
    severity: 'error',
    text: 'No column is left that is an element. The first column is the cycle, every other one an element; leave fewer out with --skip.',
  },
  'define/table-skip': {
    severity: 'error',
    text: 'The column “{column}” cannot be skipped, for the table has none of that name behind the column of cycles. Its columns: {known}.',
  },
  'define/table-unnamed': {
    severity: 'error',
    text: 'This column holds something but has no name in the first line. Write the name of the element there.',
  },
  'define/table-cycle': {
    severity: 'error',
    text: '“{found}” is no number of a cycle. The first column counts the cycles: whole numbers from 1.',
  },
  'define/table-cycle-twice': {
    severity: 'error',
    text: 'Cycle {cycle} stands on line {before} already. Number the cycles so that each has one line.',
  },
  'define/table-no-cycle': {
    severity: 'error',
    text: 'There is no cycle {cycle} in the table. Choose others or leave the choice out.',
  },
  'define/table-decimals': {
    severity: 'error',
    text: '“{found}” has another decimal mark than line {other}. Write a point or a comma in the whole table, and no mark between thousands.',
  },
  'define/table-no-times': {
    severity: 'error',
    text: 'The column “{column}” holds no time, but such as “{found}”. If it is no element, name it with --skip; otherwise write times in one unit.',
  },
  'define/table-not-number': {
    severity: 'error',
    text: '“{found}” is no time of “{element}”. Write the number alone, all in the one unit of the table; leave the cell empty where the reading was missed, or write the reason in brackets behind a time that is set aside, such as 38.5 (part fell).',
  },
  'define/table-zero': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} is 0. If the column is no element, name it with --skip; if the element was not done there, leave the cell empty; if it was too short for the watch, add --zeros aside and all such readings are set aside with that reason.',
  },
  'define/table-zero-aside': {
    severity: 'warning',
    text: 'The reading of “{element}” in cycle {cycle} is 0 and was set aside as too short for the watch. Without the shortest readings the mean comes out too long; a finer watch is the remedy.',
  },
  'define/table-missed': {
    severity: 'note',
    text: '“{element}” has no reading in {missed} of {count} cycles ({cycles}). An empty cell is taken as a missed reading. Where an element is not done in every cycle, say how often with --every; otherwise the standard time counts it once in every cycle.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
