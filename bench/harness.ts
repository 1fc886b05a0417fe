/** What a benchmark is made of. Times of different runs are not comparable; ratios measured in one run are. */

/** Durations of one contender in milliseconds, in the order measured. */
export interface Timings {
  readonly name: string;
  readonly ms: readonly number[];
}

export interface RaceOptions {
  /** Measured rounds; every contender runs once in each. */
  readonly rounds: number;
  /** Rounds before them that are not measured. */
  readonly warmUp?: number;
  /** The clock in milliseconds; a test brings its own. */
  readonly now?: () => number;
}

/**
 * Runs the contenders in turn, round by round, so that what slows the machine for a while slows all of them.
 * Every second round runs in reverse order, so that none always follows the same other.
 */
export async function race(
  contenders: Readonly<Record<string, () => unknown>>,
  { rounds, warmUp = 2, now = () => performance.now() }: RaceOptions,
): Promise<Timings[]> {
  const entries = Object.entries(contenders).map(([name, run]) => ({ name, run, ms: [] as number[] }));
  for (let round = -warmUp; round < rounds; round += 1) {
    for (const entry of round % 2 === 0 ? entries : entries.toReversed()) {
      const begun = now();
      await entry.run();
      if (round >= 0) entry.ms.push(now() - begun);
    }
  }
  return entries.map(({ name, ms }) => ({ name, ms }));
}

/**
 * The quantile of a sample by linear interpolation between order statistics (Hyndman and Fan 1996, type 7).
 * @param share 0 to 1
 * @throws RangeError for an empty sample or a share outside 0 to 1
 */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('a quantile of no values was asked for');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`a share lies between 0 and 1, not at ${share}`);
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? Number.NaN;
  return low + (high - low) * (at - Math.floor(at));
}

/**
 * Prints the race: median and 95th percentile of each contender, and how many times the median of the first it needs.
 */
export function printRace(title: string, timings: readonly Timings[]): void {
  const base = quantile(timings[0]?.ms ?? [], 0.5);
  const rows = timings.map(({ name, ms }) => {
    const median = quantile(ms, 0.5);
    return [name, fixed(median), fixed(quantile(ms, 0.95)), `× ${fixed(median / base)}`, String(ms.length)];
  });
  printTable(title, ['', 'median ms', 'p95 ms', 'ratio', 'rounds'], rows);
}

export function printTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): void {
  console.log(`\n${tableText(title, head, rows)}`);
}

/** A table in plain characters: the first column to the left, all others to the right. */
export function tableText(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => [...(row[column] ?? '')].length)));
  const lines = all.map((row) =>
    widths
      .map((width, column) => {
        const cell = row[column] ?? '';
        const space = ' '.repeat(width - [...cell].length);
        return column === 0 ? cell + space : space + cell;
      })
      .join('  ')
      .trimEnd(),
  );
  return [title, ...lines].join('\n');
}

/** Three significant digits, without an exponent. */
export function fixed(value: number): string {
  if (value === 0) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(Math.min(digits, 6));
}
