import type { Sitting } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import { summarise } from '../element-summary.ts';
import type { SheetRow, TimeStudySheet } from '../sheet/index.ts';

/** A reading of one cycle. */
export interface RunPoint {
  readonly cycle: number;
  /** In the unit of the run; undefined when it was missed. */
  readonly time: number | undefined;
  readonly setAside: string | undefined;
  /** The rule asks to look at it; it counts. */
  readonly proposed: boolean;
}

/** Cycles timed at one time of one operator. */
export interface RunBand {
  readonly from: number;
  readonly to: number;
  /** Code of the operator; empty when none was noted. */
  readonly code: string;
}

/** What a run chart shows. */
export interface RunFacts {
  readonly name: string;
  readonly unit: TimeUnit;
  /** In the order of their cycles. */
  readonly points: readonly RunPoint[];
  /** Of the readings that count. */
  readonly mean: number | undefined;
  /** Of the rule that proposes readings to look at; undefined below four readings. */
  readonly bounds: { readonly low: number; readonly high: number } | undefined;
  readonly bands: readonly RunBand[];
  /** What can be said of a drift; empty when nothing can. */
  readonly drift: string;
}

/** The run of the cycle as a whole, or of the element with the id. @throws RangeError for an id that the sheet does not have */
export function runOf(sheet: TimeStudySheet, element?: string): RunFacts {
  if (element === undefined) return wholeRun(sheet);
  const row = sheet.rows.find((each) => each.element.id === element);
  if (row === undefined) throw new RangeError(`the sheet has no element ${element}`);
  const { summary, trend, cells } = row;
  const points = cells.map(({ cycle, time, setAside, proposal }) => ({
    cycle,
    time,
    setAside,
    proposed: proposal !== undefined,
  }));
  const inOrder = [...points].sort((a, b) => a.cycle - b.cycle);
  return {
    name: row.element.name,
    unit: sheet.unit,
    points: inOrder,
    mean: summary?.mean,
    bounds: summary?.rule,
    bands: bandsIn(
      sheet,
      inOrder.map(({ cycle }) => cycle),
    ),
    drift: trend?.words ?? '',
  };
}

/** Cycles in which something is set aside are drawn with all that happened in them, and count in nothing. */
function wholeRun(sheet: TimeStudySheet): RunFacts {
  const { whole, rows, unit } = sheet;
  const counted = rows.filter(({ element }) => element.occurs === undefined && element.work !== 'inside');
  const asides = asideSums(counted);
  const summary = summarise('whole cycle', whole.cycles);
  const proposed = new Set(summary.ok ? summary.value.proposals.map(({ cycle }) => cycle) : []);
  const points = whole.cycles.map(({ cycle, time }): RunPoint => {
    if (time !== undefined) return { cycle, time, setAside: undefined, proposed: proposed.has(cycle) };
    const aside = asides.get(cycle);
    return { cycle, time: aside?.time, setAside: aside?.reasons, proposed: false };
  });
  return {
    name: 'whole cycle',
    unit,
    points,
    mean: summary.ok ? summary.value.mean : undefined,
    bounds: summary.ok ? summary.value.rule : undefined,
    bands: bandsIn(
      sheet,
      points.map(({ cycle }) => cycle),
    ),
    drift: whole.trend?.words ?? '',
  };
}

function asideSums(rows: readonly SheetRow[]): ReadonlyMap<number, { time: number; reasons: string }> {
  const sums = new Map<number, { time: number; count: number; reasons: Set<string> }>();
  for (const { cells } of rows) {
    for (const { cycle, time, setAside } of cells) {
      if (time === undefined) continue;
      const sum = sums.get(cycle) ?? { time: 0, count: 0, reasons: new Set<string>() };
      sums.set(cycle, sum);
      sum.time += time;
      sum.count += 1;
      if (setAside !== undefined) sum.reasons.add(setAside);
    }
  }
  return new Map(
    [...sums]
      .filter(([, { count, reasons }]) => count === rows.length && reasons.size > 0)
      .map(([cycle, { time, reasons }]) => [cycle, { time, reasons: [...reasons].join(', ') }]),
  );
}

/**
 * Sittings cut to the cycles; one that holds no part of their span is left out.
 * @param cycles ascending
 */
export function bandsIn({ timeStudy }: TimeStudySheet, cycles: readonly number[]): readonly RunBand[] {
  const [first, last] = [cycles[0], cycles.at(-1)];
  const sittings: readonly Sitting[] = timeStudy.sittings ?? [];
  if (first === undefined || last === undefined) return [];
  return sittings.flatMap(({ start, operatorCode = '' }, index): RunBand[] => {
    const [from, to] = [Math.max(first, start), Math.min(last, (sittings[index + 1]?.start ?? last + 1) - 1)];
    return from > to ? [] : [{ from, to, code: operatorCode }];
  });
}
