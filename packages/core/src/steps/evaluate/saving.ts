import { fail, ok, type Result } from '../../ground/base/index.ts';
import type { Finding } from '../../ground/findings/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { boundsFault, firstOf } from './inputs.ts';

/**
 * What a shorter time for the same unit is worth. Time saved and output gained are two figures that are never one:
 * 38 s → 25 s saves 34 % of the time and gives 52 % more output in the same time.
 */
export interface Saving {
  /** Share of the time before that is no longer needed, below 1; below 0 when it takes longer. */
  readonly timeSaved: number;
  /** Output in the same time ÷ output before, less 1; above −1. */
  readonly outputGained: number;
  /** How many times as much comes out in the same time, above 0. */
  readonly times: number;
}

/**
 * From two times for one unit, in any one unit of time.
 * timeSaved = 1 − after ÷ before; outputGained = before ÷ after − 1.
 */
export function savingFromTimes(before: number, after: number): Result<Saving, Finding> {
  const fault = firstOf(
    boundsFault('The time before', before, { above: 0 }),
    boundsFault('The time after', after, { above: 0 }),
  );
  return fault === undefined ? ok(savingOf(before, after)) : fail(fault);
}

/** From two rates of output, such as pieces an hour or pieces for one hour of labour. */
export function savingFromRates(before: number, after: number): Result<Saving, Finding> {
  const fault = firstOf(
    boundsFault('The output before', before, { above: 0 }),
    boundsFault('The output after', after, { above: 0 }),
  );
  return fault === undefined ? ok(savingOf(after, before)) : fail(fault);
}

/** The share of time saved, when the output in the same time has grown by a share above −1: 1 − 1 ÷ (1 + gain). */
export function timeSavedFor(outputGained: number): Result<number, Finding> {
  const fault = boundsFault('The output gained', outputGained, { above: -1 });
  return fault === undefined ? ok(1 - 1 / (1 + outputGained)) : fail(fault);
}

/** The share of output gained in the same time, when a share of the time below 1 is saved: 1 ÷ (1 − saving) − 1. */
export function outputGainedFor(timeSaved: number): Result<number, Finding> {
  const fault = boundsFault('The time saved', timeSaved, { below: 1 });
  return fault === undefined ? ok(1 / (1 - timeSaved) - 1) : fail(fault);
}

/**
 * Both figures in one sentence part, so that neither stands for the other.
 * "34.2 % of the time is saved, which is 52.0 % more output in the same time".
 */
export function savingWords({ timeSaved, outputGained }: Saving, decimals = 1): string {
  const [time, output] = [
    percentText(Math.abs(timeSaved), decimals),
    percentText(Math.abs(outputGained), decimals),
  ];
  return timeSaved >= 0
    ? `${time} of the time is saved, which is ${output} more output in the same time`
    : `${time} more time is needed, which is ${output} less output in the same time`;
}

/** @param before,after above 0 */
export function savingOf(before: number, after: number): Saving {
  return { timeSaved: 1 - after / before, outputGained: before / after - 1, times: before / after };
}
