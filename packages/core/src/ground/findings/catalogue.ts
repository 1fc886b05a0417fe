export type Severity = 'error' | 'warning' | 'note';

interface Entry {
  readonly severity: Severity;
  readonly text: string;
}

/** Every text that tells a person about their data or their film, by its stable code. */
export const findingTexts = {
  // the study document
  'study/not-json': {
    severity: 'error',
    text: 'This is not JSON: {reason}. Open the file in a text editor at that place, or take the last good copy.',
  },
  'study/newer-format': {
    severity: 'error',
    text: 'The study was written in format {found}; this program reads up to {known}. Update Evenhand to open it.',
  },
  'study/no-format': {
    severity: 'error',
    text: 'There is no formatVersion, so this is not an Evenhand study. Choose a file that ends in .evenhand.json.',
  },
  'study/shape': { severity: 'error', text: '{reason}.' },
  'study/unknown-film': {
    severity: 'error',
    text: 'The method “{method}” names the film {film}, which the study does not have. Add the film or correct the name.',
  },
  'study/unknown-place': {
    severity: 'error',
    text: 'The place {place} is not in the study. Add it to the places or leave it out here.',
  },
  'study/duplicate-id': {
    severity: 'error',
    text: 'The id {id} is used twice. Give one of the two another id.',
  },
  'study/row-order': {
    severity: 'error',
    text: 'A start at {start} does not come after the one before it ({before}). Starts must grow along the row.',
  },
  'study/row-end': {
    severity: 'error',
    text: 'The row ends at {end}, which is not after its last start ({start}). Set a later end.',
  },
  'study/row-outside-film': {
    severity: 'error',
    text: 'The row reaches {end}, but the film has {frames} frames. Set an earlier end or choose the right film.',
  },
  'study/frame-times': { severity: 'error', text: 'The frame times of the film are not usable: {reason}.' },
  'study/element-outside-film': {
    severity: 'error',
    text: 'The element “{element}” begins at {at}, but the film has {frames} frames. Set it earlier or choose the right film.',
  },
  'study/element-twice': {
    severity: 'error',
    text: 'Two elements of the {hand} hand begin at {at}, so the first would have no length. Move or remove one of them.',
  },
  'study/unknown-method': {
    severity: 'error',
    text: 'The examination names the method {method}, which the study does not have. Add the method or take the examination out.',
  },
  'study/examined-twice': {
    severity: 'error',
    text: 'The examinations {first} and {second} are about the same thing. Put their answers together in one of them.',
  },
  'study/answered-twice': {
    severity: 'error',
    text: 'The question {question} has two answers. Put them together in one.',
  },
  'study/clock': { severity: 'error', text: 'The scene clock of the film is not usable: {reason}.' },
  // edits
  'edit/shape': { severity: 'error', text: 'This edit cannot be read: {reason}.' },
  'edit/no-method': {
    severity: 'error',
    text: 'The method {method} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-film': {
    severity: 'error',
    text: 'The film {film} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-place': {
    severity: 'error',
    text: 'The place {place} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-element': {
    severity: 'error',
    text: 'The element {element} is not in the method any more; the edit was kept apart.',
  },
  'edit/no-examination': {
    severity: 'error',
    text: 'The examination {examination} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-item': {
    severity: 'error',
    text: 'What this edit changes ({item}) is not there any more; it was changed or removed meanwhile.',
  },
  'edit/taken': { severity: 'error', text: 'There is already something with the id {item}.' },
  'edit/changed-meanwhile': {
    severity: 'error',
    text: 'The {field} is not what this edit expected; somebody changed it meanwhile. Look at it and decide again.',
  },
  'edit/boundary-taken': {
    severity: 'error',
    text: 'A boundary already stands at {at}. Change the one that is there instead.',
  },
  'edit/out-of-order': {
    severity: 'error',
    text: 'The boundary cannot go to {at}: it must stay after {after} and before {before}.',
  },
  'edit/outside-film': { severity: 'error', text: 'The film ends at frame {frames}; {at} lies outside.' },
  'edit/in-use': { severity: 'error', text: '{item} is still used by {user}. Change or remove that first.' },
  // interchange
  'csv/empty': {
    severity: 'error',
    text: 'There are no rows. The first line must name the columns: {columns}.',
  },
  'csv/missing-column': {
    severity: 'error',
    text: 'The column “{column}” is missing. The first line must name the columns: {columns}.',
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
    text: '“{found}” stands for both hands, but every line is for one. Write the line twice, once with left and once with right.',
  },
  'csv/hand-unsaid': {
    severity: 'error',
    text: 'It is not said which hand this is (“{found}”). Look at the film there and write left or right; if it cannot be told, leave the line out and the time counts as not marked.',
  },
  'csv/motion': {
    severity: 'error',
    text: '“{found}” is not one of the fundamental motions. Write a letter code ({codes}) or a name such as “grasp”.',
  },
  'csv/number': {
    severity: 'error',
    text: '“{found}” is not a time in seconds. Write a number of 0 or more, such as 2.35.',
  },
  'csv/order': {
    severity: 'error',
    text: 'The motion ends at {end} s, which is not after its start at {start} s.',
  },
  'csv/overlap': {
    severity: 'error',
    text: 'The {hand} hand does two things at once: this motion starts at {start} s, the one on line {other} ends at {end} s. A hand can do one motion at a time; correct one of the two times.',
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
    text: 'The label “{label}” stands on line {line} already; large and small letters count as the same. Keep one of the two.',
  },
  'csv/mapping-unused': {
    severity: 'note',
    text: 'The record does not have {labels} of the mapping: {names}.',
  },
  'csv/unmapped': {
    severity: 'error',
    text: '“{label}” stands for no motion ({times}, here first). Give it one in a mapping (--mapping), or take all such labels as not marked (--unmapped unmarked).',
  },
  'csv/unmapped-read': {
    severity: 'warning',
    text: '“{label}” stands for no motion ({times}, here first); it was read as not marked and counts in no figure. The label was kept as a note.',
  },
  'csv/subjects': {
    severity: 'error',
    text: 'The table tells of {count} subjects, and a study is about one. Choose one of them (--subject): {names}.',
  },
  'csv/unknown-subject': {
    severity: 'error',
    text: 'No line is about “{wish}”. The table tells of {count}: {names}.',
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
  'csv/wide': {
    severity: 'error',
    text: 'This is a table of elements by cycle: a line for each cycle and a column for each element with its seconds. It has no motion and no hand. Say whose hand it is and which motion each element is (--shape elements --hand right --mapping FILE).',
  },
  'csv/elements-hand': {
    severity: 'error',
    text: 'A table of elements by cycle does not say whose hand it is. Say it (--hand left or --hand right).',
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
    text: 'The elements of this line, laid end to end, last too long: “{label}” ends at {end} s, and the cycle on line {other} begins at {start} s. Correct one of the times, or cut what lies beyond (--overlaps cut).',
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
  // record
  'record/nothing-marked': {
    severity: 'warning',
    text: 'Nothing is marked yet in the method “{method}”. Mark a motion first.',
  },
  'record/no-cycle': {
    severity: 'error',
    text: 'There is no cycle {cycle}; the method has {count}. Choose another or leave the choice out.',
  },
  'record/no-method': { severity: 'error', text: 'There is no method {method}. The study has: {known}.' },
  'record/unmarked-in-cycle': {
    severity: 'warning',
    text: 'In cycle {cycle} the {hand} hand has {time} that is not marked yet.',
  },
  'record/open-end': {
    severity: 'note',
    text: 'The last motion of the {hand} hand runs to the end of the film. Mark where it ends if it does not.',
  },
  'record/long-motion': {
    severity: 'note',
    text: 'A motion of the {hand} hand lasts {time}. Check that none is missing inside it.',
  },
  'record/cycle-set-aside': {
    severity: 'note',
    text: 'Cycle {cycle} is set aside as not typical: {reason}.',
  },
  'record/unmarked-in-span': {
    severity: 'warning',
    text: 'The {hand} hand has {time} that is not marked yet.',
  },
  'record/no-cycles': {
    severity: 'note',
    text: 'No cycle is marked in the method “{method}”; charts show the whole row.',
  },
  // examine
  'examine/no-cycle-left': {
    severity: 'error',
    text: 'Every cycle of {method} is set aside. Choose cycles by their numbers, or take one back into the count.',
  },
  'examine/not-all-marked': {
    severity: 'note',
    text: 'Not every part of {cycles} is marked in both hands; what is not marked counts in no figure.',
  },
  'examine/proposals-left-out': {
    severity: 'note',
    text: '{count} proposed motions that nobody has confirmed count in no figure.',
  },
  'examine/decision-reason': {
    severity: 'error',
    text: 'A decision needs a reason, so that it can be understood later. Write why it is “{choice}”.',
  },
  'examine/text-too-long': {
    severity: 'error',
    text: 'The text has {length} characters; at most {limit} can be kept. Shorten it, and keep the rest in a file of its own.',
  },
  'examine/element-no-cycle': {
    severity: 'warning',
    text: 'The element “{element}” begins in no cycle of {method} that is read, so it was not looked for. Let it begin in the cycle in which the other elements begin.',
  },
  'examine/element-other-cycle': {
    severity: 'warning',
    text: 'The element “{element}” begins in {cycle}, but most elements begin in {model}, so it was not looked for. Let all elements begin in one cycle.',
  },
  'examine/element-not-marked': {
    severity: 'warning',
    text: 'Where the element “{element}” begins, the {hand} hand has no motion marked, so it was not looked for. Mark the motion that begins it, or let it begin elsewhere.',
  },
  'examine/element-inside-motion': {
    severity: 'note',
    text: 'The element “{element}” begins inside a motion of the {hand} hand ({motion}) in {cycle}; in every cycle it was taken from the start of that motion. Let it begin at a boundary of that hand to be exact.',
  },
  'examine/element-same-start': {
    severity: 'warning',
    text: 'The element “{element}” begins at the same moment as “{other}”, so it was left out. Move or remove one of them.',
  },
  'examine/element-similar': {
    severity: 'note',
    text: 'In {cycles} the element “{element}” begins with the same motion of the {hand} hand as in its model ({motion}), but with another object.',
  },
  'examine/element-between': {
    severity: 'note',
    text: 'In {cycles} the motion of the {hand} hand that begins the element “{element}” ({motion}) is missing; the motions before and after it follow one another, and the element was taken to begin between them.',
  },
  'examine/element-missing': {
    severity: 'warning',
    text: 'In {cycles} the {hand} hand has no motion that answers to the one with which the element “{element}” begins ({motion}); where it begins there, and the times beside it, are not known.',
  },
  'examine/element-order': {
    severity: 'warning',
    text: 'In {cycles} the element “{element}” and another one begin in another order than in their model; the times beside them are not known there.',
  },
  'examine/element-long-cycle': {
    severity: 'note',
    text: 'In {cycles} the motions are so many and so different from the model that not every way of comparing them was tried. Look at the elements there before using them.',
  },
  // films
  'film/empty': { severity: 'error', text: 'The file {name} is empty. Copy it again from the camera.' },
  'film/not-a-film': {
    severity: 'error',
    text: '{name} is not a film that can be read: {found}. Choose an MP4, MOV, WebM or MKV file.',
  },
  'film/no-picture': {
    severity: 'error',
    text: '{name} has no picture, only {found}. Choose the file that holds the picture.',
  },
  'film/codec': {
    severity: 'error',
    text: 'The picture of {name} is coded as {found}, which this browser cannot decode. Convert it to H.264 (MP4) without changing the frame rate, and open that.',
  },
  'film/truncated': {
    severity: 'error',
    text: '{name} is cut off: {found}. Copy it again from the camera; if the original is broken, repair it into a new file first.',
  },
  'film/broken': {
    severity: 'error',
    text: '{name} cannot be read: {found}. Copy it again or convert it to H.264 (MP4).',
  },
  'film/too-few-frames': {
    severity: 'error',
    text: 'Frames in {name}: {frames}. That leaves no time to mark; choose a longer film.',
  },
  'film/decode': {
    severity: 'error',
    text: 'Frame {frame} could not be decoded: {reason}. The neighbouring frames may still be right.',
  },
  'film/variable-rate': {
    severity: 'note',
    text: 'The time between frames varies from {shortest} to {longest}; every frame keeps its own time.',
  },
  'film/edit-list': {
    severity: 'warning',
    text: '{name} is put together of {pieces} pieces by its edit list; only the first piece is shown. Export the film anew from the program that cut it to see all of it.',
  },
  'film/left-out': {
    severity: 'note',
    text: '{count} pictures in the file are not counted as frames: {reason}.',
  },
  'film/more-tracks': { severity: 'note', text: '{name} holds {tracks} pictures; the first is used.' },
  'film/missing': {
    severity: 'error',
    text: 'The film {name} is not in the store. Open the file again to bring it back; the marks are kept.',
  },
  'film/upload': {
    severity: 'error',
    text: 'The film could not be stored: {reason}. Nothing was kept; try again.',
  },
  'film/hash': {
    severity: 'error',
    text: 'The bytes that arrived are not the bytes that were sent. Nothing was kept; open the film again.',
  },
  // store and server
  'store/not-found': { severity: 'error', text: '{what} is not in the store.' },
  'store/taken': {
    severity: 'error',
    text: 'There is already a study with the id {id}. Open that one, or give this one another id.',
  },
  'store/behind': {
    severity: 'error',
    text: 'The store holds revision {rev}, but this window has seen revision {seen}; the data folder was put back to an older state. Save a copy of the study from this window before you reload it.',
  },
  'store/damaged': {
    severity: 'error',
    text: 'The database {file} cannot be read: {reason}. Put the data folder back from a copy, or choose another with --data.',
  },
  'store/folder': {
    severity: 'error',
    text: 'The data folder {folder} cannot be used: {reason}. Choose another with --data.',
  },
  'store/failed': {
    severity: 'error',
    text: 'It could not be written to the data folder: {reason}. Nothing was changed. See that the disk has room, and try again.',
  },
  'store/newer': {
    severity: 'error',
    text: 'The data folder was written by a newer version of Evenhand. Update the program to open it.',
  },
  'store/in-use': {
    severity: 'error',
    text: 'Another Evenhand (process {pid}) uses the data folder {folder}. Use its window, or stop it first.',
  },
  'server/away': {
    severity: 'warning',
    text: 'The server cannot be reached. Your edits wait in this browser and go over when it is back.',
  },
  'server/body': { severity: 'error', text: 'The request cannot be read: {reason}.' },
  'server/too-large': {
    severity: 'error',
    text: 'What was sent is larger than {limit} MB, which is more than is taken at once.',
  },
  'server/failed': {
    severity: 'error',
    text: 'Something went wrong inside the server; it is written in its output. Try again, and restart it if that does not help.',
  },
  'server/port': {
    severity: 'error',
    text: 'The port {port} on 127.0.0.1 cannot be used: {reason}. Choose another with --port, or leave it out.',
  },
  'server/pdf': { severity: 'error', text: 'The PDF could not be made: {reason}.' },
  'server/refused': { severity: 'error', text: 'The request was refused: {reason}.' },
  // command line
  'cli/use': { severity: 'error', text: '{reason} Try: {example}' },
  'cli/file': { severity: 'error', text: '{file} cannot be read: {reason}.' },
  'cli/not-text': {
    severity: 'error',
    text: '{file} is not UTF-8 text: {reason}. Save it again as “CSV UTF-8” or as UTF-8 text.',
  },
  'cli/exists': {
    severity: 'error',
    text: '{file} is there already and was left as it is. Choose another name, or add --replace.',
  },
  'cli/pages': {
    severity: 'error',
    text: 'The chart has {pages} sheets, and standard output can take one SVG only. Write to FILE.svg, or choose --as pdf.',
  },
  'cli/fault': {
    severity: 'error',
    text: 'This is a fault of the program, not of your file: {reason}. Please report it with the words of the command, the version {version} and, if it may be shown, the file.',
  },
  'cli/write': { severity: 'error', text: '{file} cannot be written: {reason}.' },
} as const satisfies Readonly<Record<string, Entry>>;

export type FindingCode = keyof typeof findingTexts;
