import { fail, ok, type Result } from '../../ground/base/index.ts';
import type { Finding } from '../../ground/findings/index.ts';
import {
  type Interval,
  quantileOf,
  type Random,
  seededRandom,
  standardNormalQuantile,
} from '../../ground/numerics/index.ts';
import { firstFault, rangeFault } from './inputs.ts';
import {
  type MeasuredElement,
  measuredStandard,
  type Uncertainty,
  uncertaintyFault,
} from './standard-interval.ts';
import type { AllowancePlan, StandardTime } from './standard-time.ts';

export interface Bootstrap {
  readonly interval: Interval;
  /** Standard deviation of the draws. */
  readonly deviation: number;
  readonly draws: number;
  readonly seed: number;
  /** Draws that were repeated because an element did not occur in them. */
  readonly repeated: number;
  readonly words: string;
}

export interface BootstrapWish extends Uncertainty {
  readonly draws: number;
  readonly seed: number;
}

const whichWork = { worker: 0, process: 1, inside: 2 } as const;
/** So many empty draws in a row mean that an element is too rare for the method; the last mean is kept then. */
const mostRepeats = 100;

/**
 * The check beside the interval: whole cycles are drawn with replacement, so that elements of one cycle stay together,
 * the standard time is computed anew each time, and the level of the rater is drawn from a normal distribution. The
 * interval lies between two quantiles of the draws. The same seed gives the same draws.
 * @param wish 100 to 100,000 draws; the seed is a whole number
 */
export function bootstrapStandard(
  elements: readonly MeasuredElement[],
  plan: AllowancePlan,
  wish: BootstrapWish,
): Result<Bootstrap, Finding> {
  const fault = firstFault(
    uncertaintyFault(wish),
    rangeFault('The number of draws', wish.draws, { least: 100, most: 100_000, whole: true }),
    rangeFault('The seed', wish.seed, { whole: true }),
  );
  if (fault !== undefined) return fail(fault);
  const measured = measuredStandard(elements, plan, wish);
  if (!measured.ok) return measured;
  const table = tableOf(elements, measured.value.standard);
  const { values, repeated } = drawAll(table, plan, wish);
  values.sort();
  const tail = (1 - wish.confidence) / 2;
  const sorted = Array.from(values);
  return ok({
    interval: {
      low: quantileOf(sorted, tail),
      high: quantileOf(sorted, 1 - tail),
      confidence: wish.confidence,
    },
    deviation: deviationOf(values),
    draws: wish.draws,
    seed: wish.seed,
    repeated,
    words: `${wish.draws} draws of whole cycles with replacement from seed ${wish.seed}; between two quantiles of them.`,
  });
}

/**
 * Cycles as rows of numbers. Elements that were read in every cycle are added up to three columns beforehand (outside,
 * machine, inside), the others keep a column for their time and one for whether they were read.
 */
interface Table {
  readonly cycles: number;
  readonly width: number;
  readonly cells: Float64Array;
  readonly gaps: readonly { readonly kind: 0 | 1 | 2; readonly scale: number }[];
}

function tableOf(elements: readonly MeasuredElement[], { elements: rows }: StandardTime): Table {
  const cycles = [...new Set(elements.flatMap(({ readings }) => readings.map(({ cycle }) => cycle)))];
  const rowOf = new Map(cycles.map((cycle, index) => [cycle, index]));
  const whole = (element: MeasuredElement) =>
    element.readings.length === cycles.length &&
    new Set(element.readings.map(({ cycle }) => cycle)).size === cycles.length;
  const gapped = elements.filter((element) => !whole(element));
  const width = 3 + 2 * gapped.length;
  const cells = new Float64Array(cycles.length * width);
  const gaps: { kind: 0 | 1 | 2; scale: number }[] = [];
  for (const [index, element] of elements.entries()) {
    const { factor = 1, frequency = 1 } = rows[index] ?? {};
    const scale = factor * frequency;
    const kind = whichWork[element.work];
    const full = whole(element);
    const column = full ? kind : 3 + 2 * gaps.length;
    if (!full) gaps.push({ kind, scale });
    for (const { cycle, basic } of element.readings) {
      const at = (rowOf.get(cycle) ?? 0) * width + column;
      cells[at] = (cells[at] ?? 0) + (full ? scale * basic : basic);
      if (!full) cells[at + 1] = (cells[at + 1] ?? 0) + 1;
    }
  }
  return { cycles: cycles.length, width, cells, gaps };
}

function drawAll(table: Table, plan: AllowancePlan, { draws, seed, ratingError }: BootstrapWish) {
  const random = seededRandom(seed);
  const values = new Float64Array(draws);
  const sums = new Float64Array(table.width);
  let repeated = 0;
  for (let draw = 0; draw < draws; draw++) {
    for (let attempt = 0; attempt < mostRepeats; attempt++) {
      drawCycles(table, random, sums);
      if (table.gaps.every((_, gap) => (sums[4 + 2 * gap] ?? 0) > 0)) break;
      repeated += 1;
    }
    const level = ratingError === 0 ? 1 : 1 + ratingError * normalDraw(random);
    values[draw] = standardFrom(table, sums, level, plan);
  }
  return { values, repeated };
}

/** The loop in which the time goes: one random row after another, added to the sums. */
function drawCycles({ cycles, width, cells }: Table, random: Random, sums: Float64Array): void {
  sums.fill(0);
  if (width === 3) {
    let [worker, process, inside] = [0, 0, 0];
    for (let count = 0; count < cycles; count++) {
      const at = Math.floor(random() * cycles) * 3;
      worker += cells[at] as number;
      process += cells[at + 1] as number;
      inside += cells[at + 2] as number;
    }
    sums.set([worker, process, inside]);
    return;
  }
  for (let count = 0; count < cycles; count++) {
    const at = Math.floor(random() * cycles) * width;
    for (let column = 0; column < width; column++) {
      sums[column] = (sums[column] as number) + (cells[at + column] as number);
    }
  }
}

function standardFrom(
  { cycles, gaps }: Table,
  sums: Float64Array,
  level: number,
  { contingency }: AllowancePlan,
): number {
  const parts = [0, 1, 2].map((kind) => (sums[kind] ?? 0) / cycles) as [number, number, number];
  for (const [gap, { kind, scale }] of gaps.entries()) {
    parts[kind] += (scale * (sums[3 + 2 * gap] ?? 0)) / Math.max(1, sums[4 + 2 * gap] ?? 0);
  }
  const [worker, process, inside] = parts;
  return (level * worker + Math.max(process, level * inside)) * (1 + contingency);
}

function normalDraw(random: Random): number {
  return standardNormalQuantile((Math.floor(random() * 4_294_967_296) + 0.5) / 4_294_967_296);
}

function deviationOf(values: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
