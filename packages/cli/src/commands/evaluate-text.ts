import {
  causes,
  type Decomposition,
  type Difference,
  type EqualPace,
  type MethodTimes,
  savingWords,
} from '@evenhand/core/evaluate';
import type { MethodReading } from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import type { Interval } from '@evenhand/core/ground/numerics';
import { countText, numberText, percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { wrapped } from './wrapped.ts';

export interface Compared {
  readonly before: MethodReading;
  readonly after: MethodReading;
  readonly difference: Difference;
  readonly decomposition: Decomposition;
  readonly pace: EqualPace;
}

/** The comparison of two methods for reading at a terminal. */
export function evaluateText(
  { before, after, difference, decomposition, pace }: Compared,
  unit: TimeUnit,
): string {
  const { study } = before;
  const lines = [
    `${study.title}${study.demo === true ? ' (invented data)' : ''}: ${before.method.name} and ${after.method.name}, times for one unit`,
    '',
    sideLine('before', before, difference.before, unit),
    sideLine('after', after, difference.after, unit),
    '',
    ...differenceLines(difference, unit),
    '',
    ...paceLines(pace, unit),
    '',
    ...decompositionLines(decomposition, unit),
  ];
  return `${lines.join('\n')}\n`;
}

function text(time: number, unit: TimeUnit): string {
  return timeText(micros(Math.round(time)), unit);
}

function range(interval: Interval, of: (value: number) => string): string {
  return `${percentText(interval.confidence, 0)} interval ${of(interval.low)} to ${of(interval.high)}`;
}

function sideLine(
  name: string,
  { method, cycles }: MethodReading,
  { sample }: MethodTimes,
  unit: TimeUnit,
): string {
  const time = (value: number) => text(value, unit);
  const spread = sample.deviation === undefined ? '' : `, deviation ${time(sample.deviation)}`;
  const interval = sample.interval === undefined ? '' : `, ${range(sample.interval, time)}`;
  const units = `${countText(cycles.length, 'cycle')} of ${countText(method.unitsPerCycle, 'unit')}`;
  return `  ${name.padEnd(7)} ${time(sample.mean)} a unit${spread}${interval} (${method.name}, ${units})`;
}

function differenceLines(difference: Difference, unit: TimeUnit): string[] {
  const { saving, timeSaved, outputGained, savedInterval, drawn, more } = difference;
  const share = (value: number) => percentText(value);
  const time = (value: number) => text(value, unit);
  return [
    ...wrapped(`As recorded, ${savingWords(saving)}: ${time(difference.saved)} a unit.`, '  '),
    ...(timeSaved === undefined ? [] : [`  Time saved: ${range(timeSaved, share)} (Welch on logarithms)`]),
    ...(outputGained === undefined ? [] : [`  Output gained: ${range(outputGained, share)}`]),
    ...(savedInterval === undefined ? [] : [`  Time a unit: ${range(savedInterval, time)} (Welch)`]),
    ...(drawn === undefined
      ? []
      : [
          `  Beside it, ${drawn.draws} draws of the cycles (seed ${drawn.seed}): ${range(drawn.saved, time)}`,
        ]),
    ...wrapped(difference.odds, '  '),
    ...(more === undefined ? [] : wrapped(more.words, '  ')),
  ];
}

function paceLines(
  { motions, share, ratio, interval, equal, explained, rule }: EqualPace,
  unit: TimeUnit,
): string[] {
  if (ratio === undefined || equal === undefined) {
    return [
      'At equal pace',
      ...wrapped('The methods share no motion, so their paces cannot be compared.', '  '),
    ];
  }
  const times = (value: number) => numberText(value, 3);
  const within = interval === undefined ? '' : `, ${range(interval, times)}`;
  return [
    'At equal pace',
    ...wrapped(
      `${countText(motions.length, 'motion')} that both methods share (${percentText(share, 0)} of the work after) took ${times(ratio)} times as long after as before${within}.`,
      '  ',
    ),
    ...wrapped(`At the pace before, ${savingWords(equal.saving)}: ${text(equal.after, unit)} a unit.`, '  '),
    ...(equal.timeSaved === undefined
      ? []
      : [`  Time saved: ${range(equal.timeSaved, (value) => percentText(value))}`]),
    ...(explained === undefined
      ? []
      : wrapped(
          `Pace explains ${percentText(explained)} of the time saved as recorded (below 0: slower work hides some of it).`,
          '  ',
        )),
    ...wrapped(rule, '  '),
  ];
}

const mostRows = 14;

function decompositionLines({ rows, totals, saved, byHand, rule }: Decomposition, unit: TimeUnit): string[] {
  const shown = rows.slice(0, mostRows);
  const left = rows.length - shown.length;
  return [
    `Where the ${text(saved, unit)} come from (saved above 0, cost below)`,
    ...causes
      .filter((cause) => totals[cause] !== 0)
      .map((cause) => `  ${cause.padEnd(36)} ${text(totals[cause], unit).padStart(10)}`),
    `  ${'left hand'.padEnd(36)} ${text(byHand.left, unit).padStart(10)}`,
    `  ${'right hand'.padEnd(36)} ${text(byHand.right, unit).padStart(10)}`,
    '',
    ...shown.map(({ name, saved: own, parts }) => {
      const why = parts.map(({ cause, saved: part }) => `${cause} ${text(part, unit)}`).join(', ');
      return `  ${name.padEnd(36)} ${text(own, unit).padStart(10)}  ${why}`;
    }),
    ...(left > 0 ? [`  and ${countText(left, 'smaller change')}`] : []),
    ...wrapped(rule, '  '),
  ];
}

/** The same as plain data; times are microseconds for one unit. */
export function evaluateJson({ before, after, difference, decomposition, pace }: Compared): unknown {
  const side = ({ method, cycles }: MethodReading, { sample }: MethodTimes) => ({
    method: method.id,
    name: method.name,
    unitsPerCycle: method.unitsPerCycle,
    cycles: cycles.map(({ number }) => number),
    sample,
  });
  const { before: _, after: __, notes, ...rest } = difference;
  return {
    study: { id: before.study.id, title: before.study.title, demo: before.study.demo === true },
    before: side(before, difference.before),
    after: side(after, difference.after),
    difference: { ...rest, notes: notes.map(({ message }) => message) },
    pace: {
      ratio: pace.ratio,
      interval: pace.interval,
      share: pace.share,
      motions: pace.motions.length,
      equal: pace.equal,
      explained: pace.explained,
      rule: pace.rule,
    },
    decomposition: {
      saved: decomposition.saved,
      totals: decomposition.totals,
      byHand: decomposition.byHand,
      rule: decomposition.rule,
      rows: decomposition.rows.map(({ name, kind, object, saved, byHand, parts }) => ({
        ...{ name, kind, object, saved, byHand, parts },
      })),
    },
  };
}
