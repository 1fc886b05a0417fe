import type { Hand } from '@evenhand/core/ground/study';
import {
  type ConfirmedCycle,
  cycleChances,
  leastChance,
  type ProposedRows,
  type Track,
  trueChance,
} from '@evenhand/core/record';
import type { MadeMotion, MadeTrack } from './made-tracks.ts';

/** A record whose truth is known, in seconds. */
export interface KnownRecord {
  readonly track: Track;
  readonly seconds: readonly number[];
  readonly cycles: readonly { readonly start: number; readonly end: number }[];
  readonly left: readonly KnownStart[];
  readonly right: readonly KnownStart[];
}

export interface KnownStart {
  readonly at: number;
  readonly label: number;
}

export function knownRecord(made: MadeTrack): KnownRecord {
  const seconds = Array.from({ length: made.track.frames }, (_, frame) => frame / made.framesPerSecond);
  const labels = new Map<string, number>();
  const labelled = (hand: Hand) => (motion: MadeMotion) => {
    const key = `${hand} ${motion.kind} ${motion.object} ${motion.place}`;
    if (!labels.has(key)) labels.set(key, labels.size + 1);
    return { at: motion.start / made.framesPerSecond, label: labels.get(key) as number };
  };
  return {
    track: made.track,
    seconds,
    cycles: made.cycles.map((start, index) => ({
      start: start / made.framesPerSecond,
      end: (made.ends[index] ?? start) / made.framesPerSecond,
    })),
    left: made.left.map(labelled('left')),
    right: made.right.map(labelled('right')),
  };
}

export function confirmedOf(record: KnownRecord, cycles: readonly number[]): ConfirmedCycle[] {
  return cycles.map((index) => {
    const { start, end } = record.cycles[index] as KnownRecord['cycles'][number];
    const of = (hand: Hand) => record[hand].filter(({ at }) => at > start - 0.1 && at < end - 0.1);
    return { start, end, left: of('left'), right: of('right') };
  });
}

/** What is free: all but the confirmed cycles. */
export function freeOf(record: KnownRecord, confirmed: readonly ConfirmedCycle[]) {
  const sorted = [...confirmed].sort((a, b) => a.start - b.start);
  const edges = [0, ...sorted.flatMap(({ start, end }) => [start, end]), record.seconds.at(-1) ?? 0];
  const free: { start: number; end: number }[] = [];
  for (let index = 0; index < edges.length; index += 2)
    if ((edges[index + 1] as number) - (edges[index] as number) > 0.3)
      free.push({ start: edges[index] as number, end: edges[index + 1] as number });
  return free;
}

export interface Score {
  boundaries: number;
  near: number;
  frames: number;
  agree: number;
  lost: number;
  invented: number;
  /** What was said of each proposed boundary, and whether it held. */
  sure: { sure: number; held: boolean }[];
}

export type Starts = Readonly<Record<Hand, readonly KnownStart[]>>;

export function emptyScore(): Score {
  return { boundaries: 0, near: 0, frames: 0, agree: 0, lost: 0, invented: 0, sure: [] };
}

/** Rows that are proposed, with the chance that each cycle is one. */
export interface Proposed extends ProposedRows {
  readonly chances: readonly number[];
}

/** What of the rows is proposed: cycles that are hardly ones are left out with their boundaries, as the program does. */
export function proposedOf(rows: ProposedRows): Proposed {
  const chances = cycleChances(rows);
  const kept = rows.cycles.flatMap((_, index) => ((chances[index] ?? 0) >= leastChance ? [index] : []));
  const of = (hand: Hand) =>
    rows[hand].flatMap((start) => {
      const cycle = kept.indexOf(start.cycle);
      return cycle < 0 ? [] : [{ ...start, cycle }];
    });
  return {
    cycles: kept.map((index) => rows.cycles[index] as ProposedRows['cycles'][number]),
    shares: kept.map((index) => rows.shares[index] as number),
    chances: kept.map((index) => chances[index] as number),
    left: of('left'),
    right: of('right'),
  };
}

export function startsOf(rows: ProposedRows): Starts {
  const of = (hand: Hand) =>
    rows[hand].filter(({ missing }) => !missing).map(({ at, label }) => ({ at, label: label ?? 0 }));
  return { left: of('left'), right: of('right') };
}

/** Adds what was proposed for the cycles that were not confirmed. Near means within 0.2 s when nothing else is said, with the same motion beginning. */
export function addScore(
  score: Score,
  record: KnownRecord,
  confirmed: readonly ConfirmedCycle[],
  proposed: Starts,
  cycles: readonly { readonly start: number }[],
  nearby = 0.2,
): void {
  const known = record.cycles.filter(
    ({ start }) => !confirmed.some((cycle) => Math.abs(cycle.start - start) < 1e-6),
  );
  const within = (time: number) => known.some(({ start, end }) => time >= start - 0.1 && time < end - 0.1);
  for (const hand of ['left', 'right'] as const) {
    if (record[hand].length === 0) continue;
    const used = new Set<number>();
    for (const truth of record[hand]) {
      if (!within(truth.at)) continue;
      score.boundaries += 1;
      const hit = proposed[hand].findIndex(
        ({ at, label }, index) =>
          !used.has(index) && label === truth.label && Math.abs(at - truth.at) <= nearby,
      );
      if (hit < 0) continue;
      used.add(hit);
      score.near += 1;
    }
    for (let time = 0; time < (record.seconds.at(-1) ?? 0); time += 1 / 30) {
      if (!known.some(({ start, end }) => time >= start && time < end)) continue;
      score.frames += 1;
      if (labelAt(record[hand], time) === labelAt(proposed[hand], time)) score.agree += 1;
    }
  }
  const taken = new Set<number>();
  for (const { start, end } of known) {
    const reach = Math.max(0.5, (end - start) * 0.25);
    const hit = cycles.findIndex(
      (cycle, index) => !taken.has(index) && Math.abs(cycle.start - start) <= reach,
    );
    if (hit < 0) score.lost += 1;
    else taken.add(hit);
  }
  score.invented += cycles.length - taken.size;
}

export function addSure(score: Score, record: KnownRecord, rows: Proposed, nearby = 0.2): void {
  const { chances } = rows;
  for (const hand of ['left', 'right'] as const)
    for (const { at, label, sure, missing, cycle } of rows[hand]) {
      if (missing || label === undefined) continue;
      const held = record[hand].some((truth) => truth.label === label && Math.abs(truth.at - at) <= nearby);
      score.sure.push({ sure: trueChance(sure) * (chances[cycle] ?? 0), held });
    }
}

function labelAt(starts: readonly KnownStart[], time: number): number | undefined {
  let label: number | undefined;
  for (const start of starts) {
    if (start.at > time) break;
    label = start.label;
  }
  return label;
}

/** The confirmed cycle stretched evenly over each of the others, whose bounds are given. */
export function stretchedEvenly(record: KnownRecord, confirmed: ConfirmedCycle): Starts {
  const of = (hand: Hand) =>
    record.cycles.flatMap(({ start, end }) =>
      confirmed[hand].map(({ at, label }) => ({
        at: start + ((at - confirmed.start) / (confirmed.end - confirmed.start)) * (end - start),
        label,
      })),
    );
  return { left: of('left'), right: of('right') };
}

/** Plain time warping of the positions of both hands between given bounds, with the boundaries carried over. */
export function warpedPlainly(record: KnownRecord, confirmed: ConfirmedCycle): Starts {
  const rate = record.seconds.length / ((record.seconds.at(-1) ?? 1) + 1e-9);
  const frame = (time: number) => Math.max(0, Math.min(record.seconds.length - 1, Math.round(time * rate)));
  const place = (at: number) =>
    (['left', 'right'] as const).flatMap((hand) => {
      const row = record.track[hand];
      return [row?.x[at] ?? 0, row?.y[at] ?? 0].map((value) => (Number.isNaN(value) ? 0 : value));
    });
  const rows = { left: [] as KnownStart[], right: [] as KnownStart[] };
  const base = frame(confirmed.start);
  const length = frame(confirmed.end) - base;
  const theirs = Array.from({ length }, (_, at) => place(base + at));
  for (const { start, end } of record.cycles) {
    const first = frame(start);
    const count = frame(end) - first;
    const mine = Array.from({ length: count }, (_, at) => place(first + at));
    const cost = new Float64Array(length * count).fill(Number.POSITIVE_INFINITY);
    const gap = (a: number, b: number) =>
      Math.hypot(
        ...(theirs[a] as number[]).map((value, index) => value - ((mine[b] as number[])[index] as number)),
      );
    for (let a = 0; a < length; a += 1)
      for (let b = 0; b < count; b += 1) {
        const before =
          a === 0 && b === 0
            ? 0
            : Math.min(
                a > 0 ? (cost[(a - 1) * count + b] as number) : Number.POSITIVE_INFINITY,
                b > 0 ? (cost[a * count + b - 1] as number) : Number.POSITIVE_INFINITY,
                a > 0 && b > 0 ? (cost[(a - 1) * count + b - 1] as number) : Number.POSITIVE_INFINITY,
              );
        cost[a * count + b] = before + gap(a, b);
      }
    const met = new Int32Array(length).fill(-1);
    let [a, b] = [length - 1, count - 1];
    while (a >= 0 && b >= 0) {
      met[a] = b;
      const options: readonly (readonly [number, number])[] = [
        [a - 1, b - 1],
        [a - 1, b],
        [a, b - 1],
      ];
      let next: readonly [number, number] = [-1, -1];
      let least = Number.POSITIVE_INFINITY;
      for (const [i, j] of options)
        if (i >= 0 && j >= 0 && (cost[i * count + j] as number) < least) {
          least = cost[i * count + j] as number;
          next = [i, j];
        }
      [a, b] = next;
    }
    for (const hand of ['left', 'right'] as const)
      for (const { at, label } of confirmed[hand]) {
        const position = Math.max(0, Math.min(length - 1, frame(at) - base));
        rows[hand].push({ at: start + (met[position] as number) / rate, label });
      }
  }
  return rows;
}
