import type { TextEntry } from './text-entry.ts';

/** What is told about readings taken from a record or a table: part of the catalogue on the time standard. */
export const defineTexts = {
  'define/not-in-record': {
    severity: 'error',
    text: 'The record of “{method}” has no element “{element}”; it has: {known}. Name the element as the record does, or take it out.',
  },
  'define/record-taken': {
    severity: 'error',
    text: 'Another element of this time study takes the times of “{element}” from the record of “{method}” already. Take one of the two out, or name this one as another element of the record.',
  },
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
  'define/table-cycle-column': {
    severity: 'warning',
    text: 'The first column, “{column}”, is taken as the numbers of the cycles, which do not go up by one. If it holds times of an element, put a column of cycle numbers before it.',
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
  'define/table-rating': {
    severity: 'error',
    text: '“{found}” is no rating of “{element}”. Write the number alone, such as 95, or leave the cell empty where the reading takes the rating of its element.',
  },
  'define/table-rating-of': {
    severity: 'error',
    text: 'The column “{column}” rates “{element}”, which is no element of the table. Name the element as its own column does, or name this column with --skip.',
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
  'define/cell-not-time': {
    severity: 'error',
    text: '“{found}” is not a time. Write a number in {unit}, “-” for a missed reading, or 38.5 (part fell) to set one aside with its reason.',
  },
  'define/cell-negative': {
    severity: 'error',
    text: '“{found}” is below 0. Correct it, or write “-” if the reading was missed.',
  },
  'define/cell-zero': {
    severity: 'error',
    text: 'A reading of 0 is no time. Leave the cell empty if the element did not occur; write “0 (too short for the watch)” if it was too short.',
  },
  'define/cell-short': {
    severity: 'error',
    text: '“{found}” is shorter than a millionth of a second. Look at its unit and its decimal mark.',
  },
  'define/cell-long': {
    severity: 'error',
    text: '“{found}” is longer than a reading can be (11 days). Look at its unit and its decimal mark.',
  },
  'define/cell-reason': {
    severity: 'error',
    text: 'Write the reason between the brackets, such as 38.5 (part fell).',
  },
  'define/cell-reason-long': {
    severity: 'error',
    text: 'The reason has {found} letters; at most {most} are kept. Shorten it.',
  },
  'define/paste-empty': {
    severity: 'error',
    text: 'There is no reading in it. Copy the cells with the times, with the names of the elements in the first line if you like.',
  },
  'define/paste-comma': {
    severity: 'note',
    text: 'Every line was taken as one number with a decimal comma. If the commas part columns, copy the cells from the spreadsheet itself, or put semicolons between them.',
  },
  'define/paste-cycle': {
    severity: 'error',
    text: '“{found}” is no number of a cycle, so its line was left out. Cycles are counted in whole numbers from 1 to {most}.',
  },
  'define/paste-name': {
    severity: 'error',
    text: 'This name of an element has {found} letters; at most {most} are kept. Shorten it and paste again.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
