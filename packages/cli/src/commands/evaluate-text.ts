import {
  amountText,
  type ComparedMoney,
  type ComparisonFacts,
  caseFields,
  causes,
  type Decomposition,
  type Difference,
  type EqualPace,
  fieldText,
  type MethodTimes,
  moneyGivenWords,
  moneyRows,
  type Outlook,
  outlookRule,
  savingWords,
  type TornadoBar,
} from '@evenhand/core/evaluate';
import type { MethodReading } from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import type { Interval } from '@evenhand/core/ground/numerics';
import { countText, numberText, percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

/** The comparison of two methods for reading at a terminal. */
export function evaluateText({ proof, money }: ComparisonFacts, unit: TimeUnit): string {
  const { before, after, difference, decomposition, pace, claim } = proof;
  const { study } = before;
  const lines = [
    `${study.title}${study.demo === true ? ' (invented data)' : ''}: ${before.method.name} and ${after.method.name}, times for one unit`,
    '',
    ...wrapped(claim.sentence, ''),
    '',
    sideLine('before', before, difference.before, unit),
    sideLine('after', after, difference.after, unit),
    '',
    ...differenceLines(difference, unit),
    '',
    ...paceLines(pace, unit),
    '',
    ...decompositionLines(decomposition, unit),
    ...moneyLines(money, unit),
  ];
  return `${lines.join('\n')}\n`;
}

function moneyLines(money: ComparedMoney | undefined, unit: TimeUnit): string[] {
  if (money?.outlook === undefined) return [];
  const { outlook, given, basis } = money;
  const rows = [
    { name: '', low: 'low', likely: 'likely', high: 'high' },
    ...moneyRows(outlook, given.currency),
  ];
  return [
    '',
    `Money over ${countText(given.years, 'year')}`,
    ...rows.map(
      ({ name, low, likely, high }) =>
        `  ${name.padEnd(26)} ${low.padStart(16)} ${likely.padStart(16)} ${high.padStart(16)}`,
    ),
    ...wrapped(`Reckoned with ${moneyGivenWords(money)}.`, '  '),
    ...wrapped(basis, '  '),
    ...tornadoLines(outlook, given.currency, unit),
    ...outlook.likely.conventions.flatMap((convention) => wrapped(convention, '  ')),
  ];
}

/** What matters most for the net present value, the widest first. */
function tornadoLines({ tornado }: Outlook, currency: string, unit: TimeUnit): string[] {
  if (tornado.length === 0) return [];
  const value = (bar: TornadoBar, of: number) =>
    fieldText(bar.field, of, currency, (time) => text(time, unit));
  const ends = ({ low, high }: TornadoBar) =>
    [low, high].map(({ netPresentValue }) => amountText(netPresentValue, currency)).join(' to ');
  const rows = tornado.map((bar) => [
    `  ${caseFields[bar.field].replace(/,$/, '')}`,
    `${value(bar, bar.low.value)} to ${value(bar, bar.high.value)}`,
    ends(bar),
  ]);
  return [
    '',
    ...tableLines(['  What matters most, the widest first', 'from low to high', 'net present value'], rows),
    ...wrapped(outlookRule, '  '),
  ];
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

/** The same as plain data, as the published schema of the report describes it. */
export function evaluateJson(
  { comparison, proof, money }: ComparisonFacts,
  files: readonly string[],
): unknown {
  const { before, after, difference, decomposition, pace, claim } = proof;
  const side = ({ method, cycles }: MethodReading, { sample }: MethodTimes) => ({
    method: method.id,
    name: method.name,
    unitsPerCycle: method.unitsPerCycle,
    cycles: cycles.map(({ number }) => number),
    sample,
  });
  const { before: _, after: __, notes: ___, ...rest } = difference;
  return {
    ok: true,
    reportVersion: 1,
    study: { id: before.study.id, title: before.study.title, demo: before.study.demo === true },
    comparison: { id: comparison.id, ...(comparison.name === undefined ? {} : { name: comparison.name }) },
    before: side(before, difference.before),
    after: side(after, difference.after),
    claim,
    difference: rest,
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
        ...{ name, kind, object, saved, byHand, parts: [...parts] },
      })),
    },
    ...(money?.outlook === undefined
      ? {}
      : { money: { given: money.given, basis: money.basis, ...money.outlook } }),
    files: [...files],
    notes: proof.notes.map(({ code, message }) => ({ code, message })),
  };
}
