import { micros } from '../../../ground/base/index.ts';
import { sampleOf } from '../../../ground/numerics/index.ts';
import type { MethodReading } from '../reading/index.ts';
import { type MaximalRuns, maximalRuns } from './maximal-runs.ts';
import type {
  RankedRuns,
  RepeatedRun,
  RepeatedSequences,
  RunOccurrence,
  RunStep,
  SequenceChoice,
  SequenceRow,
} from './run.ts';
import { tokenWords } from './token.ts';
import { type TokenRow, tokenRow } from './token-row.ts';
import { type Placed, type Searched, withNearOnes } from './tolerance.ts';
import { type CountedRun, topRuns } from './top-runs.ts';

const sameWords = {
  kind: 'the same kind',
  'kind-object': 'the same kind with the same object',
  'kind-object-place': 'the same kind with the same object, from and to the same places',
} as const;

/**
 * The sequences of motions that come again most often and those that cost most, in each hand and in both together, over
 * all cycles of the reading.
 * @throws RangeError when `top` is not a whole number of 1 or more
 */
export function repeatedSequences(reading: MethodReading, choice: SequenceChoice = {}): RepeatedSequences {
  const { by = 'kind-object', top = 20, tolerance = 0 } = choice;
  if (!Number.isInteger(top) || top < 1) throw new RangeError(`a ranking has 1 run or more, got ${top}`);
  const ranked = (row: SequenceRow) => rankedRuns(reading, tokenRow(reading, row, by), top, tolerance === 1);
  const near =
    tolerance === 1
      ? ' Occurrences of a run of three or more in which one motion differs, is missing or comes in between count with it where they overlap no other, and are marked.'
      : '';
  return {
    left: ranked('left'),
    right: ranked('right'),
    both: ranked('both'),
    rule: `Motions are the same when they are of ${sameWords[by]}. A run has two motions or more, lies in one cycle, has no unmarked part, and comes at least twice without overlap; one that comes only as part of a longer run, as often as that, is left out. Occurrences are counted from the left without overlap.${near}`,
  };
}

function rankedRuns(reading: MethodReading, row: TokenRow, top: number, tolerant: boolean): RankedRuns {
  const maximal = maximalRuns(row.text, row.letters);
  const { byCount, byCost } = topRuns(row, maximal, top);
  const searched = tolerant ? searchedIn(row.text, maximal) : undefined;
  const made = new Map<CountedRun, RepeatedRun>();
  const shown = (run: CountedRun) => {
    const known = made.get(run) ?? runFrom(reading, row, run, searched);
    made.set(run, known);
    return known;
  };
  const runs = { byCount: byCount.map(shown), byCost: byCost.map(shown) };
  return tolerant ? { byCount: runs.byCount.sort(oftenFirst), byCost: runs.byCost.sort(dearFirst) } : runs;
}

const longFirst = (a: RepeatedRun, b: RepeatedRun) => b.length - a.length;
const oftenFirst = (a: RepeatedRun, b: RepeatedRun) =>
  b.count - a.count || b.total - a.total || longFirst(a, b);
const dearFirst = (a: RepeatedRun, b: RepeatedRun) =>
  b.total - a.total || b.count - a.count || longFirst(a, b);

function searchedIn(text: Int32Array, { order, common }: MaximalRuns): Searched {
  const rank = new Int32Array(text.length);
  order.forEach((at, index) => {
    rank[at] = index;
  });
  return { text, order, common, rank };
}

function runFrom(
  reading: MethodReading,
  row: TokenRow,
  run: CountedRun,
  searched: Searched | undefined,
): RepeatedRun {
  const { length, starts } = run;
  const placed: readonly Placed[] =
    searched === undefined
      ? starts.map((start) => ({ start, length, likeness: 'exact' }))
      : withNearOnes(searched, starts, length);
  const occurrences = placed.map((item) => occurrenceFrom(row, item));
  const total = occurrences.reduce((sum, { time }) => sum + time, 0);
  const steps = stepsFrom(row, starts[0] ?? 0, length);
  const cycles = reading.cycles.length;
  return {
    row: row.row,
    steps,
    words: wordsOf(steps, reading.placeName),
    length,
    count: occurrences.length,
    inexact: occurrences.filter(({ likeness }) => likeness !== 'exact').length,
    countACycle: occurrences.length / cycles,
    mostInACycle: mostInACycle(occurrences),
    total: micros(total),
    timeACycle: micros(Math.round(total / cycles)),
    sample: sampleOf(occurrences.map(({ time }) => time)),
    occurrences,
  };
}

function occurrenceFrom(row: TokenRow, { start, length, likeness }: Placed): RunOccurrence {
  const end = start + length;
  return {
    cycle: row.cycle[start] as number,
    hand: row.row,
    from: row.from[start] as number,
    to: row.to[end - 1] as number,
    time: micros((row.before[end] as number) - (row.before[start] as number)),
    likeness,
  };
}

function mostInACycle(occurrences: readonly RunOccurrence[]): number {
  let [most, count, cycle] = [0, 0, -1];
  for (const occurrence of occurrences) {
    count = occurrence.cycle === cycle ? count + 1 : 1;
    cycle = occurrence.cycle;
    most = Math.max(most, count);
  }
  return most;
}

function stepsFrom(row: TokenRow, start: number, length: number): RunStep[] {
  return Array.from({ length }, (_, step) => row.stepOf(row.text[start + step] as number));
}

function wordsOf(steps: readonly RunStep[], placeName: (id: string) => string): string {
  return steps
    .map(({ left, right }) =>
      [left, right]
        .flatMap((token) => (token === undefined ? [] : [tokenWords(token, placeName)]))
        .join(' | '),
    )
    .join(', ');
}
