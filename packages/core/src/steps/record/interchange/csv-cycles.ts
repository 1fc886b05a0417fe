import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Method } from '../../../ground/study/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import type { CsvMotion } from './csv-motions.ts';

type CycleRow = Method['cycles'];

interface Found {
  readonly row: CycleRow;
  readonly notes: readonly Finding[];
  readonly faults: readonly Finding[];
}

/**
 * The row of cycles from the numbers beside the motions: a cycle begins where the first motion with its number begins,
 * in either hand. Motions before the first number and after the last lie outside the cycles.
 * @param motions of both hands in the order of their starts
 * @param end where the rows of the hands end
 * @param column of the cycle in the table, from 1
 */
export function cyclesFrom(motions: readonly CsvMotion[], end: number, column: number): Found {
  const numbered = motions.filter(
    (motion): motion is CsvMotion & { readonly cycle: number } => motion.cycle !== undefined,
  );
  const last = numbered.at(-1);
  if (last === undefined) return { row: { items: [], end }, notes: [], faults: [] };
  const faults = orderFaults(numbered, column);
  if (faults.length > 0) return { row: { items: [], end }, notes: [], faults };
  const marks = cycleMarks(numbered, column);
  return {
    row: {
      items: marks.starts.map((start, index) => ({ id: `c${index + 1}`, start })),
      end: cyclesEnd(motions, last),
    },
    notes: [...marks.notes, ...filledNotes(motions, last, column)],
    faults: marks.faults,
  };
}

type Numbered = CsvMotion & { readonly cycle: number };

/** Cycles must follow one another: the next begins after the last motion of this one has begun. */
function orderFaults(numbered: readonly Numbered[], column: number): Finding[] {
  return numbered.flatMap((motion, index) => {
    const before = numbered[index - 1];
    if (before === undefined || motion.cycle === before.cycle) return [];
    if (motion.cycle > before.cycle && motion.start > before.start) return [];
    const [earlier, later] = motion.cycle > before.cycle ? [before, motion] : [motion, before];
    return [
      finding(
        'csv/cycle-order',
        { line: motion.line, column },
        { cycle: later.cycle, start: exactSeconds(later.start), before: earlier.cycle },
      ),
    ];
  });
}

function cycleMarks(numbered: readonly Numbered[], column: number) {
  const starts: number[] = [];
  const notes: Finding[] = [];
  const faults: Finding[] = [];
  numbered.forEach((motion, index) => {
    const missing = motion.cycle - 1 - starts.length;
    if (missing < 0) return;
    const where = { line: motion.line, column };
    const after = numbered[index - 1]?.start ?? -1;
    if (motion.start - missing <= after) {
      faults.push(finding('csv/cycle-room', where, { cycle: starts.length + 1 }));
      return;
    }
    for (let left = missing; left > 0; left -= 1) {
      notes.push(finding('csv/cycle-gap', where, { cycle: starts.length + 1 }));
      starts.push(motion.start - left);
    }
    starts.push(motion.start);
  });
  return { starts, notes, faults };
}

/** The last cycle ends where a motion without a number begins, or with the last of its own motions. */
function cyclesEnd(motions: readonly CsvMotion[], last: Numbered): number {
  const own = motions.filter((motion) => motion.cycle === last.cycle);
  const ends = own.reduce((latest, motion) => Math.max(latest, motion.end), 0);
  const next = motions.find((motion) => motion.cycle === undefined && motion.start > last.start);
  return next === undefined ? ends : Math.min(ends, next.start);
}

/** One note a cycle, at the first line without a number inside it. */
function filledNotes(motions: readonly CsvMotion[], last: Numbered, column: number): Finding[] {
  const noted = new Set<number>();
  let cycle: number | undefined;
  return motions.flatMap((motion) => {
    cycle = motion.cycle ?? cycle;
    const inside = motion.cycle === undefined && motion.start <= last.start;
    if (!inside || cycle === undefined || noted.has(cycle)) return [];
    noted.add(cycle);
    return [finding('csv/cycle-filled', { line: motion.line, column }, { cycle })];
  });
}
