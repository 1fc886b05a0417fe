import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type PaperName, papers } from '@evenhand/core/ground/scene';
import { type GroupingId, groupings } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { chartFacts, processChart, twoHandChart } from '@evenhand/core/record';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, formatOf, nameOf, readStudyFile, stream } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { sheetFormats, writeSheets } from './write-sheets.ts';

const paperNames = Object.keys(papers) as PaperName[];
const groupingNames = Object.keys(groupings) as GroupingId[];
const forms = ['two-hand', 'process'] as const;

export const recordChart: Command = {
  words: ['record', 'chart'],
  summary: 'draw the two-hand chart of a cycle',
  operands: ['STUDY'],
  options: {
    output: { short: 'o', value: 'FILE', help: 'FILE.svg or FILE.pdf; - for standard output', needed: true },
    method: { value: 'ID', help: 'id or name of the method; left out, the first' },
    cycle: { value: 'N', help: 'number of the cycle from 1; left out, the first typical one' },
    form: {
      value: forms.join('|'),
      help: 'to scale with every motion, or by the symbols; left out, two-hand',
    },
    unit: { value: 'UNIT', help: `${timeUnitNames.join(', ')}; left out, winks` },
    paper: { value: paperNames.join('|'), help: 'size of the sheets; left out, a4' },
    grouping: {
      value: 'AUTHOR',
      help: `${groupingNames.join(' or ')}: whose effective motions; left out, the first`,
    },
    date: { value: 'TEXT', help: 'the date on the chart; left out, today' },
    as: { value: sheetFormats.join('|'), help: 'what to write, where the name does not say it' },
    json: { help: 'print what was written as JSON' },
  },
  example: 'evenhand record chart couplings.evenhand.json -o chart.pdf',
  notes: [
    'A chart of several sheets is one PDF. As SVG it is one file a sheet: FILE-1.svg, FILE-2.svg and so on; a single sheet is FILE.svg.',
    'What the reader of the chart should know, such as time that is not marked, is told on standard error.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, recordChart.example)]);
    const [file = ''] = call.operands;
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const method = chooseMethod(io, study.value, call.text('method'));
    if (!method.ok) return failWith(io, json, atFile([method.error], nameOf(file)));
    const { cycle } = choice.value;
    const facts = chartFacts(study.value, method.value.id, { cycle, date: call.text('date') ?? io.today() });
    if (!facts.ok) return failWith(io, json, atFile([facts.error], nameOf(file)));
    const pages =
      choice.value.form === 'process'
        ? processChart(facts.value, choice.value)
        : twoHandChart(facts.value, choice.value);
    const written = await writeSheets(io, choice.value, pages);
    if (!written.ok) return failWith(io, json, [written.error]);
    const notes = atFile(facts.value.notes, nameOf(file));
    say(io, notes);
    if (json) {
      await outJson(io, {
        ok: true,
        files: written.value,
        sheets: pages.length,
        method: method.value.id,
        cycle: facts.value.cycle ?? null,
        notes,
      });
    } else if (choice.value.output !== stream) io.say(`Wrote ${written.value.join(', ')}.`);
    return exitCode.done;
  },
};

interface Choice {
  readonly output: string;
  readonly format: (typeof sheetFormats)[number];
  readonly form: (typeof forms)[number];
  readonly cycle: number | undefined;
  readonly unit: TimeUnit;
  readonly paper: PaperName;
  readonly grouping: GroupingId;
}

function readChoice(call: Call): Result<Choice, string> {
  const output = call.text('output') ?? '';
  const format = formatOf(output, call.text('as'), sheetFormats);
  if (!format.ok) return format;
  if (call.flag('json') && output === stream) return fail('--json and -o - both want standard output.');
  const cycle = call.text('cycle');
  if (cycle !== undefined && !/^[1-9]\d{0,8}$/.test(cycle))
    return fail(`--cycle ${cycle} is not a number of 1 or more.`);
  const form = oneOf('form', call.text('form') ?? 'two-hand', forms);
  const unit = readUnit(call.text('unit') ?? 'winks');
  const paper = oneOf('paper', call.text('paper') ?? 'a4', paperNames);
  const grouping = oneOf('grouping', call.text('grouping') ?? groupingNames[0] ?? '', groupingNames);
  if (!form.ok) return form;
  if (!unit.ok) return unit;
  if (!paper.ok) return paper;
  if (!grouping.ok) return grouping;
  return ok({
    ...{ output, format: format.value, cycle: cycle === undefined ? undefined : Number(cycle) },
    ...{ form: form.value, unit: unit.value, paper: paper.value, grouping: grouping.value },
  });
}

function oneOf<Name extends string>(
  option: string,
  text: string,
  names: readonly Name[],
): Result<Name, string> {
  const found = names.find((name) => name === text.toLowerCase());
  return found === undefined
    ? fail(`--${option} ${text} is not known; it can be ${names.join(' or ')}.`)
    : ok(found);
}

/** A unit by its name or its sign. */
function readUnit(text: string): Result<TimeUnit, string> {
  const word = text.toLowerCase();
  const found = timeUnitNames.find((unit) => unit === word || timeUnits[unit].symbol.toLowerCase() === word);
  return found === undefined
    ? fail(`--unit ${text} is not known; it can be ${timeUnitNames.join(', ')}.`)
    : ok(found);
}
