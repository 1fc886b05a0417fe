import { type Micros, micros } from '../../../ground/base/index.ts';
import { type Finding, type FindingCode, finding } from '../../../ground/findings/index.ts';
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

/** Time without a break that one motion has. */
interface Stretch {
  readonly motion: CsvMotion;
  readonly start: Micros;
  end: Micros;
}

/**
 * Gives every moment of a hand to one of the motions that run there: to one that is marked before one that is not, since
 * what counts in no figure must not take time from what does, and of those to the one that began last. So an earlier
 * motion ends where a later one starts, and one that a later one lies wholly inside is split around it: the record says
 * that the outer one went on afterwards, and no marked time is lost. Of motions that begin together the shorter has the
 * time first; of two that are the same to the microsecond, the one that stands later in the table.
 * @returns the motions that are left, in the order of their starts, and a finding for every loss
 */
export function cutOverlaps(motions: readonly CsvMotion[]): { motions: CsvMotion[]; notes: Finding[] } {
  const sorted = motions.toSorted((a, b) => a.start - b.start || b.end - a.end || a.line - b.line);
  const stretches = stretchesOf(sorted);
  const own = new Map<CsvMotion, Stretch[]>(sorted.map((motion) => [motion, []]));
  for (const stretch of stretches) own.get(stretch.motion)?.push(stretch);
  return {
    motions: stretches.map(({ motion, start, end }) => ({ ...motion, start, end })),
    notes: [...own].flatMap(([motion, kept]) => lossNotes(motion, kept, stretches)),
  };
}

/** @param sorted by their starts; of those that begin together, the one that has the time first stands last */
function stretchesOf(sorted: readonly CsvMotion[]): Stretch[] {
  const stretches: Stretch[] = [];
  const [marked, rest]: [CsvMotion[], CsvMotion[]] = [[], []];
  let at = micros(0);
  const runUntil = (time: number) => {
    for (let top = running(marked, at) ?? running(rest, at); top !== undefined && at < time; ) {
      const end = micros(Math.min(top.end, time));
      const last = stretches.at(-1);
      if (last?.motion === top && last.end === at) last.end = end;
      else stretches.push({ motion: top, start: at, end });
      at = end;
      top = running(marked, at) ?? running(rest, at);
    }
  };
  for (const motion of sorted) {
    runUntil(motion.start);
    at = motion.start;
    (motion.kind === 'unmarked' ? rest : marked).push(motion);
  }
  runUntil(Number.POSITIVE_INFINITY);
  return stretches;
}

/** The last of the stack that has not ended; those above it, which have, are taken away. */
function running(stack: CsvMotion[], at: Micros): CsvMotion | undefined {
  for (let top = stack.at(-1); top !== undefined && top.end <= at; top = stack.at(-1)) stack.pop();
  return stack.at(-1);
}

function lossNotes(motion: CsvMotion, kept: readonly Stretch[], stretches: readonly Stretch[]): Finding[] {
  const ends = [...kept.map(({ start }) => start), motion.end];
  return ends.flatMap((to, index) => {
    const from = kept[index - 1]?.end ?? motion.start;
    return from < to ? [lossNote(motion, from, to, ownerAt(stretches, from))] : [];
  });
}

function lossNote(motion: CsvMotion, from: Micros, to: Micros, owner: CsvMotion): Finding {
  const words = {
    hand: motion.hand,
    line: motion.line,
    time: exactSeconds(micros(to - from)),
    from: exactSeconds(from),
    to: exactSeconds(to),
    by: owner.line,
  };
  const code = lossCode(from === motion.start, to === motion.end, owner.start < from);
  return finding(code, { line: motion.line, hand: motion.hand }, words);
}

/** @param late whether the other was there already, which only what is not marked can meet with */
function lossCode(first: boolean, last: boolean, late: boolean): FindingCode {
  if (first && last) return late ? 'csv/cut-covered' : 'csv/cut-whole';
  if (first) return late ? 'csv/cut-late' : 'csv/cut-start';
  return last ? 'csv/cut-end' : 'csv/cut-split';
}

/** Who has a moment; someone always has one in which a motion runs. */
function ownerAt(stretches: readonly Stretch[], time: Micros): CsvMotion {
  let [low, high] = [0, stretches.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((stretches[middle]?.start ?? 0) <= time) low = middle;
    else high = middle - 1;
  }
  const owner = stretches[low]?.motion;
  if (owner === undefined) throw new RangeError(`nothing runs at ${time} µs`);
  return owner;
}
