import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { quantileOf, type Sample, sampleOf } from '../../ground/numerics/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { confidenceFault } from './cycles-needed.ts';
import { shortNumber } from './inputs.ts';
import { countedReadings, type Reading, readingFaults } from './reading.ts';

/** A reading that the rule proposes to look at. It counts until a person sets it aside with a reason. */
export interface OutlierProposal {
  /** Position in the readings that were given. */
  readonly index: number;
  readonly cycle: number;
  readonly time: number;
  readonly words: string;
}

export interface ElementSummary extends Sample {
  readonly sum: number;
  readonly median: number;
  readonly least: number;
  readonly most: number;
  /** Readings without a time. */
  readonly missed: number;
  /** Readings that a person set aside, each with its reason. */
  readonly setAside: readonly Reading[];
  readonly proposals: readonly OutlierProposal[];
  /** The bounds of the rule and how it was made, in words; undefined with fewer than four readings. */
  readonly rule: OutlierRule | undefined;
  /** What limits the conclusion. */
  readonly notes: readonly Finding[];
}

export interface OutlierRule {
  readonly low: number;
  readonly high: number;
  readonly words: string;
}

/** How many quarter widths beyond the quartiles a reading lies before it is proposed (J. W. Tukey, Exploratory Data Analysis, 1977, from memory). */
const fence = 1.5;
/** Where the middle half of the readings are equal, a share of their value stands for the width; our own choice. */
const shareForWidth = 0.1;
const fewestForRule = 4;

/**
 * What the readings of one element say. Times in any one unit.
 * @param element name, for the findings
 * @param confidence of the interval of the mean (Student's t), above 0 and below 1
 * @param timeText how a time is told to a person, with its unit
 */
export function summarise(
  element: string,
  readings: readonly Reading[],
  confidence = 0.95,
  timeText: (time: number) => string = shortNumber,
): Result<ElementSummary, Finding> {
  const fault = confidenceFault(confidence) ?? readingFaults(element, readings)[0];
  if (fault !== undefined) return fail(fault);
  const counted = countedReadings(readings);
  if (counted.length === 0) return fail(finding('define/no-reading', {}, { element }));
  const times = counted.map(({ time }) => time);
  const sorted = Array.from(Float64Array.from(times).sort());
  const sample = sampleOf(times, confidence);
  const rule = outlierRule(sorted);
  return ok({
    ...sample,
    sum: times.reduce((sum, time) => sum + time, 0),
    median: quantileOf(sorted, 0.5),
    least: quantileOf(sorted, 0),
    most: quantileOf(sorted, 1),
    missed: readings.filter(({ time }) => time === undefined).length,
    setAside: readings.filter(({ setAside }) => setAside !== undefined),
    proposals: rule === undefined ? [] : proposalsBy(rule, readings, timeText),
    rule,
    notes: limits(element, sample),
  });
}

/**
 * The fences of the readings: quartiles (type 7) and 1.5 times the distance between them to both sides; where that
 * distance is 0, a tenth of the median stands for it. Fewer than four readings have none.
 */
function outlierRule(sorted: readonly number[]): OutlierRule | undefined {
  if (sorted.length < fewestForRule) return undefined;
  const [lower, middle, upper] = [0.25, 0.5, 0.75].map((share) => quantileOf(sorted, share)) as [
    number,
    number,
    number,
  ];
  const flat = upper === lower;
  const width = flat ? shareForWidth * middle : upper - lower;
  const words = flat
    ? `The middle half of the readings are equal, so a reading is proposed when it lies more than ${percentText(fence * shareForWidth, 0)} away from them.`
    : `A reading is proposed when it lies more than ${shortNumber(fence)} times the distance between the quartiles beyond them (Tukey).`;
  return { low: lower - fence * width, high: upper + fence * width, words };
}

function proposalsBy(
  { low, high }: OutlierRule,
  readings: readonly Reading[],
  timeText: (time: number) => string,
): OutlierProposal[] {
  const found: OutlierProposal[] = [];
  for (const [index, { cycle, time, setAside }] of readings.entries()) {
    if (time === undefined || setAside !== undefined || (time >= low && time <= high)) continue;
    const fenceText = timeText(time > high ? high : low);
    // Rounded alike, they would seem to be the same.
    const side = `${fenceText === timeText(time) ? 'just ' : ''}${time > high ? 'above' : 'below'} ${fenceText}`;
    const words = `The reading ${timeText(time)} in cycle ${cycle} lies ${side}. Look at what happened there; set it aside with the reason if it does not belong to the work, keep it if it does.`;
    found.push({ index, cycle, time, words });
  }
  return found;
}

function limits(element: string, { n, deviation }: Sample): Finding[] {
  if (n === 1) return [finding('define/one-reading', {}, { element })];
  return deviation === 0 ? [finding('define/no-spread', {}, { count: n })] : [];
}
