import {
  batchTime,
  fitLearning,
  type LearningCurve,
  type LearningFit,
  type LearningPoint,
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
import { readConfidence, readNumber, readPairs, readPercent, readWhole } from './define-words.ts';

const models = { unit: 'unit', average: 'cumulative-average' } as const;

export const defineLearning: Command = {
  words: ['define', 'learning'],
  summary: 'times of units and batches on a learning curve',
  operands: [],
  options: {
    model: { value: 'MODEL', help: 'unit (Crawford) or average (Wright); must be given' },
    first: { value: 'TIME', help: 'time of the first unit, in any unit of time; needed without --points' },
    rate: { value: 'PERCENT', help: 'learning rate, such as 80; needed without --points' },
    points: {
      value: 'LIST',
      help: 'times that were measured, as "1=100; 2=83; 4=66": the curve is fitted through them',
    },
    confidence: { value: 'PERCENT', help: 'of the interval of a fitted rate; left out, 95' },
    unit: { value: 'N', help: 'the unit whose time is wanted, with all units up to it' },
    batch: { value: 'A-B', help: 'the units whose total is wanted' },
    reach: { value: 'TIME', help: 'the time of a unit that shall be reached' },
    json: { help: 'print the result as JSON' },
  },
  example: 'evenhand define learning --model unit --first 100 --rate 80 --unit 20 --batch 11-20',
  notes: [
    'The two models give different times for the same rate, so the model is never taken for granted and is named in every result.',
    'A fit needs three points or more. In the unit model a point is the time of that unit, in the cumulative average model the average of all units up to it.',
    'Times come out in the unit of time of --first or of --points.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const asked = readAsked(call);
    if (!asked.ok) return failWith(io, json, [badUse(asked.error, defineLearning.example)]);
    const drawn = curveOf(asked.value);
    if (!drawn.ok) return failWith(io, json, [drawn.error]);
    const { curve, fit } = drawn.value;
    const told = compute(curve, asked.value);
    if (!told.ok) return failWith(io, json, [told.error]);
    const words = learningModelWords[curve.model];
    const exponent = learningExponent(curve.rate);
    if (json)
      await outJson(io, { ok: true, figure: 'learning', ...curve, words, exponent, fit, ...told.value });
    else await io.out(learningText(curve, fit, told.value));
    return exitCode.done;
  },
};

interface Asked {
  readonly curve: LearningCurve | FitAsked;
  readonly unit: number | undefined;
  readonly batch: { readonly from: number; readonly to: number } | undefined;
  readonly reach: number | undefined;
}

interface FitAsked {
  readonly model: LearningCurve['model'];
  readonly points: readonly LearningPoint[];
  readonly confidence: number;
}

/** What a fit says beyond its curve. */
type Fit = Pick<LearningFit, 'rateInterval' | 'deviation' | 'explained' | 'points'>;

function curveOf({
  curve,
}: Asked): Result<{ readonly curve: LearningCurve; readonly fit: Fit | undefined }, Finding> {
  if (!('points' in curve)) return ok({ curve, fit: undefined });
  const fitted = fitLearning(curve.model, curve.points, curve.confidence);
  if (!fitted.ok) return fitted;
  const { model, first, rate, rateInterval, deviation, explained, points } = fitted.value;
  return ok({ curve: { model, first, rate }, fit: { rateInterval, deviation, explained, points } });
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
  const asks = [unitText, batchText, reachText].some((text) => text !== undefined);
  if (!asks && !('points' in curve.value)) {
    return fail('Say what is wanted: --unit N, --batch A-B or --reach TIME, or --points LIST for a fit.');
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

function readCurve(call: Call): Result<Asked['curve'], string> {
  const word = call.text('model');
  if (word !== 'unit' && word !== 'average') {
    const which = `--model unit (${learningModelWords.unit}) or --model average (${learningModelWords['cumulative-average']})`;
    return fail(
      word === undefined
        ? `The model must be said: ${which}.`
        : `--model ${word} is not known; it can be unit or average.`,
    );
  }
  const [firstText, rateText, points] = [call.text('first'), call.text('rate'), call.text('points')];
  if (points !== undefined) {
    const other = firstText !== undefined ? 'first' : rateText !== undefined ? 'rate' : undefined;
    return other === undefined
      ? readFit(models[word], points, call.text('confidence'))
      : fail(`--points and --${other} are two ways to say one thing; give one.`);
  }
  if (call.text('confidence') !== undefined)
    return fail('--confidence is for a fit; give the times that were measured with --points.');
  if (firstText === undefined) return fail('The option --first TIME is missing.');
  if (rateText === undefined) return fail('The option --rate PERCENT is missing.');
  const first = readNumber('first', firstText);
  if (!first.ok) return first;
  const rate = readPercent('rate', rateText);
  return rate.ok ? ok({ model: models[word], first: first.value, rate: rate.value }) : rate;
}

function readFit(
  model: LearningCurve['model'],
  text: string,
  confidenceText: string | undefined,
): Result<FitAsked, string> {
  const confidence = readConfidence(confidenceText);
  if (!confidence.ok) return confidence;
  const pairs = readPairs('points', text, 'UNIT=TIME');
  if (!pairs.ok) return pairs;
  const points: LearningPoint[] = [];
  for (const [unitText, timeText] of pairs.value) {
    const [unit, time] = [readWhole('points', unitText), readNumber('points', timeText)];
    if (!unit.ok || !time.ok || unit.value < 1 || time.value <= 0)
      return fail(
        `--points: “${unitText}=${timeText}” is not a unit from 1 with a time above 0, such as 4=66.`,
      );
    points.push({ unit: unit.value, time: time.value });
  }
  return ok({ model, points, confidence: confidence.value });
}

function compute(curve: LearningCurve, { unit, batch, reach }: Asked): Result<Told, Finding> {
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

/** How well a fitted rate is known. */
function fitLines({ rateInterval, explained, points }: Fit): string[] {
  const { low, high, confidence } = rateInterval;
  return [
    `Fitted through ${points} points: rate ${percentText(confidence, 0)} interval ${percentText(low)} to ${percentText(high)} (Student’s t on logarithms), ${percentText(explained)} of the spread explained`,
  ];
}

function learningText(
  { model, first, rate }: LearningCurve,
  fit: Fit | undefined,
  { unit, batch, reach }: Told,
): string {
  const name = model === 'unit' ? 'unit model' : 'cumulative average model';
  const words = learningModelWords[model];
  return [
    `${words[0]?.toUpperCase()}${words.slice(1)}.`,
    `First unit ${time(first)}, rate ${percentText(rate)}; times in the unit of the first`,
    ...(fit === undefined ? [] : fitLines(fit)),
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
