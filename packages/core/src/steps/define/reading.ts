import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { largest, smallest } from './inputs.ts';

/**
 * One reading of one element. A reading that was missed has no time. One that is set aside keeps its time and its
 * reason, and counts neither in the sum nor in n.
 */
export interface Reading {
  /** Cycle of the study, from 1; the order of time. */
  readonly cycle: number;
  /** Above 0, in the one unit of the study; undefined when the reading was missed or the element did not occur. */
  readonly time: number | undefined;
  /** Why it does not count. */
  readonly setAside?: string;
  /** Rating of this reading alone, on the scale of the study. */
  readonly rating?: number;
}

/** A reading that counts. */
export interface CountedReading extends Reading {
  readonly time: number;
}

/** Readings of consecutive cycles from 1 that all count. */
export function readingsOf(times: readonly (number | undefined)[]): readonly Reading[] {
  return times.map((time, index) => ({ cycle: index + 1, time }));
}

/** The readings that have a time and are not set aside, in their order. */
export function countedReadings(readings: readonly Reading[]): readonly CountedReading[] {
  return readings.filter(
    (reading): reading is CountedReading => reading.time !== undefined && reading.setAside === undefined,
  );
}

/**
 * Everything that is wrong with the readings of an element, one finding for each reading; empty when they can be used.
 * Readings that are set aside are judged too, except that a time of 0 may be set aside.
 */
export function readingFaults(element: string, readings: readonly Reading[]): readonly Finding[] {
  const found: Finding[] = [];
  for (const reading of readings) {
    const fault = readingFault(element, reading);
    if (fault !== undefined) found.push(fault);
  }
  return found;
}

/** What is wrong with one reading. */
export function readingFault(element: string, { cycle, time, setAside }: Reading): Finding | undefined {
  const code = readingFaultCode(time, setAside);
  return code === undefined ? undefined : finding(code, {}, { element, cycle });
}

function readingFaultCode(time: Reading['time'], setAside: Reading['setAside']) {
  if (setAside !== undefined && setAside.trim() === '') return 'define/no-reason';
  if (time === undefined) return undefined;
  if (!(Math.abs(time) <= largest)) return 'define/reading-not-number';
  if (time < 0) return 'define/reading-negative';
  return time < smallest && setAside === undefined ? 'define/reading-zero' : undefined;
}

/**
 * Times of elements from a watch that runs on: each is the reading minus the one before. Where a reading was missed, the
 * element that ends there and the one that begins there have no time.
 * @param clock what the watch showed at the end of each element, in order of time; undefined where it was missed
 * @param start what it showed at the beginning of the first element
 */
export function timesFromRunningWatch(
  clock: readonly (number | undefined)[],
  start = 0,
): Result<readonly (number | undefined)[], Finding> {
  const times: (number | undefined)[] = [];
  let [before, latest]: [number | undefined, number] = [start, start];
  for (const [index, now] of clock.entries()) {
    if (now !== undefined && !(now <= largest && now > latest)) {
      return fail(finding('define/watch-order', {}, { place: index + 1 }));
    }
    times.push(now === undefined || before === undefined ? undefined : now - before);
    before = now;
    latest = now ?? latest;
  }
  return ok(times);
}
