import { studySheetPages, type TimeStudySheet } from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { type PaperName, papers } from '@evenhand/core/ground/scene';
import type { Study } from '@evenhand/core/ground/study';
import type { Call, OptionFacts } from '../command.ts';
import { formatOf, stream } from '../files.ts';
import type { Io } from '../io.ts';
import { type SheetOutput, sheetFormats, writeSheets } from './write-sheets.ts';

const paperNames = Object.keys(papers) as PaperName[];

export const definePrintOptions: Readonly<Record<string, OptionFacts>> = {
  output: {
    short: 'o',
    value: 'FILE',
    help: 'FILE.pdf or FILE.svg: the time study sheet, to print and sign',
  },
  paper: { value: paperNames.join('|'), help: 'size of the sheets; left out, a4' },
  date: { value: 'TEXT', help: 'the day of printing at the foot of the sheets; left out, today' },
  as: { value: sheetFormats.join('|'), help: 'what to write, where the name does not say it' },
};

/** Where the sheet goes and how; undefined when none is asked for. The error is a sentence. */
export function readSheetOutput(call: Call): Result<SheetOutput | undefined, string> {
  const output = call.text('output');
  if (output === undefined) return ok(undefined);
  const paper = (call.text('paper') ?? 'a4').toLowerCase();
  const known = paperNames.find((name) => name === paper);
  if (known === undefined)
    return fail(`--paper ${paper} is not known; it can be ${paperNames.join(' or ')}.`);
  const format = formatOf(output, call.text('as'), sheetFormats);
  if (!format.ok) return format;
  if (call.flag('json') && output === stream) return fail('--json and -o - both want standard output.');
  return ok({ output, format: format.value, paper: known });
}

/** Writes the time study sheet where one is asked for, also one without a standard, and tells which files it went to. */
export async function writeStudySheet(
  io: Io,
  study: Study,
  sheet: TimeStudySheet,
  page: SheetOutput | undefined,
  printed: string = io.today(),
): Promise<Result<readonly string[], Finding>> {
  if (page === undefined) return ok([]);
  const pages = studySheetPages(study, sheet, { paper: page.paper, printed });
  const written = await writeSheets(io, page, pages);
  if (written.ok && page.output !== stream) io.say(`Wrote ${written.value.join(', ')}.`);
  return written;
}
