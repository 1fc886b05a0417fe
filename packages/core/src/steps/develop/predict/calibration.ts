import { type Interval, sampleOf, studentQuantile } from '../../../ground/numerics/index.ts';
import { type MotionKind, movementLawOf } from '../../../ground/tables/index.ts';
import type { Cell } from './observed.ts';

/** How a cell stands to its law: distance and width in millimetres, undefined where the bench is not measured. */
export interface Measured {
  readonly cell: Cell;
  readonly mean: number;
  /** Microseconds by the law at the pace of its source; undefined where a distance is missing. */
  readonly law: number | undefined;
}

/** A factor on a law with what is not known of it, all on the logarithm. */
export interface Factor {
  readonly factor: number;
  readonly n: number;
  /** Standard deviation of the mean of the logarithms: common to all that it is used for. */
  readonly shared: number;
  /** Standard deviation of one motion about the law at this factor. */
  readonly own: number;
  readonly interval: Interval;
}

export interface Calibration {
  /** Over every motion with a published law: the pace of the record against that of the sources. */
  readonly pace: Factor | undefined;
  readonly ofKind: ReadonlyMap<MotionKind, Factor>;
}

/** The confidence of every interval of a predicted time. */
export const predictedConfidence = 0.9;

/**
 * Calibrates the laws to a record: the mean of the logarithms of measured over law, for each kind of motion with two or
 * more different ones, and over all kinds with a published law for the pace.
 */
export function calibrate(measured: readonly Measured[]): Calibration {
  const byKind = new Map<MotionKind, MeanLog[]>();
  for (const { cell, mean, law } of measured) {
    if (law === undefined || law <= 0) continue;
    const one = { log: Math.log(mean / law), noise: noiseOf(cell.times) };
    byKind.set(cell.kind, [...(byKind.get(cell.kind) ?? []), one]);
  }
  const ofKind = new Map<MotionKind, Factor>();
  const published: MeanLog[] = [];
  for (const [kind, logs] of byKind) {
    const factor = factorOf(logs);
    if (factor !== undefined) ofKind.set(kind, factor);
    if (movementLawOf(kind).source !== 'ours') published.push(...logs);
  }
  return { pace: factorOf(published), ofKind };
}

/** Logarithm of a mean, and the variance that it has from its readings being few. */
interface MeanLog {
  readonly log: number;
  readonly noise: number;
}

/** Variance of the logarithm of a mean of readings; 0 where one reading alone does not tell. */
export function noiseOf(times: readonly number[]): number {
  const { n, variation } = sampleOf(times);
  return variation === undefined ? 0 : variation ** 2 / n;
}

/**
 * Spread of what means stand for: their own spread less what comes from few readings, stretched as Student's t for the
 * freedom that is left, which falls with what is taken away. At least half of the spread is kept, for that of few means is
 * not known well. The last two are ours; tests/reference holds the intervals to what they say.
 */
export function truthSpread(squared: number, noises: readonly number[], degrees: number): number {
  const noise = noises.reduce((sum, value) => sum + value, 0) / Math.max(1, noises.length);
  const kept = Math.max(squared / 4, squared - noise);
  const left = squared > 0 ? kept / squared : 1;
  return stretchOf(Math.max(1, degrees * Math.sqrt(left))) * Math.sqrt(kept);
}

/** Student's t is carried as a wider normal: the standard deviations are stretched by t over z. */
function factorOf(logs: readonly MeanLog[]): Factor | undefined {
  const sample =
    logs.length < 2
      ? undefined
      : sampleOf(
          logs.map(({ log }) => log),
          predictedConfidence,
        );
  if (sample?.deviation === undefined || sample.interval === undefined) return undefined;
  const { n, mean, deviation, interval } = sample;
  const stretch = stretchOf(n - 1);
  const noises = logs.map(({ noise }) => noise);
  return {
    factor: Math.exp(mean),
    n,
    shared: (stretch * deviation) / Math.sqrt(n),
    own: truthSpread(deviation ** 2, noises, n - 1),
    interval: {
      low: Math.exp(interval.low),
      high: Math.exp(interval.high),
      confidence: predictedConfidence,
    },
  };
}

/** Two-sided t over z at the confidence of the predictions. */
export function stretchOf(degrees: number): number {
  return studentQuantile(0.5 + predictedConfidence / 2, degrees) / normalMultiplier;
}

/** z for 90 %. */
export const normalMultiplier = 1.6448536269514722;
