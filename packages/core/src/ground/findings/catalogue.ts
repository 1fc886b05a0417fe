import { defineTexts } from './define-texts.ts';
import { developTexts } from './develop-texts.ts';
import { evaluateTexts } from './evaluate-texts.ts';
import { handsTexts } from './hands-texts.ts';
import { interchangeTexts } from './interchange-texts.ts';
import { proposeTexts } from './propose-texts.ts';
import { studyTexts } from './study-texts.ts';
import type { TextEntry } from './text-entry.ts';
import { trackTexts } from './track-texts.ts';

export type { Severity } from './text-entry.ts';

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
  ...studyTexts,
  ...interchangeTexts,
  ...trackTexts,
  ...handsTexts,
  // the proof that a method is better
  ...developTexts,
  ...proposeTexts,
  ...evaluateTexts,
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
  'record/chart-with-proposals': {
    severity: 'warning',
    text: 'With proposals that nobody has confirmed. So many motions of this chart are proposed, and its totals rest on them: {count}.',
  },
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
    text: 'Proposed motions that nobody has confirmed count in no figure: {count}.',
  },
  'examine/cycles-left-out': {
    severity: 'note',
    text: 'Left out because they hold proposals that nobody has confirmed: {count} of {all} cycles.',
  },
  'examine/with-proposals': {
    severity: 'note',
    text: 'With proposals that nobody has confirmed: {count} of {all} cycles.',
  },
  'examine/with-proposed-motions': {
    severity: 'note',
    text: 'With proposed motions that nobody has confirmed: {count}.',
  },
  'examine/only-proposals': {
    severity: 'warning',
    text: 'Everything that was chosen of “{method}” holds proposals that nobody has confirmed, so there is no figure yet. Confirm a cycle on the record desk, or let proposals count.',
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
  // define; on readings from a record or a table in a file of their own
  ...defineTexts,
  'define/number': { severity: 'error', text: '{what} must be {range}; {found} was given.' },
  'define/too-few-readings': {
    severity: 'error',
    text: 'Readings that count: {found}. At least {least} are needed to say this; take more.',
  },
  'define/too-many-cycles': {
    severity: 'error',
    text: 'More readings would be needed than {limit}. Ask for less precision or less confidence.',
  },
  'define/no-spread': {
    severity: 'warning',
    text: 'All {count} readings are equal, so they say nothing about how much the time varies. The watch may be too coarse, or figures were copied; take more readings with a finer watch.',
  },
  'define/multiplier-with-t': {
    severity: 'error',
    text: 'Student’s t depends on the number of readings, so a fixed multiplier cannot be given with it. Give the confidence instead.',
  },
  'define/no-reason': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} is set aside without a reason. Write why it does not belong to the work.',
  },
  'define/reading-not-number': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} is no number that can be a time. Write the time, or leave the cell empty if it was missed.',
  },
  'define/reading-negative': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} is below 0. Correct it, or leave the cell empty if it was missed.',
  },
  'define/reading-zero': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} is 0. If the element did not occur there, leave the cell empty and give its frequency; if it was too short for the watch, set the reading aside with that reason.',
  },
  'define/watch-order': {
    severity: 'error',
    text: 'Reading {place} of the watch is no number after the one before it. A watch that runs on only rises; correct it, or mark it as missed.',
  },
  'define/no-reading': {
    severity: 'error',
    text: 'No reading of “{element}” counts: all were missed or set aside. Time it, or take the element out.',
  },
  'define/one-reading': {
    severity: 'warning',
    text: '“{element}” has one reading that counts, so nothing can be said about how sure its time is. Take more.',
  },
  'define/same-cycle': {
    severity: 'error',
    text: 'All readings of “{element}” carry the same cycle number, so they have no order of time. Number the cycles.',
  },
  'define/group-empty': {
    severity: 'error',
    text: 'There is no reading for {group}. Leave it out, or add its readings.',
  },
  'define/group-number': {
    severity: 'error',
    text: 'Reading {place} of {group} is no number. Correct it or leave it out.',
  },
  'define/groups': {
    severity: 'error',
    text: 'To compare, at least two groups (one for each {noun}) and more readings than groups are needed. Take more readings.',
  },
  'define/rating': {
    severity: 'error',
    text: 'The rating of {what} cannot be used: {found}. On the {scale} standard is {standard}, and ratings above 0 and up to {most} are taken. Correct it, or choose the scale it was given on.',
  },
  'define/no-rating': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} has no rating, and neither has the element nor the study. Rate one of them.',
  },
  'define/allowance-shift': {
    severity: 'error',
    text: '{what} is {found} of the shift, which leaves no time for work. Give less than 100 %, or give it as a share of basic time.',
  },
  'define/allowance-column': {
    severity: 'error',
    text: 'The edition “{edition}” has no column “{column}”. Choose one of: {known}.',
  },
  'define/allowance-row': {
    severity: 'error',
    text: 'The edition “{edition}” has no such level in the row “{row}”. Choose one that it prints, or another edition.',
  },
  'define/allowance-blank': {
    severity: 'error',
    text: 'The table prints no figure for “{row}”, {level}, in the column “{column}”. It gives no allowance for this; ask a qualified person whether the work may be done at all.',
  },
  'define/allowance-twice': {
    severity: 'error',
    text: 'The row “{row}” was chosen twice. Choose one level of it.',
  },
  'define/no-elements': {
    severity: 'error',
    text: 'There is no element, so there is no standard time. Add the elements of the work.',
  },
  'define/inside-longer': {
    severity: 'note',
    text: 'The work inside the run of the machine lasts longer than the machine runs, so the machine waits and that work sets the cycle. Shorten it or share it if the machine is to run on.',
  },
  'define/no-process': {
    severity: 'error',
    text: '“{element}” is said to be done inside the run of a machine, but no element of the machine is there. Add it, or take the work as outside.',
  },
  'define/no-interval': {
    severity: 'warning',
    text: 'No interval can be given for the standard time: “{element}” has fewer than two readings that count. Take more readings.',
  },
  'define/shift-order': {
    severity: 'error',
    text: 'The shift {place} does not end after it starts, or starts before the one before it ends. Correct its times.',
  },
  'define/break-outside': {
    severity: 'error',
    text: 'A break in the shift {place} does not lie inside it, or does not end after it starts. Correct its times.',
  },
  'define/too-few-moments': {
    severity: 'error',
    text: '{wanted} observations were wanted, but the shifts have only {there} moments outside the breaks. Ask for fewer, take a finer step or add shifts.',
  },
  'define/seen-of': {
    severity: 'error',
    text: 'It was seen {seen} times in {count} observations, which cannot be. Both are whole numbers, and the first is not above the second.',
  },
  'define/few-seen': {
    severity: 'note',
    text: 'It was seen, or not seen, fewer than five times, so the interval by the normal distribution is poor; use the one after Wilson beside it.',
  },
  'define/learning-average': {
    severity: 'error',
    text: 'With a rate of {rate} of the cumulative average, a further unit would take no time or less. On the cumulative average model (Wright) the rate is above 50 %; check whether it was given for the unit model (Crawford).',
  },
  'define/learning-points': {
    severity: 'error',
    text: 'A learning curve needs three times above 0 or more, each at a whole unit from 1, at two different units at least. Correct the points or add some.',
  },
  'define/learning-scatter': {
    severity: 'error',
    text: 'The times scatter so widely that no learning curve can be told from them. Look for slips among them, or add more units.',
  },
  'define/learning-far': {
    severity: 'error',
    text: 'That time would be reached only after {most} units, so it is not reached. Give a lower rate or a longer time.',
  },
  'define/learning-never': {
    severity: 'error',
    text: 'That time is never reached: at a rate of 100 % every unit takes as long as the first. Give a lower rate or a longer time.',
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
} as const satisfies Readonly<Record<string, TextEntry>>;

export type FindingCode = keyof typeof findingTexts;
