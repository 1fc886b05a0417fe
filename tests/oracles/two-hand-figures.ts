/**
 * A second, slow way to the figures of a two-hand record, from their definitions alone: the record is looked at once for
 * every unit of its boundaries (a frame, or a microsecond), and what the hands do there is counted. Nothing is cut,
 * paired or walked; every look goes through the whole row.
 */

export interface OracleMotion {
  readonly start: number;
  readonly kind: string;
  readonly object?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly said: string;
}

export interface OracleRow {
  readonly items: readonly OracleMotion[];
  readonly end: number;
}

export interface OracleRecord {
  readonly left: OracleRow;
  readonly right: OracleRow;
  /** The chosen cycles as boundaries. */
  readonly cycles: readonly { readonly from: number; readonly to: number }[];
  /** Real time of a boundary. */
  readonly timeOf: (boundary: number) => number;
}

export type Side = 'left' | 'right';

/** What a hand does from one boundary to the next; undefined where nothing counts. */
export function motionAt(row: OracleRow, at: number): OracleMotion | undefined {
  const index = row.items.findLastIndex((item) => item.start <= at);
  const item = row.items[index];
  if (item === undefined || at >= row.end) return undefined;
  return item.kind === 'unmarked' || item.said === 'proposed' ? undefined : item;
}

/** One look: both hands from a boundary to the next, with the real time between them. */
export interface Look {
  readonly cycle: number;
  readonly at: number;
  readonly left: OracleMotion | undefined;
  readonly right: OracleMotion | undefined;
  readonly time: number;
}

export function looks({ left, right, cycles, timeOf }: OracleRecord): Look[] {
  const found: Look[] = [];
  cycles.forEach(({ from, to }, cycle) => {
    for (let at = from; at < to; at += 1) {
      found.push({
        cycle,
        at,
        left: motionAt(left, at),
        right: motionAt(right, at),
        time: timeOf(at + 1) - timeOf(at),
      });
    }
  });
  return found;
}

/** Time of the looks that fit, for each cycle. */
export function timePerCycle(record: OracleRecord, fits: (look: Look) => boolean): number[] {
  const all = looks(record);
  return record.cycles.map((_, cycle) =>
    all.reduce((sum, look) => sum + (look.cycle === cycle && fits(look) ? look.time : 0), 0),
  );
}

/** Motions of a hand that begin within each cycle and fit. */
export function beginPerCycle(
  record: OracleRecord,
  side: Side,
  fits: (motion: OracleMotion) => boolean,
): number[] {
  return record.cycles.map(
    ({ from, to }) =>
      record[side].items.filter(
        (item) =>
          item.start >= from &&
          item.start < Math.min(to, record[side].end) &&
          motionAt(record[side], item.start) === item &&
          fits(item),
      ).length,
  );
}

/**
 * The place of a hand at a boundary: that of its motion if it says one (a transport only says where it goes to), else
 * what the motion before it says, as long as that one is no transport to nowhere said, is marked and touches the cycle.
 */
export function placeAt(record: OracleRecord, side: Side, cycle: number, at: number): string | undefined {
  const from = record.cycles[cycle]?.from ?? 0;
  for (let look = at; look >= from; look -= 1) {
    const motion = motionAt(record[side], look);
    if (motion === undefined) return undefined;
    if (motion.kind === 'TE' || motion.kind === 'TL') return motion.to;
    if (motion.to !== undefined || motion.from !== undefined) return motion.to ?? motion.from;
  }
  return undefined;
}

/**
 * Agreement at a whole lag, for records in microseconds: of the microseconds at which the left hand, and the right hand
 * the lag later, are marked in the same cycle, those at which they do the same.
 */
export function agreementAt(record: OracleRecord, lag: number): { same: number; marked: number } {
  let [same, marked] = [0, 0];
  for (const { from, to } of record.cycles) {
    for (let at = from; at < to; at += 1) {
      if (at + lag < from || at + lag >= to) continue;
      const left = motionAt(record.left, at);
      const right = motionAt(record.right, at + lag);
      if (left === undefined || right === undefined) continue;
      marked += 1;
      if (left.kind === right.kind) same += 1;
    }
  }
  return { same, marked };
}

/** Moments within each cycle at which a motion of the hand that fits begins, or ends, in real time since the cycle began. */
export function momentsOf(
  record: OracleRecord,
  side: Side,
  edge: 'start' | 'end',
  fits: (motion: OracleMotion) => boolean,
): number[][] {
  const row = record[side];
  return record.cycles.map(({ from, to }) =>
    row.items.flatMap((item, index) => {
      const end = row.items[index + 1]?.start ?? row.end;
      const inside = edge === 'start' ? item.start >= from && item.start < to : end > from && end <= to;
      const counts = motionAt(row, item.start) === item && fits(item);
      return inside && counts
        ? [record.timeOf(edge === 'start' ? item.start : end) - record.timeOf(from)]
        : [];
    }),
  );
}
