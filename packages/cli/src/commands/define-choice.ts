import type { Precision, StandardWish } from '@evenhand/core/define';
import { parseCycles } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { TimeStudyAllowances, TimeStudyElement } from '@evenhand/core/ground/study';
import { type RatingScaleId, ratingScales } from '@evenhand/core/ground/tables';
import type { TimeUnit } from '@evenhand/core/ground/units';
import type { Call, OptionFacts } from '../command.ts';
import { allowanceOptions, readAllowances } from './define-allowance.ts';
import {
  type NamedNumbers,
  precisionDefault,
  readConfidence,
  readNamed,
  readNumber,
  readPairs,
  readPercent,
  readUnit,
  readWhole,
} from './define-words.ts';

export const scaleNames = Object.keys(ratingScales) as RatingScaleId[];
type Work = TimeStudyElement['work'];
const workNames: readonly Work[] = ['worker', 'process', 'inside'];

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
  /** What paces an element, by the key of its name. */
  readonly work: ReadonlyMap<string, Work>;
  readonly allowances: TimeStudyAllowances;
  /** Relaxation of single elements, by the key of their name. */
  readonly ownAllowances: NamedNumbers['byName'];
  /** Of a table; a record says itself how many units a cycle makes. */
  readonly pieces: number | undefined;
  readonly draws: StandardWish;
  readonly confidence: number;
  readonly precision: Extract<Precision, { kind: 'relative' }>;
  readonly ratingError: number;
}

export const defineOptions: Readonly<Record<string, OptionFacts>> = {
  study: { value: 'ID', help: 'a time study that is stored in the document, by id or name' },
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
  work: {
    value: 'LIST',
    help: 'what paces an element: worker, process (a machine) or inside (work while the machine runs), as "cure=process; load next=inside"; left out, worker',
  },
  pieces: { value: 'N', help: 'pieces that one cycle of a table makes; left out, 1' },
  ...allowanceOptions,
  confidence: { value: 'PERCENT', help: 'of the intervals; left out, 95' },
  precision: { value: 'PERCENT', help: 'wanted of each mean, for the cycles needed; left out, 5' },
  error: {
    value: 'PERCENT',
    help: 'error of the rating (one standard deviation of its level), carried into the interval; left out, none',
  },
  draws: {
    value: 'N',
    help: 'draws of whole cycles as a check beside the interval, 100 to 100000, or 0 for none; left out, 2000',
  },
  seed: { value: 'N', help: 'whole number: the same seed gives the same draws; left out, 1' },
  json: { help: 'print all of it as JSON' },
};

/** The error is a sentence that says what to write instead. */
export function readDefineChoice(call: Call): Result<DefineChoice, string> {
  const wanted = call.text('cycles');
  const cycles = wanted === undefined ? ok(undefined) : parseCycles(wanted);
  if (!cycles.ok) return cycles;
  const unit = readUnit(call.text('unit'));
  if (!unit.ok) return unit;
  const [rating, every, work] = [
    readNamed('rating', call.text('rating') ?? ''),
    readNamed('every', call.text('every') ?? ''),
    readWork(call.text('work') ?? ''),
  ];
  if (!rating.ok) return rating;
  if (!every.ok) return every;
  if (!work.ok) return work;
  const scale = scaleNames.find((name) => name === (call.text('scale') ?? '0-100').replace('–', '-'));
  if (scale === undefined)
    return fail(`--scale ${call.text('scale')} is not known; it can be ${scaleNames.join(', ')}.`);
  const zeros = call.text('zeros');
  if (zeros !== undefined && zeros !== 'aside')
    return fail(`--zeros ${zeros} is not known; it can be aside.`);
  const shares = readShares(call);
  if (!shares.ok) return shares;
  const draws = readDraws(call);
  if (!draws.ok) return draws;
  const pieces = readPieces(call.text('pieces'));
  if (!pieces.ok) return pieces;
  const allowances = readAllowances(call);
  if (!allowances.ok) return allowances;
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
    work: work.value,
    allowances: allowances.value.allowances,
    ownAllowances: allowances.value.own,
    pieces: pieces.value,
    draws: draws.value,
    ...shares.value,
  });
}

function readWork(text: string): Result<ReadonlyMap<string, Work>, string> {
  const pairs = readPairs('work', text, 'NAME=WORK');
  if (!pairs.ok) return pairs;
  const found = new Map<string, Work>();
  for (const [name, word] of pairs.value) {
    const work = workNames.find((known) => known === word.toLowerCase());
    if (work === undefined)
      return fail(`--work: “${word}” of “${name}” is not known; it can be ${workNames.join(', ')}.`);
    found.set(name, work);
  }
  return ok(found);
}

function readPieces(text: string | undefined): Result<number | undefined, string> {
  if (text === undefined) return ok(undefined);
  const pieces = readNumber('pieces', text);
  if (!pieces.ok || (pieces.value > 0 && pieces.value <= 1e6)) return pieces;
  return fail(`--pieces ${text} is not above 0 and up to a million.`);
}

function readDraws(call: Call): Result<StandardWish, string> {
  const draws = readWhole('draws', call.text('draws') ?? '2000');
  if (!draws.ok) return draws;
  if (draws.value !== 0 && (draws.value < 100 || draws.value > 100_000))
    return fail(`--draws ${draws.value} is neither 0 nor a number from 100 to 100000.`);
  const seed = readWhole('seed', call.text('seed') ?? '1');
  return seed.ok ? ok({ draws: draws.value, seed: seed.value }) : seed;
}

type Shares = Pick<DefineChoice, 'confidence' | 'precision' | 'ratingError'>;

function readShares(call: Call): Result<Shares, string> {
  const share = (option: string, otherwise: number) => {
    const text = call.text(option);
    return text === undefined ? ok(otherwise) : readPercent(option, text);
  };
  const confidence = readConfidence(call.text('confidence'));
  if (!confidence.ok) return confidence;
  const precision = share('precision', precisionDefault);
  if (!precision.ok) return precision;
  if (!(precision.value > 0 && precision.value < 1)) {
    return fail(`--precision ${call.text('precision')} is not above 0 and below 100.`);
  }
  const ratingError = share('error', 0);
  if (!ratingError.ok) return ratingError;
  return ok({
    confidence: confidence.value,
    precision: { kind: 'relative', share: precision.value },
    ratingError: ratingError.value,
  });
}
