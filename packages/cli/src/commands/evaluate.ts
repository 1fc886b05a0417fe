import { comparisonOf, proofPage } from '@evenhand/core/evaluate';
import { ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, nameOf, readStudyFile, stream } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { evaluateOptions, readComparison, readEvaluateChoice } from './evaluate-choice.ts';
import { evaluateJson, evaluateText } from './evaluate-text.ts';
import { writeSheets } from './write-sheets.ts';

export const evaluate: Command = {
  words: ['evaluate'],
  summary: 'compare two methods: time saved, output gained, how sure, and where it comes from',
  operands: ['STUDY'],
  options: evaluateOptions,
  example: 'evenhand evaluate couplings.evenhand.json --before present --after improved -o proof.pdf',
  notes: [
    'Cycles that are set aside do not count. Times are for one unit: a cycle that turns out two units counts half.',
    'Beside the saving as recorded stands the saving at equal pace, from the motions that both methods share. A faster pace is no better method.',
    'With --units-a-year, --hourly-cost and --cost the saving is turned into money, as low, likely and high.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readEvaluateChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, evaluate.example)]);
    const [file = ''] = call.operands;
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const sides = readSides(io, study.value, call);
    if (!sides.ok) return failWith(io, json, atFile([sides.error], nameOf(file)));
    const comparison = readComparison(call, study.value, sides.value);
    if (!comparison.ok) return failWith(io, json, [badUse(comparison.error, evaluate.example)]);
    const { unit, page } = choice.value;
    const facts = comparisonOf(study.value, comparison.value, unit);
    if (!facts.ok) return failWith(io, json, atFile([facts.error], nameOf(file)));
    const { proof, money } = facts.value;
    if (money?.fault !== undefined) return failWith(io, json, [money.fault]);
    say(io, atFile(once(proof.notes), nameOf(file)));
    let files: readonly string[] = [];
    if (page !== undefined) {
      const date = call.text('date') ?? io.today();
      const scene = proofPage(study.value, facts.value, { paper: page.paper, unit, date });
      const written = await writeSheets(io, page, [scene]);
      if (!written.ok) return failWith(io, json, [written.error]);
      files = written.value;
    }
    if (json) await outJson(io, evaluateJson(facts.value, files));
    else if (page?.output !== stream) await io.out(evaluateText(facts.value, unit));
    if (!json && page !== undefined && page.output !== stream) io.say(`Wrote ${files.join(', ')}.`);
    return exitCode.done;
  },
};

interface Sides {
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** The methods that the options name, by id or name. */
function readSides(io: Io, study: Study, call: Call): Result<Sides, Finding> {
  const sides: { before: string | undefined; after: string | undefined } = {
    before: undefined,
    after: undefined,
  };
  for (const side of ['before', 'after'] as const) {
    const wish = call.text(side);
    if (wish === undefined) continue;
    const method = chooseMethod(io, study, wish);
    if (!method.ok) return method;
    sides[side] = method.value.id;
  }
  return ok(sides);
}

function once(notes: readonly Finding[]): readonly Finding[] {
  return [...new Map(notes.map((note) => [note.message, note])).values()];
}
