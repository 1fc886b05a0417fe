import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Interval, type Sample, sampleOf } from '../../../ground/numerics/index.ts';
import { boundsFault, firstOf, foundText } from '../inputs.ts';
import { type Saving, savingOf } from '../saving.ts';
import { type DrawnDifference, drawnDifference } from './drawn.ts';
import { type MoreCycles, moreCycles } from './more-cycles.ts';
import { oddsWords } from './odds.ts';
import { type MeanDifference, meanDifference } from './welch.ts';

/** A method as it was timed: the time for one unit in each of its cycles, above 0, in microseconds. */
export interface TimedMethod {
  readonly name: string;
  readonly times: readonly number[];
}

export interface DifferenceWish {
  /** Above 0.5 and below 1; 0.95 when left out. */
  readonly confidence?: number | undefined;
  /** Draws of the bootstrap, 100 to 100,000, and its seed, a whole number; 2000 and 1 when left out. */
  readonly draws?: number | undefined;
  readonly seed?: number | undefined;
  /** Share of studies that shall settle it after further cycles, 0.5 to below 1; 0.8 when left out. */
  readonly power?: number | undefined;
}

/** Ratios of the time after to the time before; below 1 the method after is the shorter one. */
export interface TimeRatio {
  /** Ratio of the geometric means: that of the means, where both methods spread by the same share. */
  readonly value: number;
  readonly interval: Interval;
  readonly degrees: number;
}

export interface MethodTimes {
  readonly name: string;
  /** Microseconds for one unit. */
  readonly sample: Sample;
}

export interface Difference {
  readonly before: MethodTimes;
  readonly after: MethodTimes;
  /** From the two means. */
  readonly saving: Saving;
  /** Microseconds that are saved on a unit: mean before less mean after. */
  readonly saved: number;
  /** Its interval by Welch; undefined with one cycle, or without any spread. */
  readonly savedInterval: Interval | undefined;
  /** By Welch on the logarithms of the times. */
  readonly ratio: TimeRatio | undefined;
  /** The intervals of time saved and of output gained that the ratio gives, as shares. */
  readonly timeSaved: Interval | undefined;
  readonly outputGained: Interval | undefined;
  /** The check beside it: both samples drawn again. Undefined with one cycle. */
  readonly drawn: DrawnDifference | undefined;
  /** Share of studies in which two methods of the same length would differ as much by chance, from the ratio. */
  readonly chance: number | undefined;
  /** `open`: the interval of the ratio holds 1. `unknown`: there is no interval. */
  readonly verdict: 'shorter' | 'longer' | 'open' | 'unknown';
  readonly odds: string;
  /** Only while the verdict is open. */
  readonly more: MoreCycles | undefined;
  readonly notes: readonly Finding[];
}

/**
 * How much longer or shorter a unit takes with one method than with another. It supposes that the cycles of a method are
 * independent of each other and of those of the other method.
 */
export function differenceOf(
  before: TimedMethod,
  after: TimedMethod,
  wish: DifferenceWish = {},
): Result<Difference, Finding> {
  const whole = { confidence: 0.95, draws: 2000, seed: 1, power: 0.8, ...given(wish) };
  const fault = firstOf(timesFault(before), timesFault(after), wishFault(whole));
  if (fault !== undefined) return fail(fault);
  const [first, second] = [sampleOf(before.times, whole.confidence), sampleOf(after.times, whole.confidence)];
  const compared = comparedOf(before, after, whole);
  return ok({
    before: { name: before.name, sample: first },
    after: { name: after.name, sample: second },
    saving: savingOf(first.mean, second.mean),
    saved: first.mean - second.mean,
    savedInterval:
      compared === undefined ? undefined : meanDifference(first, second, whole.confidence)?.interval,
    ...ratiosOf(compared?.onLogs),
    drawn: compared && drawnDifference(before.times, after.times, whole),
    chance: compared?.onLogs.chance,
    verdict: verdictOf(compared?.onLogs),
    odds: oddsWords(compared?.onLogs.chance, verdictOf(compared?.onLogs)),
    more: compared?.more,
    notes: [...notesOn(before), ...notesOn(after)],
  });
}

type WholeWish = { readonly [Key in keyof DifferenceWish]-?: number };

/** What was given, without the fields that were left out by name. */
function given(wish: DifferenceWish): Partial<WholeWish> {
  const { confidence, draws, seed, power } = wish;
  return Object.fromEntries(
    Object.entries({ confidence, draws, seed, power }).filter(([, value]) => value !== undefined),
  );
}

function wishFault({ confidence, draws, seed, power }: WholeWish): Finding | undefined {
  return firstOf(
    boundsFault('The confidence', confidence, { above: 0.5, below: 1 }),
    boundsFault('The number of draws', draws, { least: 100, most: 100_000, whole: true }),
    boundsFault('The seed', seed, { whole: true }),
    boundsFault('The share of studies that settle it', power, { least: 0.5, below: 1 }),
  );
}

/** The logarithms compared, and what would settle an open difference; undefined with one cycle or without any spread. */
function comparedOf(
  before: TimedMethod,
  after: TimedMethod,
  wish: WholeWish,
): { readonly onLogs: MeanDifference; readonly more: MoreCycles | undefined } | undefined {
  // Rounding may leave a trace of spread in the logarithms of equal times, so the times themselves are looked at.
  if (allEqual(before.times) && allEqual(after.times)) return undefined;
  const [first, second] = [sampleOf(before.times.map(Math.log)), sampleOf(after.times.map(Math.log))];
  const onLogs = meanDifference(second, first, wish.confidence);
  if (onLogs === undefined) return undefined;
  const open = verdictOf(onLogs) === 'open';
  return { onLogs, more: open ? moreCycles(onLogs.value, first, second, wish) : undefined };
}

function ratiosOf(
  onLogs: MeanDifference | undefined,
): Pick<Difference, 'ratio' | 'timeSaved' | 'outputGained'> {
  if (onLogs === undefined) return { ratio: undefined, timeSaved: undefined, outputGained: undefined };
  const { value, degrees, interval } = onLogs;
  const { confidence } = interval;
  const [low, high] = [Math.exp(interval.low), Math.exp(interval.high)];
  return {
    ratio: { value: Math.exp(value), interval: { low, high, confidence }, degrees },
    timeSaved: { low: 1 - high, high: 1 - low, confidence },
    outputGained: { low: 1 / high - 1, high: 1 / low - 1, confidence },
  };
}

function verdictOf(onLogs: MeanDifference | undefined): Difference['verdict'] {
  if (onLogs === undefined) return 'unknown';
  if (onLogs.interval.high < 0) return 'shorter';
  return onLogs.interval.low > 0 ? 'longer' : 'open';
}

export function timesFault({ name, times }: TimedMethod): Finding | undefined {
  if (times.length === 0) return finding('evaluate/no-cycle', {}, { method: name });
  const index = times.findIndex((time) => !(time > 1e-6 && time <= 1e15));
  if (index < 0) return undefined;
  const time = times[index] ?? Number.NaN;
  return finding(
    'evaluate/cycle-time',
    {},
    { place: index + 1, method: name, found: time === 0 ? 'it is 0' : foundText(time) },
  );
}

function notesOn({ name, times }: TimedMethod): Finding[] {
  const count = times.length;
  if (count === 1) return [finding('evaluate/one-cycle', {}, { method: name })];
  if (allEqual(times)) return [finding('evaluate/no-spread', {}, { method: name, count })];
  return count < fewCycles ? [finding('evaluate/few-cycles', {}, { method: name, count })] : [];
}

/** Below this many cycles the reader is told that intervals are rough; the number is our choice. */
const fewCycles = 10;

function allEqual(values: readonly number[]): boolean {
  return values.every((value) => value === values[0]);
}
