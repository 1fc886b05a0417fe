import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import type { CsvMotion } from './csv-motions.ts';

/**
 * Motions of one hand that begin before an earlier one has ended; each is told against the one that lasts longest.
 * @param sorted by their starts
 * @param column of the start in the table, from 1
 */
export function overlapsIn(sorted: readonly CsvMotion[], hand: Hand, column: number): Finding[] {
  let latest: CsvMotion | undefined;
  return sorted.flatMap((motion) => {
    if (motion.hand !== hand) return [];
    const other = latest;
    if (latest === undefined || motion.end > latest.end) latest = motion;
    if (other === undefined || motion.start >= other.end) return [];
    const words = {
      hand,
      start: exactSeconds(motion.start),
      other: other.line,
      end: exactSeconds(other.end),
    };
    return [finding('csv/overlap', { line: motion.line, column, hand }, words)];
  });
}

interface Loss {
  readonly from: Micros;
  to: Micros;
  /** Line of the motion that began there. */
  readonly by: number;
}

interface Running {
  readonly motion: CsvMotion;
  readonly losses: Loss[];
}

/**
 * Gives every moment of a hand to the motion that began last of those that run there. So an earlier motion ends where a
 * later one starts, and one that a later one lies wholly inside is split around it: the record says that the outer one
 * went on afterwards, and no marked time is lost. Of motions that begin together the shorter has the time first; of two
 * that are the same to the microsecond, the one that stands later in the table.
 * @returns the motions that are left, in the order of their starts, and a finding for every loss
 */
export function cutOverlaps(motions: readonly CsvMotion[]): { motions: CsvMotion[]; notes: Finding[] } {
  const pieces: CsvMotion[] = [];
  const all: Running[] = [];
  /** Those that have begun, the last on top; all but the top one are losing time. */
  const stack: Running[] = [];
  let at = micros(0);
  const runUntil = (time: number) => {
    for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
      const until = micros(Math.min(top.motion.end, time));
      if (until > at) {
        pieces.push({ ...top.motion, start: at, end: until });
        at = until;
      }
      if (top.motion.end > time) return;
      stack.pop();
      resume(stack.at(-1), at);
    }
  };
  for (const motion of motions.toSorted((a, b) => a.start - b.start || b.end - a.end || a.line - b.line)) {
    runUntil(motion.start);
    at = motion.start;
    const running: Running = { motion, losses: [] };
    stack.at(-1)?.losses.push({ from: at, to: at, by: motion.line });
    stack.push(running);
    all.push(running);
  }
  runUntil(Number.POSITIVE_INFINITY);
  return { motions: pieces, notes: all.flatMap(lossNotes) };
}

/** The motion on top has ended: the one below has lost the time until now, or all the rest of its own. */
function resume(below: Running | undefined, now: Micros): void {
  const loss = below?.losses.at(-1);
  if (below !== undefined && loss !== undefined) loss.to = micros(Math.min(now, below.motion.end));
}

function lossNotes({ motion, losses }: Running): Finding[] {
  return joined(losses).map(({ from, to, by }) => {
    const words = {
      hand: motion.hand,
      line: motion.line,
      time: exactSeconds(micros(to - from)),
      from: exactSeconds(from),
      to: exactSeconds(to),
      by,
    };
    const [first, last] = [from === motion.start, to === motion.end];
    const code =
      first && last ? 'csv/cut-whole' : last ? 'csv/cut-end' : first ? 'csv/cut-start' : 'csv/cut-split';
    return finding(code, { line: motion.line, hand: motion.hand }, words);
  });
}

/** Losses without a moment between them are one, told by the line that began first. */
function joined(losses: readonly Loss[]): Loss[] {
  const whole: Loss[] = [];
  for (const loss of losses) {
    const before = whole.at(-1);
    if (before?.to === loss.from) before.to = loss.to;
    else whole.push({ ...loss });
  }
  return whole;
}
