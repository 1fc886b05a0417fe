import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { type Interval, sampleOf } from '../../ground/numerics/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { confidenceFault } from './cycles-needed.ts';
import { type Line, lineOf } from './line.ts';
import { chanceWords, rareEnough } from './odds.ts';
import { countedReadings, type Reading, readingFaults } from './reading.ts';

/** Whether the readings of an element drift while the study runs. */
export interface Trend {
  readonly line: Line;
  /** Change along the line from the first to the last counted cycle, as a share of the mean; below 0 when times fall. */
  readonly change: number;
  readonly changeInterval: Interval;
  readonly drifts: boolean;
  readonly words: string;
}

/**
 * Drift within a study: a straight line of the counted readings over the number of their cycle, its slope tested against
 * 0 with Student's t at one in twenty. A bend that comes back to where it began is not found by it; the run chart shows that.
 * @param element name, for the findings and the sentence
 */
export function trendOf(
  element: string,
  readings: readonly Reading[],
  confidence = 0.95,
): Result<Trend, Finding> {
  const fault = confidenceFault(confidence) ?? readingFaults(element, readings)[0];
  if (fault !== undefined) return fail(fault);
  const counted = countedReadings(readings);
  if (counted.length < 3) {
    return fail(finding('define/too-few-readings', {}, { found: counted.length, least: 3 }));
  }
  const cycles = counted.map(({ cycle }) => cycle);
  const times = counted.map(({ time }) => time);
  const span = Math.max(...spanOf(cycles)) - Math.min(...spanOf(cycles));
  if (!(span > 0)) return fail(finding('define/same-cycle', {}, { element }));
  const line = lineOf(cycles, times, confidence);
  const share = span / sampleOf(times).mean;
  const change = line.slope * share;
  const { low, high } = line.slopeInterval;
  const changeInterval = { low: low * share, high: high * share, confidence };
  const drifts = (line.chance ?? 1) <= rareEnough;
  return ok({
    line,
    change,
    changeInterval,
    drifts,
    words: trendWords(element, line, change, changeInterval, drifts),
  });
}

/** Least and most without spreading a long list into arguments. */
function spanOf(values: readonly number[]): [least: number, most: number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return [least, most];
}

function trendWords(
  element: string,
  { chance, n }: Line,
  change: number,
  { low, high, confidence }: Interval,
  drifts: boolean,
): string {
  if (chance === undefined) return `All ${n} readings of “${element}” are equal, so no drift can be seen.`;
  const range = `${percentText(confidence, 0)} interval ${percentText(low)} to ${percentText(high)}`;
  if (!drifts) {
    const hidden = percentText(Math.max(Math.abs(low), Math.abs(high)));
    return `No drift is shown in “${element}”: from the first cycle to the last the times change by ${percentText(change)} of their mean (${range}). A drift of ${hidden} could still be hidden.`;
  }
  const way = change < 0 ? 'fall' : 'rise';
  return `The times of “${element}” ${way} by ${percentText(Math.abs(change))} of their mean from the first cycle to the last (change ${range}); chance alone gives as much ${chanceWords(chance)}. The mean is of work that changed: look for learning, another pace, another way of working or tiredness before it is used.`;
}
