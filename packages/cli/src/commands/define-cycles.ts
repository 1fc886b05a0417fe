import {
  type CyclesForm,
  type Pilot,
  type Precision,
  type PrecisionReached,
  precisionReached,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { sampleOf } from '@evenhand/core/ground/numerics';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { badUse, type Call, type Command } from '../command.ts';
import { exitCode } from '../io.ts';
import { failWith, outJson, say } from '../report.ts';
import { type FormNeeded, formsNeeded, formWords } from './define-forms.ts';
import {
  precisionDefault,
  readConfidence,
  readNumber,
  readNumbers,
  readPercent,
  readWhole,
} from './define-words.ts';
import { tableLines } from './table-lines.ts';

const forms: readonly CyclesForm[] = ['population', 'normal', 'student', 'student-iterated'];

export const defineCycles: Command = {
  words: ['define', 'cycles'],
  summary: 'say how many cycles must be timed, from a pilot',
  operands: [],
  options: {
    readings: { value: 'LIST', help: 'the pilot, such as 8,7,8,8,7; with decimal commas "8,5; 7,2"' },
    mean: { value: 'N', help: 'mean of the pilot, where its readings are not given' },
    deviation: {
      value: 'N',
      help: 'sample standard deviation (n − 1) of the pilot, in the unit of the mean',
    },
    n: { value: 'N', help: 'number of readings of the pilot' },
    precision: { value: 'PERCENT', help: 'wanted, as a share of the mean; left out, 5' },
    absolute: { value: 'N', help: 'wanted, in the unit of the readings, instead of a share of the mean' },
    confidence: { value: 'PERCENT', help: 'left out, 95' },
    json: { help: 'print the result as JSON' },
  },
  example: 'evenhand define cycles --readings 8,7,8,8,7 --precision 5 --confidence 95',
  notes: [
    'Four forms are printed, each with the factor that it takes for the confidence: the 40-formula with the population deviation (at 95 % with the factor 2, as books print it), z, t with the degrees of freedom of the pilot, and t iterated until it fits the number that comes out.',
    'Unrounded, rounded up, and how many more than the pilot has.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const wish = readWish(call);
    if (!wish.ok) return failWith(io, json, [badUse(wish.error, defineCycles.example)]);
    const pilot = readPilot(call);
    if (!pilot.ok) return failWith(io, json, [pilot.error]);
    const { precision, confidence } = wish.value;
    const needed = formsNeeded(pilot.value, precision, confidence, forms);
    if (!needed.ok) return failWith(io, json, [needed.error]);
    const reached = precisionReached(pilot.value, confidence);
    if (!reached.ok) return failWith(io, json, [reached.error]);
    const notes = needed.value[0]?.notes ?? [];
    say(io, notes);
    const told = { pilot: pilot.value, precision, confidence, reached: reached.value, forms: needed.value };
    if (json)
      await outJson(io, {
        ...{ ok: true, figure: 'cycles', ...told, notes },
        forms: needed.value.map((form) => ({ ...form, notes: undefined })),
      });
    else await io.out(cyclesText(told));
    return exitCode.done;
  },
};

interface Told {
  readonly pilot: Pilot;
  readonly precision: Precision;
  readonly confidence: number;
  readonly reached: PrecisionReached;
  readonly forms: readonly FormNeeded[];
}

function cyclesText({ pilot, precision, confidence, reached, forms: found }: Told): string {
  const wanted =
    precision.kind === 'relative'
      ? `±${percentText(precision.share)} of the mean`
      : `±${short(precision.amount)}`;
  return [
    `Pilot: ${pilot.n} readings, mean ${short(pilot.mean)}, standard deviation (n − 1) ${short(pilot.deviation)}`,
    `Known now: ±${short(reached.halfWidth)}, ±${percentText(reached.share)} of the mean, at ${percentText(confidence)} (t)`,
    `Cycles needed for ${wanted} at ${percentText(confidence)}`,
    '',
    ...tableLines(
      ['form', 'factor', 'unrounded', 'needed', 'more'],
      found.map(({ form, multiplier, unrounded, needed, more }) => [
        formWords[form],
        numberText(multiplier, 3),
        numberText(unrounded, 3),
        String(needed),
        String(more),
      ]),
    ),
    '',
  ].join('\n');
}

function short(value: number): string {
  return numberText(value, 4).replace(/\.?0+$/, '');
}

function readWish(call: Call): Result<Pick<Told, 'precision' | 'confidence'>, string> {
  const [share, amount] = [call.text('precision'), call.text('absolute')];
  if (share !== undefined && amount !== undefined)
    return fail('--precision and --absolute are two ways to say one thing; give one.');
  const confidence = readConfidence(call.text('confidence'));
  if (!confidence.ok) return confidence;
  if (amount !== undefined) {
    const number = readNumber('absolute', amount);
    if (!number.ok) return number;
    return ok({ precision: { kind: 'absolute', amount: number.value }, confidence: confidence.value });
  }
  const precision = readPercent('precision', share ?? String(100 * precisionDefault));
  if (!precision.ok) return precision;
  return ok({ precision: { kind: 'relative', share: precision.value }, confidence: confidence.value });
}

function readPilot(call: Call): Result<Pilot, Finding> {
  const list = call.text('readings');
  const figures = ['mean', 'deviation', 'n'].filter((option) => call.text(option) !== undefined);
  const use = (reason: string) => fail(badUse(reason, defineCycles.example));
  if (list === undefined) {
    if (figures.length < 3)
      return use('A pilot is --readings LIST, or --mean, --deviation and --n together.');
    const [mean, deviation, n] = [
      readNumber('mean', call.text('mean') ?? ''),
      readNumber('deviation', call.text('deviation') ?? ''),
      readWhole('n', call.text('n') ?? ''),
    ];
    for (const item of [mean, deviation, n]) if (!item.ok) return use(item.error);
    return mean.ok && deviation.ok && n.ok
      ? ok({ mean: mean.value, deviation: deviation.value, n: n.value })
      : use('');
  }
  if (figures.length > 0)
    return use(`--readings and --${figures[0]} are two ways to say one thing; give one.`);
  const readings = readNumbers('readings', list);
  if (!readings.ok) return use(readings.error);
  const wrong = readings.value.findIndex((value) => !(value > 0));
  if (wrong >= 0)
    return use(`--readings: number ${wrong + 1} is ${readings.value[wrong]}; a reading is above 0.`);
  if (readings.value.length < 2) {
    return fail(finding('define/too-few-readings', {}, { found: readings.value.length, least: 2 }));
  }
  const { n, mean, deviation = 0 } = sampleOf(readings.value);
  return ok({ n, mean, deviation });
}
