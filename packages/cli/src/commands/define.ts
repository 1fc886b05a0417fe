import { defineReport, type SheetFault, standardAtWork, type TimeStudySheet } from '@evenhand/core/define';
import { type Finding, findingLine } from '@evenhand/core/ground/findings';
import { badUse, type Command } from '../command.ts';
import { nameOf, stream } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { defineOptions, readDefineChoice } from './define-choice.ts';
import { definePrintOptions, readSheetOutput, writeStudySheet } from './define-print.ts';
import { readTimed, type Timed } from './define-source.ts';
import { sheetText } from './define-text.ts';

export const define: Command = {
  words: ['define'],
  summary: 'time the elements of a record or of a table of readings, and give the standard time',
  operands: ['STUDY'],
  options: { ...defineOptions, ...definePrintOptions },
  example: 'evenhand define couplings.evenhand.json --rating 95 --allowance 12 --of basic',
  notes: [
    'STUDY is a study or a table of readings (CSV): the first column the cycle, every other one an element, an empty cell a missed reading, and 38.5 (part fell) a reading that is set aside with its reason. A column “rating of NAME” rates each reading of the element NAME.',
    'Of a study that holds time studies, the one of --study is worked out; the first, where nothing is said of the readings. Otherwise a record is timed: its named elements, or the whole cycle where none is named. Cycles that are set aside stay so, with their reason.',
    'With -o the time study sheet is written to be printed and signed, also while there is no standard yet. As SVG it is one file a sheet: FILE-1.svg, FILE-2.svg and so on.',
    'Outliers are proposed by a rule that is printed; every one counts until a person sets it aside.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readDefineChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, define.example)]);
    const page = readSheetOutput(call);
    if (!page.ok) return failWith(io, json, [badUse(page.error, define.example)]);
    const [file = ''] = call.operands;
    const timed = await readTimed(io, file, call, choice.value);
    if (!timed.ok) return failWith(io, json, timed.error);
    const { study, timeStudy, source } = timed.value;
    const { sheet, ...check } = standardAtWork(study, timeStudy, choice.value.draws);
    const written = await writeStudySheet(io, study, sheet, page.value, call.text('date'));
    if (!written.ok) return failWith(io, json, [written.error]);
    const { standard, allowances } = sheet;
    if (standard === undefined || allowances === undefined) {
      say(io, source.notes);
      return failWith(io, json, atFile(faultsOf(sheet, timed.value), nameOf(file)));
    }
    const notes = withoutRepeats([...source.notes, ...atFile(sheet.notes, nameOf(file))]);
    say(io, notes);
    if (json)
      await outJson(io, defineReport(sheet, { standard, allowances, ...check }, { ...source, notes }));
    else if (page.value?.output !== stream)
      await io.out(sheetText(sheet, { standard, allowances, ...check }, timed.value));
    return exitCode.done;
  },
};

function withoutRepeats(notes: readonly Finding[]): Finding[] {
  return [...new Map(notes.map((note) => [findingLine(note), note])).values()];
}

/** What stands in the way of a standard; of a stored time study with its place in the document. */
function faultsOf(sheet: TimeStudySheet, { study, source }: Timed): Finding[] {
  const at = (study.timeStudies ?? []).findIndex(({ id }) => id === sheet.timeStudy.id);
  return withoutRepeats(
    sheet.faults.map((fault) =>
      source.basis === 'time-study' && at >= 0
        ? { ...fault.finding, where: { pointer: `/timeStudies/${at}${placeOf(sheet, fault)}` } }
        : fault.finding,
    ),
  );
}

function placeOf({ timeStudy }: TimeStudySheet, { element, cycle, field }: SheetFault): string {
  const at = timeStudy.elements.findIndex(({ id }) => id === element);
  if (at < 0) return field === undefined ? '' : `/${field}`;
  const reading = timeStudy.elements[at]?.readings.findIndex((item) => item.cycle === cycle) ?? -1;
  return `/elements/${at}${reading < 0 ? '' : `/readings/${reading}`}`;
}
