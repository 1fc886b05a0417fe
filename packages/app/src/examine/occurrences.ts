import { cycleWords, type MethodReading, type Trace, traceTime } from '@evenhand/core/examine';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';

/** What is seen in one go on the film: stretches of one cycle that overlap or follow closely on one another. */
export interface Occurrence {
  /** Position of the cycle in the reading. */
  readonly cycle: number;
  readonly traces: readonly Trace[];
  readonly from: number;
  readonly to: number;
}

/** Stretches no further apart than this, in microseconds, are looked at together. Ours: below it the film seems to stand still between them. */
export const closeBy = 500_000;

type Times = Pick<MethodReading['clock'], 'timeOf'>;

/** The traces of a figure or a lead as they are looked at, in order of time. n log n in their number. */
export function occurrencesOf(traces: readonly Trace[], clock: Times): readonly Occurrence[] {
  const sorted = [...traces].sort((a, b) => a.cycle - b.cycle || a.from - b.from || a.to - b.to);
  const found: { cycle: number; traces: Trace[]; from: number; to: number }[] = [];
  for (const trace of sorted) {
    const last = found.at(-1);
    const near = last?.cycle === trace.cycle && clock.timeOf(trace.from) - clock.timeOf(last.to) <= closeBy;
    if (last !== undefined && near) {
      last.traces.push(trace);
      last.to = Math.max(last.to, trace.to);
    } else {
      found.push({ cycle: trace.cycle, traces: [trace], from: trace.from, to: trace.to });
    }
  }
  return found;
}

/** "cycle 2, frames 276 to 425, 4.97 s". */
export function occurrenceWords(reading: MethodReading, occurrence: Occurrence, unit: TimeUnit): string {
  const { from, to } = occurrence;
  const where = cycleWords([reading.cycles[occurrence.cycle]?.number ?? 0]);
  const frames = reading.clock.unit === 'frames' ? `, frames ${from} to ${to}` : '';
  return `${where}${frames}, ${timeText(traceTime(reading, occurrence), unit)}`;
}

/** A cycle up to this length, in microseconds, is shown whole. Ours. */
const wholeCycle = 30e6;

/**
 * What the score shows of an occurrence, in boundaries: its cycle, or, in a long one, a part around it in which it can
 * still be seen.
 */
export function windowOf(
  reading: MethodReading,
  { cycle: position, from, to }: Occurrence,
): { readonly from: number; readonly to: number } {
  const cycle = reading.cycles[position];
  if (cycle === undefined) return { from, to };
  const length = Math.max(wholeCycle, 8 * traceTime(reading, { from, to }));
  if (cycle.duration <= length) return { from: cycle.from, to: cycle.to };
  const wide = Math.round(((cycle.to - cycle.from) * length) / cycle.duration);
  const first = Math.max(cycle.from, Math.min(Math.round((from + to - wide) / 2), cycle.to - wide));
  return { from: first, to: first + wide };
}
