import type { TextEntry } from './text-entry.ts';

/** What is told about tables that are read: the part of the catalogue on CSV. */
export const interchangeTexts = {
  'csv/not-text': {
    severity: 'error',
    text: 'This is no table of text: it holds characters that no text has. Save the table as CSV (UTF-8) and choose that file; the first line must name the columns: {columns}.',
  },
  'csv/empty': {
    severity: 'error',
    text: 'There are no rows. The first line must name the columns: {columns}.',
  },
  'csv/missing-column': {
    severity: 'error',
    text: 'The column “{column}” is missing. The first line must name the columns: {columns}. It names: {found}.',
  },
  'csv/unknown-column': {
    severity: 'warning',
    text: 'The column “{column}” is not known and was not read. Known columns: {columns}.',
  },
  'csv/duplicate-column': {
    severity: 'error',
    text: 'The column “{column}” stands twice in the first line. Keep one of them.',
  },
  'csv/hand': { severity: 'error', text: '“{found}” is not a hand. Write left or right.' },
  'csv/hand-both': {
    severity: 'error',
    text: '“{found}” stands for both hands, but every line is for one. Write the line twice, once with left and once with right. Or have all such lines copied (evenhand record import --both copy).',
  },
  'csv/hand-unsaid': {
    severity: 'error',
    text: 'It is not said which hand this is (“{found}”). Look at the film there and write left or right; if it cannot be told, leave the line out and the time counts as not marked. Where all such lines are of one hand, say which (evenhand record import --hand left or --hand right).',
  },
  'csv/motion': {
    severity: 'error',
    text: '“{found}” is not one of the fundamental motions. Write a letter code ({codes}) or a name such as “grasp”.',
  },
  'csv/number': {
    severity: 'error',
    text: '“{found}” is not a time in seconds. Write a number of 0 or more in plain digits, such as 2.35, without a unit or an exponent.',
  },
  'csv/order': {
    severity: 'error',
    text: 'The motion ends at {end} s, which is not after its start at {start} s.',
  },
  'csv/overlap': {
    severity: 'error',
    text: 'The {hand} hand does two things at once: this motion starts at {start} s, the one on line {other} ends at {end} s. A hand can do one motion at a time; correct one of the two times, or let the earlier one be cut (evenhand record import --overlaps cut).',
  },
  'csv/cycle': {
    severity: 'error',
    text: '“{found}” is not a cycle number. Write 1, 2, 3 … or leave it empty.',
  },
  'csv/cycle-order': {
    severity: 'error',
    text: 'Cycle {cycle} begins at {start} s, before cycle {before} ends. Cycles must follow one another.',
  },
  'csv/too-fine': { severity: 'error', text: 'The motion is shorter than a millionth of a second.' },
  'csv/quote': {
    severity: 'error',
    text: 'A quotation mark is opened and never closed. Close it or write it twice.',
  },
  'csv/cells': {
    severity: 'error',
    text: 'The line has {found} cells; the first line names {expected} columns.',
  },
  'csv/after-quote': {
    severity: 'error',
    text: 'There is text after a closing quotation mark. Inside a quoted cell, write a quotation mark twice.',
  },
  'csv/decimal-mark': {
    severity: 'error',
    text: '“{found}” uses another decimal mark than “{other}” on line {line}, so one of the two may be a thousand times too large. Use the same mark in all lines and no mark for thousands.',
  },
  'csv/too-long': {
    severity: 'error',
    text: 'The {column} has {found} characters; {most} is the most. Shorten it.',
  },
  'csv/cycle-gap': {
    severity: 'note',
    text: 'No motion begins in cycle {cycle}; its mark was set just before the next cycle.',
  },
  'csv/cycle-room': {
    severity: 'error',
    text: 'There is no time for cycle {cycle} before this line, and no motion has its number. Number the cycles without a gap.',
  },
  'csv/cycle-filled': {
    severity: 'note',
    text: 'The cycle is empty, but lines before and after it are in cycle {cycle}; it was read as that.',
  },
  'csv/gap': {
    severity: 'note',
    text: 'Between {start} s and {end} s the {hand} hand has no motion; it was read as not marked.',
  },
  'csv/mapping-motion': {
    severity: 'error',
    text: '“{found}” is not a motion. Write a letter code ({codes}), a name such as “grasp”, or unmarked for what is to count in no figure.',
  },
  'csv/mapping-label': {
    severity: 'error',
    text: 'There is no label. Write the label as the record has it, or leave the line out.',
  },
  'csv/mapping-twice': {
    severity: 'error',
    text: 'The label “{label}” stands on line {line} already, with another motion, object or place; large and small letters count as the same. Keep one of the two.',
  },
  'csv/mapping-again': {
    severity: 'note',
    text: 'The label “{label}” stands on line {line} already, and says the same there. One of the two can go.',
  },
  'csv/mapping-unused': {
    severity: 'note',
    text: 'The record does not have {labels} of the mapping: {names}.',
  },
  'csv/unmapped': {
    severity: 'error',
    text: '“{label}” stands for no motion ({times}, here first). Give it one in a mapping (evenhand record import --mapping FILE), or take all such labels as not marked (--unmapped unmarked).',
  },
  'csv/unmapped-read': {
    severity: 'warning',
    text: '“{label}” stands for no motion ({times}, here first); it was read as not marked and counts in no figure. The label was kept as a note.',
  },
  'csv/subjects': {
    severity: 'error',
    text: 'The table tells of {count} subjects, and a study is about one. Choose one of them, such as evenhand record import --subject "{first}". There are {names}.',
  },
  'csv/unknown-subject': {
    severity: 'error',
    text: 'No line is about “{wish}”. There are {names}.',
  },
  'csv/no-subjects': {
    severity: 'error',
    text: 'The table has no column “subject”, so “{wish}” cannot be chosen. Leave the choice out.',
  },
  'csv/both-copied': {
    severity: 'note',
    text: 'What is said of both hands was copied to each of them ({lines}, here first).',
  },
  'csv/hand-given': {
    severity: 'note',
    text: 'It is not said which hand this is; it was read as the {hand} hand ({lines}, here first).',
  },
  'csv/cut-end': {
    severity: 'note',
    text: 'The {hand} hand did two things at once: the motion on line {line} was cut by {time} s. It ends at {from} s, where the one on line {by} begins, and not at {to} s.',
  },
  'csv/cut-start': {
    severity: 'note',
    text: 'The {hand} hand did two things at once: the motion on line {line} was cut by {time} s. It begins at {to} s and not at {from} s, where the one on line {by} begins too.',
  },
  'csv/cut-split': {
    severity: 'note',
    text: 'The {hand} hand did two things at once: the motion on line {line} was cut by {time} s. It stops at {from} s, where the one on line {by} begins, and goes on at {to} s.',
  },
  'csv/cut-whole': {
    severity: 'warning',
    text: 'The {hand} hand did two things at once: the motion on line {line} was cut by {time} s. Nothing is left of it, because the one on line {by} begins at {from} s too and other motions fill the time until {to} s.',
  },
  'csv/cut-late': {
    severity: 'note',
    text: 'What is not marked gives way to what is: line {line} was cut by {time} s in the {hand} hand. It begins at {to} s and not at {from} s, where the motion on line {by} runs already.',
  },
  'csv/cut-covered': {
    severity: 'note',
    text: 'What is not marked gives way to what is: line {line} was cut by {time} s in the {hand} hand. Nothing is left of it, because motions fill the time from {from} s to {to} s, the one on line {by} first.',
  },
  'csv/wide': {
    severity: 'error',
    text: 'This is a table of elements by cycle: a line for each cycle and a column for each element with its seconds. It has no motion and no hand. Say whose hand it is and which motion each element is (evenhand record import --shape elements --hand right --mapping FILE).',
  },
  'csv/not-wide': {
    severity: 'error',
    text: 'This is a table of motions: a line for each, with its start and its end. Read it without --shape elements.',
  },
  'csv/elements-hand': {
    severity: 'error',
    text: 'A table of elements by cycle does not say whose hand it is. Say it (evenhand record import --hand left or --hand right).',
  },
  'csv/no-elements': {
    severity: 'error',
    text: 'No cycle has an element with a time. Beside cycle and start_s, every column is an element with its seconds.',
  },
  'csv/element-zero': {
    severity: 'note',
    text: 'The element “{label}” takes no time here; it was left out.',
  },
  'csv/element-order': {
    severity: 'error',
    text: 'Cycle {cycle} begins at {start} s, but cycle {before} on line {line} begins no later. Every cycle stands on one line, and their numbers rise with their starts.',
  },
  'csv/element-beyond': {
    severity: 'error',
    text: 'The elements of this line, laid end to end, last too long: “{label}” ends at {end} s, and the cycle on line {other} begins at {start} s. Correct one of the times, or cut what lies beyond (evenhand record import --overlaps cut).',
  },
  'csv/element-cut': {
    severity: 'note',
    text: 'The element “{label}” was cut by {time} s: it would last until {end} s, and the cycle on line {other} begins at {start} s.',
  },
  'csv/element-dropped': {
    severity: 'warning',
    text: 'The element “{label}” was cut by {time} s. Nothing is left of it, because the cycle on line {other} begins at {start} s, before the element does.',
  },
  'csv/cycle-left-out': {
    severity: 'note',
    text: 'Cycle {cycle} of the table has no element with a time before the next begins; it was left out.',
  },
  'csv/cycle-renumbered': {
    severity: 'note',
    text: 'Cycles of a study are numbered from 1 without a gap, so cycle {found} of the table became cycle {became}, and those after it follow.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
