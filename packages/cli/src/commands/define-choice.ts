import { type AllowanceConvention, conventionWords, type Precision } from '@evenhand/core/define';
import { parseCycles } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type RatingScaleId, ratingScales } from '@evenhand/core/ground/tables';
import type { TimeUnit } from '@evenhand/core/ground/units';
import type { Call, OptionFacts } from '../command.ts';
import {
  type NamedNumbers,
  precisionDefault,
  readConfidence,
  readNamed,
  readPercent,
  readUnit,
} from './define-words.ts';

export const scaleNames = Object.keys(ratingScales) as RatingScaleId[];
const conventions = { basic: 'share-of-basic-time', shift: 'share-of-shift' } as const;

/** How readings become a standard, as it was asked for. */
export interface DefineChoice {
  readonly cycles: readonly number[] | undefined;
  readonly proposed: boolean;
  readonly skip: readonly string[];
  readonly zeros: 'aside' | undefined;
  readonly unit: TimeUnit;
  readonly rating: NamedNumbers;
  readonly scale: RatingScaleId;
  /** Every how many cycles an element is done. */
  readonly every: NamedNumbers;
  readonly allowance: number;
  readonly contingency: number;
  readonly convention: AllowanceConvention;
  readonly confidence: number;
  readonly precision: Extract<Precision, { kind: 'relative' }>;
  readonly ratingError: number;
}

export const defineOptions: Readonly<Record<string, OptionFacts>> = {
  method: { value: 'ID', help: 'id or name of the method of a study; left out, the first' },
  cycles: { value: 'LIST', help: 'such as 1-6 or 1-4,6; left out, all' },
  proposed: { help: 'let proposed motions count that nobody has confirmed' },
  skip: { value: 'NAMES', help: 'columns of a table that are no element, with commas between them' },
  zeros: { value: 'aside', help: 'set readings of 0 in a table aside; left out, refuse them' },
  unit: {
    value: 'UNIT',
    help: 'seconds, minutes, winks, tmu, hours: unit of the table and of what is printed; left out, seconds',
  },
  rating: {
    value: 'N',
    help: 'pace on the scale, for all or as "NAME=N; NAME=N"; left out, standard is taken',
  },
  scale: { value: 'SCALE', help: `${scaleNames.join(', ')}; left out, 0-100` },
  every: { value: 'LIST', help: 'elements that are not done in every cycle, as "NAME=10; NAME=4"' },
  allowance: { value: 'PERCENT', help: 'relaxation allowance; left out, none' },
  contingency: { value: 'PERCENT', help: 'contingency on top; left out, none' },
  of: {
    value: 'WHAT',
    help: 'basic or shift: what the allowance is a share of; needed with an allowance',
  },
  confidence: { value: 'PERCENT', help: 'of the intervals; left out, 95' },
  precision: { value: 'PERCENT', help: 'wanted of each mean, for the cycles needed; left out, 5' },
  error: {
    value: 'PERCENT',
    help: 'error of the rating (one standard deviation of its level), carried into the interval; left out, none',
  },
  json: { help: 'print all of it as JSON' },
};

/** The error is a sentence that says what to write instead. */
export function readDefineChoice(call: Call): Result<DefineChoice, string> {
  const wanted = call.text('cycles');
  const cycles = wanted === undefined ? ok(undefined) : parseCycles(wanted);
  if (!cycles.ok) return cycles;
  const unit = readUnit(call.text('unit'));
  if (!unit.ok) return unit;
  const [rating, every] = [
    readNamed('rating', call.text('rating') ?? ''),
    readNamed('every', call.text('every') ?? ''),
  ];
  if (!rating.ok) return rating;
  if (!every.ok) return every;
  const scale = scaleNames.find((name) => name === (call.text('scale') ?? '0-100').replace('–', '-'));
  if (scale === undefined)
    return fail(`--scale ${call.text('scale')} is not known; it can be ${scaleNames.join(', ')}.`);
  const zeros = call.text('zeros');
  if (zeros !== undefined && zeros !== 'aside')
    return fail(`--zeros ${zeros} is not known; it can be aside.`);
  const shares = readShares(call);
  if (!shares.ok) return shares;
  return ok({
    cycles: cycles.value,
    proposed: call.flag('proposed'),
    skip: (call.text('skip') ?? '')
      .split(',')
      .filter((name) => name.trim() !== '')
      .map((name) => name.trim()),
    zeros,
    unit: unit.value,
    rating: rating.value,
    scale,
    every: every.value,
    ...shares.value,
  });
}

type Shares = Pick<
  DefineChoice,
  'allowance' | 'contingency' | 'convention' | 'confidence' | 'precision' | 'ratingError'
>;

function readShares(call: Call): Result<Shares, string> {
  const share = (option: string, otherwise: number) => {
    const text = call.text(option);
    return text === undefined ? ok(otherwise) : readPercent(option, text);
  };
  const allowance = share('allowance', 0);
  if (!allowance.ok) return allowance;
  const contingency = share('contingency', 0);
  if (!contingency.ok) return contingency;
  const confidence = readConfidence(call.text('confidence'));
  if (!confidence.ok) return confidence;
  const precision = share('precision', precisionDefault);
  if (!precision.ok) return precision;
  if (!(precision.value > 0 && precision.value < 1)) {
    return fail(`--precision ${call.text('precision')} is not above 0 and below 100.`);
  }
  const ratingError = share('error', 0);
  if (!ratingError.ok) return ratingError;
  const convention = readConvention(call.text('of'), allowance.value);
  if (!convention.ok) return convention;
  return ok({
    allowance: allowance.value,
    contingency: contingency.value,
    convention: convention.value,
    confidence: confidence.value,
    precision: { kind: 'relative', share: precision.value },
    ratingError: ratingError.value,
  });
}

/** The same figure gives another standard in each convention, so it is asked for and never taken for granted. */
function readConvention(word: string | undefined, allowance: number): Result<AllowanceConvention, string> {
  if (word === undefined) {
    const both = `--of basic (${conventionWords['share-of-basic-time']}) or --of shift (${conventionWords['share-of-shift']})`;
    return allowance === 0
      ? ok('share-of-basic-time')
      : fail(`It must be said what the allowance is a share of: ${both}.`);
  }
  return word === 'basic' || word === 'shift'
    ? ok(conventions[word])
    : fail(`--of ${word} is not known; it can be basic or shift.`);
}
