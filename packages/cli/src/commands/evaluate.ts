import { decompositionOf, differenceOf, paceOf, type TimedMethod } from '@evenhand/core/evaluate';
import { type MethodReading, readMethod } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, nameOf, readStudyFile } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { readPercent } from './define-words.ts';
import { evaluateJson, evaluateText } from './evaluate-text.ts';

export const evaluate: Command = {
  words: ['evaluate'],
  summary: 'compare two methods: time saved, output gained, how sure, and where it comes from',
  operands: ['STUDY'],
  options: {
    before: { value: 'ID', help: 'id or name of the method before', needed: true },
    after: { value: 'ID', help: 'id or name of the method after', needed: true },
    confidence: { value: 'PERCENT', help: 'of the intervals; left out, 95' },
    unit: { value: 'UNIT', help: `${timeUnitNames.join(', ')}; left out, seconds` },
    proposed: { help: 'let proposed motions count that nobody has confirmed' },
    json: { help: 'print all of it as JSON' },
  },
  example: 'evenhand evaluate couplings.evenhand.json --before present --after improved',
  notes: [
    'Cycles that are set aside do not count. Times are for one unit: a cycle that turns out two units counts half.',
    'Beside the saving as recorded stands the saving at equal pace, from the motions that both methods share. A faster pace is no better method.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, evaluate.example)]);
    const [file = ''] = call.operands;
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const sides = readSides(io, study.value, call);
    if (!sides.ok) return failWith(io, json, atFile([sides.error], nameOf(file)));
    const [before, after] = sides.value;
    const difference = differenceOf(timed(before), timed(after), { confidence: choice.value.confidence });
    if (!difference.ok) return failWith(io, json, atFile([difference.error], nameOf(file)));
    const pace = paceOf(before, after, choice.value.confidence);
    const notes = [
      ...new Map(
        [...before.notes, ...after.notes, ...difference.value.notes, ...pace.notes].map((note) => [
          note.message,
          note,
        ]),
      ).values(),
    ];
    say(io, atFile(notes, nameOf(file)));
    const compared = {
      before,
      after,
      difference: difference.value,
      decomposition: decompositionOf(before, after),
      pace,
    };
    if (json) await outJson(io, evaluateJson(compared));
    else await io.out(evaluateText(compared, choice.value.unit));
    return exitCode.done;
  },
};

interface Choice {
  readonly confidence: number;
  readonly unit: TimeUnit;
}

function readChoice(call: Call): Result<Choice, string> {
  const confidence = readPercent('confidence', call.text('confidence') ?? '95');
  if (!confidence.ok) return confidence;
  const word = (call.text('unit') ?? 'seconds').toLowerCase();
  const unit = timeUnitNames.find((name) => name === word || timeUnits[name].symbol.toLowerCase() === word);
  if (unit === undefined) return fail(`--unit ${word} is not known; it can be ${timeUnitNames.join(', ')}.`);
  return ok({ confidence: confidence.value, unit });
}

type Sides = readonly [before: MethodReading, after: MethodReading];

function readSides(io: Io, study: Study, call: Call): Result<Sides, Finding> {
  const before = readSide(io, study, call, 'before');
  if (!before.ok) return before;
  const after = readSide(io, study, call, 'after');
  return after.ok ? ok([before.value, after.value]) : after;
}

function readSide(
  io: Io,
  study: Study,
  call: Call,
  side: 'before' | 'after',
): Result<MethodReading, Finding> {
  const method = chooseMethod(io, study, call.text(side));
  return method.ok ? readMethod(study, method.value.id, { proposed: call.flag('proposed') }) : method;
}

function timed({ method, cycles }: MethodReading): TimedMethod {
  return { name: method.name, times: cycles.map(({ duration }) => duration / method.unitsPerCycle) };
}
