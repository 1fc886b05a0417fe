import {
  examinationReport,
  type FigureSet,
  figuresOf,
  findLeads,
  type MethodReading,
  parseCycles,
  readMethod,
  repeatedSequences,
  variationOf,
} from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type GroupingId, groupings } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, nameOf, readStudyFile } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { examineText } from './examine-text.ts';

const groupingNames = Object.keys(groupings) as GroupingId[];

export const examine: Command = {
  words: ['examine'],
  summary: 'print figures of a method and leads to a better one',
  operands: ['STUDY'],
  options: {
    method: { value: 'ID', help: 'id or name of the method; left out, the first' },
    cycles: { value: 'LIST', help: 'such as 1-6 or 1-4,6; left out, all that are not set aside' },
    leads: { help: 'the leads alone' },
    figures: { help: 'the figures alone' },
    unit: { value: 'UNIT', help: `${timeUnitNames.join(', ')}; left out, seconds` },
    grouping: {
      value: 'AUTHOR',
      help: `${groupingNames.join(' or ')}: whose effective motions; left out, the first`,
    },
    proposed: { help: 'let proposed motions count that nobody has confirmed' },
    json: { help: 'print all of it as JSON, with the frames behind every figure and lead' },
  },
  example: 'evenhand examine couplings.evenhand.json --cycles 1-6',
  notes: [
    'Leads stand in the order of what they are worth: the middle of the interval at stake. Leads that overlap in time share what they save, so the bound on all together is printed and not a sum.',
    'Hours a year need the yearly volume in the heading of the study. JSON follows docs/schema/examination.schema.json.',
    'A study made from a table of motions, without any film, is examined in the same way.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, examine.example)]);
    const { cycles, grouping, unit, parts } = choice.value;
    const [file = ''] = call.operands;
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const method = chooseMethod(io, study.value, call.text('method'));
    if (!method.ok) return failWith(io, json, atFile([method.error], nameOf(file)));
    const proposed = call.flag('proposed');
    const reading = readMethod(study.value, method.value.id, { cycles, proposed });
    if (!reading.ok) return failWith(io, json, atFile([reading.error], nameOf(file)));
    const leads = parts.leads ? findLeads(reading.value) : undefined;
    const figures = parts.figures ? figureSet(reading.value, grouping) : undefined;
    say(io, atFile(reading.value.notes, nameOf(file)));
    const examined = { reading: reading.value, leads, figures };
    if (json) await outJson(io, examinationReport(examined));
    else await io.out(examineText(examined, unit));
    return exitCode.done;
  },
};

function figureSet(reading: MethodReading, grouping: GroupingId): FigureSet {
  return {
    figures: figuresOf(reading, grouping),
    repeated: repeatedSequences(reading),
    variation: variationOf(reading),
  };
}

interface Choice {
  readonly cycles: readonly number[] | undefined;
  readonly grouping: GroupingId;
  readonly unit: TimeUnit;
  readonly parts: { readonly leads: boolean; readonly figures: boolean };
}

function readChoice(call: Call): Result<Choice, string> {
  const wanted = call.text('cycles');
  const cycles = wanted === undefined ? ok(undefined) : parseCycles(wanted);
  if (!cycles.ok) return cycles;
  const author = (call.text('grouping') ?? groupingNames[0] ?? '').toLowerCase();
  const grouping = groupingNames.find((name) => name === author);
  if (grouping === undefined)
    return fail(`--grouping ${author} is not known; it can be ${groupingNames.join(' or ')}.`);
  const word = (call.text('unit') ?? 'seconds').toLowerCase();
  const unit = timeUnitNames.find((name) => name === word || timeUnits[name].symbol.toLowerCase() === word);
  if (unit === undefined) return fail(`--unit ${word} is not known; it can be ${timeUnitNames.join(', ')}.`);
  const [leads, figures] = [call.flag('leads'), call.flag('figures')];
  const parts = leads || figures ? { leads, figures } : { leads: true, figures: true };
  return ok({ cycles: cycles.value, grouping, unit, parts });
}
