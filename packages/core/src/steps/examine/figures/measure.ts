import { type Sample, sampleOf, studentQuantile } from '../../../ground/numerics/index.ts';
import type { MethodReading } from '../reading/index.ts';
import type { Figure, FigureUnit } from './figure.ts';

/** The values of one figure for the cycles in which it is not 0, by rising position. */
export interface Tally {
  readonly cycles: number[];
  readonly values: number[];
}

export function emptyTally(): Tally {
  return { cycles: [], values: [] };
}

/** Cycles come in rising order; what comes for the same cycle is added up. */
export function addTo({ cycles, values }: Tally, cycle: number, value: number): void {
  const last = cycles.length - 1;
  if (cycles[last] === cycle) values[last] = (values[last] ?? 0) + value;
  else {
    cycles.push(cycle);
    values.push(value);
  }
}

export function totalOf({ values }: { readonly values: readonly number[] }): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** One value for each cycle, 0 where nothing was added. */
export function dense({ cycles, values }: Tally, count: number): number[] {
  const found = new Array<number>(count).fill(0);
  cycles.forEach((cycle, index) => {
    found[cycle] = values[index] ?? 0;
  });
  return found;
}

/** What every measure of a reading needs; the quantiles are looked up once. */
export interface Measuring {
  readonly cycles: number;
  readonly halfWidth: (n: number) => number;
}

const confidence = 0.95;

export function measuringOf({ cycles }: MethodReading): Measuring {
  const known = new Map<number, number>();
  const halfWidth = (n: number) => {
    const half = known.get(n) ?? studentQuantile(0.5 + confidence / 2, n - 1) / Math.sqrt(n);
    known.set(n, half);
    return half;
  };
  return { cycles: cycles.length, halfWidth };
}

/** A time or a count in every cycle: the mean, 0 for cycles without an entry. */
export function amount(measuring: Measuring, tally: Tally, unit: FigureUnit): Figure {
  const sample = sparseSample(measuring, measuring.cycles, tally.values);
  return { unit, value: sample?.mean, sample, perCycle: () => dense(tally, measuring.cycles) };
}

/** What a part is divided by, cycle by cycle. */
export interface Whole {
  readonly perCycle: readonly number[];
  readonly total: number;
  /** Cycles in which it is not 0. */
  readonly count: number;
}

export function wholeOf(perCycle: readonly number[]): Whole {
  return {
    perCycle,
    total: totalOf({ values: perCycle }),
    count: perCycle.reduce((count, value) => count + (value > 0 ? 1 : 0), 0),
  };
}

/** A part ÷ a whole, times a factor that sets the unit of a rate. */
export function portion(
  measuring: Measuring,
  part: Tally,
  whole: Whole,
  unit: FigureUnit = 'share',
  factor = 1,
): Figure {
  const of = (cycle: number, value: number) => {
    const all = whole.perCycle[cycle] ?? 0;
    return all > 0 ? (value / all) * factor : undefined;
  };
  const quotients: number[] = [];
  part.cycles.forEach((cycle, index) => {
    const quotient = of(cycle, part.values[index] ?? 0);
    if (quotient !== undefined) quotients.push(quotient);
  });
  return {
    unit,
    value: whole.total > 0 ? (totalOf(part) / whole.total) * factor : undefined,
    sample: sparseSample(measuring, whole.count, quotients),
    perCycle: () => dense(part, measuring.cycles).map((value, cycle) => of(cycle, value)),
  };
}

/** A figure that some cycles may lack. */
export function valued(
  unit: FigureUnit,
  perCycle: readonly (number | undefined)[],
  value: number | undefined = undefined,
): Figure {
  const known = perCycle.filter((item) => item !== undefined);
  const sample = known.length === 0 ? undefined : sampleOf(known, confidence);
  return { unit, value: value ?? sample?.mean, sample, perCycle: () => perCycle };
}

/**
 * `sampleOf` for n values of which only some are written down and the others are 0. It costs what is written down, not
 * what is 0: a record with many objects stays linear.
 */
export function sparseSample(measuring: Measuring, n: number, values: readonly number[]): Sample | undefined {
  if (n === 0) return undefined;
  const zeros = n - values.length;
  const mean = totalOf({ values }) / n;
  if (n === 1) return { n, mean, deviation: undefined, variation: undefined, interval: undefined };
  let [squares, rest] = [zeros * mean ** 2, -zeros * mean];
  for (const value of values) {
    squares += (value - mean) ** 2;
    rest += value - mean;
  }
  const deviation = Math.sqrt(Math.max(0, squares - rest ** 2 / n) / (n - 1));
  const half = deviation * measuring.halfWidth(n);
  return {
    n,
    mean,
    deviation,
    variation: mean === 0 ? undefined : deviation / Math.abs(mean),
    interval: { low: mean - half, high: mean + half, confidence },
  };
}
