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
/** So many empty draws in a row mean that an element is too rare for the method; its mean of all readings stands in then. */
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
 * The readings laid out for drawing. Elements that were read in every cycle are added up to one time a cycle for each kind
 * of work beforehand; the others keep the cycles in which they were read.
 */
interface Table {
  readonly cycles: number;
  /** Outside work, machine and inside work of each cycle. */
  readonly whole: readonly [Float64Array, Float64Array, Float64Array];
  readonly gapped: readonly Gapped[];
}

interface Gapped {
  readonly kind: 0 | 1 | 2;
  readonly scale: number;
  /** Sum of the times in each cycle, 0 where there is none. */
  readonly column: Float64Array;
  /** Positions of the cycles that were read (one for each reading), or of those that were not: the shorter list. */
  readonly rows: Int32Array;
  readonly rowsAre: 'read' | 'missing';
  readonly mean: number;
}

function tableOf(elements: readonly MeasuredElement[], { elements: facts }: StandardTime): Table {
  const rowOf = new Map<number, number>();
  for (const { readings } of elements) {
    for (const { cycle } of readings) if (!rowOf.has(cycle)) rowOf.set(cycle, rowOf.size);
  }
  const cycles = rowOf.size;
  const column = () => new Float64Array(cycles);
  const whole = [column(), column(), column()] as const;
  const gapped: Gapped[] = [];
  for (const [index, { work, readings }] of elements.entries()) {
    const { factor = 1, frequency = 1 } = facts[index] ?? {};
    const kind = whichWork[work];
    const scale = factor * frequency;
    const rows = Int32Array.from(readings, ({ cycle }) => rowOf.get(cycle) ?? 0);
    const read = new Set(rows);
    const complete = rows.length === cycles && read.size === cycles;
    const sums = complete ? whole[kind] : column();
    readings.forEach(({ basic }, at) => {
      const row = rows[at] ?? 0;
      sums[row] = (sums[row] ?? 0) + (complete ? scale : 1) * basic;
    });
    if (!complete)
      gapped.push({ kind, scale, column: sums, ...shorterList(rows, read, cycles), mean: meanOf(readings) });
  }
  return { cycles, whole: [...whole], gapped };
}

function shorterList(
  rows: Int32Array,
  read: ReadonlySet<number>,
  cycles: number,
): Pick<Gapped, 'rows' | 'rowsAre'> {
  const once = read.size === rows.length;
  if (!once || rows.length <= cycles / 2) return { rows, rowsAre: 'read' };
  const missing = Array.from({ length: cycles }, (_, row) => row).filter((row) => !read.has(row));
  return { rows: Int32Array.from(missing), rowsAre: 'missing' };
}

function meanOf(readings: MeasuredElement['readings']): number {
  return readings.reduce((sum, { basic }) => sum + basic, 0) / readings.length;
}

function drawAll(table: Table, plan: AllowancePlan, { draws, seed, ratingError }: BootstrapWish) {
  const random = seededRandom(seed);
  const values = new Float64Array(draws);
  const times = new Float64Array(table.cycles);
  let repeated = 0;
  for (let draw = 0; draw < draws; draw++) {
    let parts: Parts | undefined;
    for (let attempt = 0; parts === undefined && attempt < mostRepeats; attempt++) {
      drawCycles(times, random);
      parts = partsFrom(table, times, attempt === mostRepeats - 1);
      if (parts === undefined) repeated += 1;
    }
    const level = ratingError === 0 ? 1 : 1 + ratingError * normalDraw(random);
    const [worker, process, inside] = parts ?? [0, 0, 0];
    values[draw] = (level * worker + Math.max(process, level * inside)) * (1 + plan.contingency);
  }
  return { values, repeated };
}

/** How often each cycle is drawn. A time study has fewer cycles than 2³¹, so the whole part is that of 32 bits. */
function drawCycles(times: Float64Array, random: Random): void {
  const cycles = times.length;
  times.fill(0);
  for (let count = 0; count < cycles; count++) {
    const at = (random() * cycles) | 0;
    times[at] = (times[at] as number) + 1;
  }
}

type Parts = [worker: number, process: number, inside: number];

/** Undefined when an element does not occur in the draw, unless its mean of all readings may stand in. */
function partsFrom(table: Table, drawn: Float64Array, standIn: boolean): Parts | undefined {
  const parts = table.whole.map((column) => weighted(column, drawn) / table.cycles) as Parts;
  for (const { kind, scale, column, rows, rowsAre, mean } of table.gapped) {
    let listed = 0;
    for (let at = 0; at < rows.length; at++) listed += drawn[rows[at] as number] as number;
    const count = rowsAre === 'read' ? listed : table.cycles - listed;
    if (count === 0 && !standIn) return undefined;
    parts[kind] += scale * (count === 0 ? mean : weighted(column, drawn) / count);
  }
  return parts;
}

/** Four sums side by side: each addition need not wait for the one before it, which is twice as fast. */
function weighted(column: Float64Array, drawn: Float64Array): number {
  let [one, two, three, four] = [0, 0, 0, 0];
  const even = column.length - (column.length % 4);
  for (let at = 0; at < even; at += 4) {
    one += (column[at] as number) * (drawn[at] as number);
    two += (column[at + 1] as number) * (drawn[at + 1] as number);
    three += (column[at + 2] as number) * (drawn[at + 2] as number);
    four += (column[at + 3] as number) * (drawn[at + 3] as number);
  }
  for (let at = even; at < column.length; at++) one += (column[at] as number) * (drawn[at] as number);
  return one + two + three + four;
}

function normalDraw(random: Random): number {
  return standardNormalQuantile((Math.floor(random() * 4_294_967_296) + 0.5) / 4_294_967_296);
}

function deviationOf(values: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
