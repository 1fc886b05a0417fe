import { type Micros, micros } from '../../../ground/base/index.ts';
import { type CycleReading, cycleWords, type MethodReading, type Piece } from '../../examine/index.ts';

/** Cycles of one method shown one after the other as if they were one. */
export interface CycleRun {
  readonly reading: MethodReading;
  /** In the order of the record. */
  readonly cycles: readonly CycleReading[];
  /** All of them as one cycle: its pieces run on from the start of the first. */
  readonly joined: CycleReading;
  /** Where one cycle ends and the next one begins, microseconds from the start of the run. */
  readonly breaks: readonly Micros[];
  readonly units: number;
  /** "Present method, cycles 3, 4". */
  readonly name: string;
}

export interface RunPair {
  readonly before: CycleRun;
  readonly after: CycleRun;
  /** Both runs turn out equally many units, so that their lengths may be compared as they stand. */
  readonly even: boolean;
}

/** More cycles than these are too small to read on one scale. */
const mostCycles = 4;

/**
 * Cycles of both methods that turn out equally many units: those whose length lies nearest to what is usual. Where that
 * would take more than four cycles of one, or more than were recorded, one cycle of each.
 */
export function representativeRuns(before: MethodReading, after: MethodReading): RunPair {
  const [one, two] = [before.method.unitsPerCycle, after.method.unitsPerCycle];
  const shared = commonDivisor(one, two);
  const [ofBefore, ofAfter] = [two / shared, one / shared];
  const even =
    Math.max(ofBefore, ofAfter) <= mostCycles &&
    ofBefore <= before.cycles.length &&
    ofAfter <= after.cycles.length;
  return {
    before: runOf(before, even ? ofBefore : 1),
    after: runOf(after, even ? ofAfter : 1),
    even: even || one === two,
  };
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

function runOf(reading: MethodReading, count: number): CycleRun {
  const cycles = chosenCycles(reading.cycles, count);
  const breaks: Micros[] = [];
  const rows: { left: Piece[]; right: Piece[] } = { left: [], right: [] };
  const marked = { left: 0, right: 0 };
  let at = 0;
  for (const cycle of cycles) {
    if (at > 0) breaks.push(micros(at));
    for (const hand of ['left', 'right'] as const) {
      rows[hand].push(...cycle[hand].map((piece) => later(piece, at)));
      marked[hand] += cycle.marked[hand];
    }
    at += cycle.duration;
  }
  const [first] = cycles;
  const last = cycles.at(-1);
  if (first === undefined || last === undefined) throw new RangeError('a run needs a cycle');
  const words = first.number === 0 ? '' : `, ${cycleWords(cycles.map(({ number }) => number))}`;
  return {
    reading,
    cycles,
    joined: {
      ...first,
      ...rows,
      marked: { left: micros(marked.left), right: micros(marked.right) },
      to: last.to,
      duration: micros(at),
    },
    breaks,
    units: cycles.length * reading.method.unitsPerCycle,
    name: `${reading.method.name}${words}`,
  };
}

function later(piece: Piece, by: number): Piece {
  return by === 0 ? piece : { ...piece, start: micros(piece.start + by), end: micros(piece.end + by) };
}

/** Cycles that follow each other where there are such, otherwise single ones; nearest to so many times the mean. */
function chosenCycles(cycles: readonly CycleReading[], count: number): readonly CycleReading[] {
  const mean = cycles.reduce((sum, { duration }) => sum + duration, 0) / cycles.length;
  const away = (list: readonly CycleReading[]) =>
    Math.abs(list.reduce((sum, { duration }) => sum + duration, 0) - mean * list.length);
  const rows = cycles
    .map((_, index) => cycles.slice(index, index + count))
    .filter((row) => row.length === count && (row.at(-1)?.number ?? 0) - (row[0]?.number ?? 0) === count - 1);
  if (rows.length > 0) return rows.reduce((best, row) => (away(row) < away(best) ? row : best));
  return [...cycles]
    .sort((a, b) => away([a]) - away([b]) || a.number - b.number)
    .slice(0, count)
    .sort((a, b) => a.number - b.number);
}
