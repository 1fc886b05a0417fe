import { countText, timeUnits } from '../../../ground/units/index.ts';
import type { RunFacts } from './run-facts.ts';
import type { RunPlan } from './run-plan.ts';
import { timeCell, timeWords } from './sheet-numbers.ts';

interface RunCounts {
  readonly counted: readonly number[];
  readonly aside: readonly number[];
  readonly missed: number;
  readonly proposed: number;
}

function countsOf({ points }: RunFacts): RunCounts {
  const counted: number[] = [];
  const aside: number[] = [];
  let [missed, proposed] = [0, 0];
  for (const point of points) {
    if (point.time === undefined) missed += 1;
    else if (point.setAside === undefined) counted.push(point.time);
    else aside.push(point.time);
    if (point.proposed) proposed += 1;
  }
  return { counted, aside, missed, proposed };
}

/** The key to the picture, with its figures. */
export function runCaption(run: RunFacts, { low, high }: RunPlan, thinned: boolean): string {
  const { unit, mean, bounds } = run;
  const { counted, aside, missed, proposed } = countsOf(run);
  if (counted.length + aside.length === 0) {
    return missed === 0 ? 'There is no reading yet.' : `There is no time to draw: ${missed} missed.`;
  }
  const beyond = aside.filter((time) => time < low || time > high);
  return [
    mean === undefined ? '' : `Line: mean ${timeWords(mean, unit)}.`,
    bounds === undefined
      ? ''
      : bounds.low > 0
        ? `Broken: bounds of the rule, ${timeCell(bounds.low, unit)} to ${timeWords(bounds.high, unit)}.`
        : `Broken: upper bound of the rule, ${timeWords(bounds.high, unit)}.`,
    proposed === 0 ? '' : `Ringed: ${proposed} outside them; they count.`,
    aside.length === 0 ? '' : `Hollow with a cross: ${aside.length} set aside.`,
    beyond.length === 0 ? '' : beyondWords(beyond, unit),
    missed === 0 ? '' : `Stroke at the foot: ${missed} missed.`,
    thinned
      ? `${counted.length} readings are too many to draw: each column shows the least and the most of those in it.`
      : '',
    low > 0 ? `The axis begins at ${timeCell(low, unit)}, not at 0.` : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function beyondWords(times: readonly number[], unit: RunFacts['unit']): string {
  const most = times.reduce((high, time) => Math.max(high, time), 0);
  return times.length === 1
    ? `Arrow: one of them lies off the chart, ${timeWords(most, unit)}.`
    : `Arrows: ${times.length} of them lie off the chart, the longest ${timeWords(most, unit)}.`;
}

/** The picture in words, for those who cannot see it. */
export function runDescription(run: RunFacts, thinned: boolean): string {
  const { name, unit, points, mean, bands, drift } = run;
  const { counted, aside, missed } = countsOf(run);
  const [first, last] = [points[0]?.cycle, points.at(-1)?.cycle];
  if (first === undefined || last === undefined) return `“${name}” has no reading yet.`;
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (const time of counted) [least, most] = [Math.min(least, time), Math.max(most, time)];
  const codes = [...new Set(bands.flatMap(({ code }) => (code === '' ? [] : [code])))];
  return [
    `“${name}”, cycles ${first} to ${last}, in ${timeUnits[unit].name}.`,
    counted.length === 0
      ? 'No reading counts.'
      : `${countText(counted.length, 'reading')} ${counted.length === 1 ? 'counts' : 'count'}, from ${timeCell(least, unit)} to ${timeWords(most, unit)}${mean === undefined ? '' : `, mean ${timeWords(mean, unit)}`}.`,
    aside.length === 0
      ? ''
      : `${countText(aside.length, 'reading')} ${aside.length === 1 ? 'is' : 'are'} set aside.`,
    missed === 0 ? '' : `${countText(missed, 'reading')} ${missed === 1 ? 'was' : 'were'} missed.`,
    thinned ? 'Drawn as the least and the most in each column.' : '',
    codes.length === 0
      ? ''
      : `${countText(bands.length, 'sitting')}, operator ${codes.slice(0, 8).join(', ')}${codes.length > 8 ? ' and others' : ''}.`,
    drift,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
