import {
  batchTime,
  type LearningCurve,
  learningExponent,
  learningModelWords,
  timeUpTo,
  unitReaching,
  unitTime,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { badUse, type Call, type Command } from '../command.ts';
import { exitCode } from '../io.ts';
import { failWith, outJson } from '../report.ts';
import { readNumber, readPercent, readWhole } from './define-words.ts';

const models = { unit: 'unit', average: 'cumulative-average' } as const;

export const defineLearning: Command = {
  words: ['define', 'learning'],
  summary: 'times of units and batches on a learning curve',
  operands: [],
  options: {
    model: { value: 'MODEL', help: 'unit (Crawford) or average (Wright); must be given' },
    first: { value: 'TIME', help: 'time of the first unit, in any unit of time; must be given' },
    rate: { value: 'PERCENT', help: 'learning rate, such as 80; must be given' },
    unit: { value: 'N', help: 'the unit whose time is wanted, with all units up to it' },
    batch: { value: 'A-B', help: 'the units whose total is wanted' },
    reach: { value: 'TIME', help: 'the time of a unit that shall be reached' },
    json: { help: 'print the result as JSON' },
  },
  example: 'evenhand define learning --model unit --first 100 --rate 80 --unit 20 --batch 11-20',
  notes: [
    'The two models give different times for the same rate, so the model is never taken for granted and is named in every result.',
    'Times come out in the unit of time of --first.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const asked = readAsked(call);
    if (!asked.ok) return failWith(io, json, [badUse(asked.error, defineLearning.example)]);
    const told = compute(asked.value);
    if (!told.ok) return failWith(io, json, [told.error]);
    const { curve } = asked.value;
    const words = learningModelWords[curve.model];
    if (json)
      await outJson(io, { ok: true, ...curve, words, exponent: learningExponent(curve.rate), ...told.value });
    else await io.out(learningText(curve, told.value));
    return exitCode.done;
  },
};

interface Asked {
  readonly curve: LearningCurve;
  readonly unit: number | undefined;
  readonly batch: { readonly from: number; readonly to: number } | undefined;
  readonly reach: number | undefined;
}

interface Told {
  readonly unit?: {
    readonly number: number;
    readonly time: number;
    readonly total: number;
    readonly average: number;
  };
  readonly batch?: {
    readonly from: number;
    readonly to: number;
    readonly total: number;
    readonly average: number;
  };
  readonly reach?: { readonly time: number; readonly unit: number; readonly whole: number };
}

function readAsked(call: Call): Result<Asked, string> {
  const curve = readCurve(call);
  if (!curve.ok) return curve;
  const [unitText, batchText, reachText] = [call.text('unit'), call.text('batch'), call.text('reach')];
  if (unitText === undefined && batchText === undefined && reachText === undefined) {
    return fail('Say what is wanted: --unit N, --batch A-B or --reach TIME.');
  }
  const unit = unitText === undefined ? ok(undefined) : readWhole('unit', unitText);
  if (!unit.ok) return unit;
  const reach = reachText === undefined ? ok(undefined) : readNumber('reach', reachText);
  if (!reach.ok) return reach;
  const ends = batchText === undefined ? undefined : /^\s*(\d{1,15})\s*[-–]\s*(\d{1,15})\s*$/.exec(batchText);
  if (ends === null) return fail(`--batch ${batchText} is no stretch of units. Write such as 11-20.`);
  const batch = ends === undefined ? undefined : { from: Number(ends[1]), to: Number(ends[2]) };
  if (batch !== undefined && batch.to < batch.from)
    return fail(`--batch ${batchText} runs backwards. Write ${batch.to}-${batch.from}.`);
  return ok({ curve: curve.value, unit: unit.value, batch, reach: reach.value });
}

function readCurve(call: Call): Result<LearningCurve, string> {
  const word = call.text('model');
  if (word !== 'unit' && word !== 'average') {
    const which = `--model unit (${learningModelWords.unit}) or --model average (${learningModelWords['cumulative-average']})`;
    return fail(
      word === undefined
        ? `The model must be said: ${which}.`
        : `--model ${word} is not known; it can be unit or average.`,
    );
  }
  const [firstText, rateText] = [call.text('first'), call.text('rate')];
  if (firstText === undefined) return fail('The option --first TIME is missing.');
  if (rateText === undefined) return fail('The option --rate PERCENT is missing.');
  const first = readNumber('first', firstText);
  if (!first.ok) return first;
  const rate = readPercent('rate', rateText);
  return rate.ok ? ok({ model: models[word], first: first.value, rate: rate.value }) : rate;
}

function compute({ curve, unit, batch, reach }: Asked): Result<Told, Finding> {
  let told: Told = {};
  if (unit !== undefined) {
    const time = unitTime(curve, unit);
    if (!time.ok) return time;
    const all = timeUpTo(curve, unit);
    if (!all.ok) return all;
    told = { ...told, unit: { number: unit, time: time.value, ...all.value } };
  }
  if (batch !== undefined) {
    const total = batchTime(curve, batch.from, batch.to);
    if (!total.ok) return total;
    const average = total.value / (batch.to - batch.from + 1);
    told = { ...told, batch: { ...batch, total: total.value, average } };
  }
  if (reach !== undefined) {
    const found = unitReaching(curve, reach);
    if (!found.ok) return found;
    told = { ...told, reach: { time: reach, unit: found.value, whole: Math.ceil(found.value - 1e-9) } };
  }
  return ok(told);
}

function learningText({ model, first, rate }: LearningCurve, { unit, batch, reach }: Told): string {
  const name = model === 'unit' ? 'unit model' : 'cumulative average model';
  const words = learningModelWords[model];
  return [
    `${words[0]?.toUpperCase()}${words.slice(1)}.`,
    `First unit ${time(first)}, rate ${percentText(rate)}; times in the unit of the first`,
    ...(unit === undefined
      ? []
      : [
          `Unit ${unit.number} takes ${time(unit.time)} (${name})`,
          `Units 1 to ${unit.number} take ${time(unit.total)}, on average ${time(unit.average)} (${name})`,
        ]),
    ...(batch === undefined
      ? []
      : [
          `Units ${batch.from} to ${batch.to} take ${time(batch.total)}, on average ${time(batch.average)} (${name})`,
        ]),
    ...(reach === undefined
      ? []
      : [
          `${time(reach.time)} is reached at unit ${numberText(reach.unit, 2)}, so from unit ${reach.whole} on (${name})`,
        ]),
    '',
  ].join('\n');
}

/** Four decimals, for the unit of time may be hours. */
function time(value: number): string {
  return numberText(value, 4);
}
