import type { MethodReading, Trace } from '@evenhand/core/examine';

/** What belongs together on the film: all stretches of one cycle, from the first to the last. */
export interface Occurrence {
  readonly cycle: number;
  readonly traces: readonly Trace[];
  readonly from: number;
  readonly to: number;
}

/** The traces of a figure or a lead, one occurrence for each cycle, in order. */
export function occurrencesOf(traces: readonly Trace[]): readonly Occurrence[] {
  const byCycle = new Map<number, Trace[]>();
  for (const trace of traces) {
    const list = byCycle.get(trace.cycle);
    if (list === undefined) byCycle.set(trace.cycle, [trace]);
    else list.push(trace);
  }
  return [...byCycle]
    .sort(([a], [b]) => a - b)
    .map(([cycle, list]) => ({
      cycle,
      traces: list,
      from: list.reduce((least, { from }) => Math.min(least, from), list[0]?.from ?? 0),
      to: list.reduce((most, { to }) => Math.max(most, to), 0),
    }));
}

/** "cycle 2, frames 276 to 425". */
export function occurrenceWords(reading: MethodReading, { cycle, from, to }: Occurrence): string {
  const { number } = reading.cycles[cycle] ?? { number: 0 };
  const where = number === 0 ? 'the whole record' : `cycle ${number}`;
  return reading.clock.unit === 'frames' ? `${where}, frames ${from} to ${to}` : where;
}
