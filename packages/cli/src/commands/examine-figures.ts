import {
  cycleWords,
  type Figure,
  type FigureSet,
  type Figures,
  type MethodReading,
  type RepeatedRun,
  type TimeRow,
  type Variation,
} from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { numberText, percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { wrapped } from './wrapped.ts';

/** A line of a table: what, then mean, spread and interval of a figure, then its share. */
type Line = readonly [label: string, figure: Figure, share?: Figure];

/** The figures for reading at a terminal, table by table. */
export function figureLines(set: FigureSet, unit: TimeUnit, reading: MethodReading): string[] {
  const { figures, repeated, variation } = set;
  const many = reading.cycles.length > 1;
  const table = (title: string, lines: readonly Line[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => lineText(line, unit))];
  return [
    many
      ? `Figures over ${reading.cycles.length} cycles: mean, standard deviation, 95 % confidence interval (Student's t), share`
      : 'Figures of one cycle: no spread and no interval; share last',
    ...table('Cycle', [['cycle time', figures.cycle]]),
    ...handTables(figures, table),
    ...table(
      'Both hands together, of the cycle',
      figures.together.filter(happens).map(({ name, time, share }) => [name, time, share]),
    ),
    ...table('Balance', [
      ['work of the hand that works less ÷ the other', figures.balance.ratio],
      ['working time, left less right', figures.balance.difference],
    ]),
    ...table('Motion with motion, left | right, of the cycle', largest(figures)),
    ...table('Begun and ended together', meetingLines(figures, unit)),
    ...sameMotionLines(figures, unit, table),
    ...repeatedLines([...repeated.left.byCost, ...repeated.right.byCost, ...repeated.both.byCost], unit),
    ...(many
      ? variationLines(variation, unit, (cycle) => cycleWords([reading.cycles[cycle]?.number ?? 0]))
      : []),
  ];
}

type Table = (title: string, lines: readonly Line[]) => string[];

function happens({ time }: { readonly time: Figure }): boolean {
  return time.value !== undefined && time.value > 0;
}

function handTables({ times, groups, states, pace }: Figures, table: Table): string[] {
  const rows = <Row extends TimeRow>(list: readonly Row[], label: (row: Row) => string): Line[] =>
    list
      .filter(({ hand }) => hand !== 'both')
      .map((row) => [`${row.hand}: ${label(row)}`, row.time, row.share]);
  const number = ({ count }: TimeRow) =>
    count.value === undefined ? '' : `, ${numberText(count.value, 2)} ×`;
  return [
    ...table(
      'Time by motion, of the marked time of the hand',
      rows(times.motions, (row) => motionFactsOf(row.kind).name + number(row)),
    ),
    ...table(
      'Time by object',
      rows(times.objects, (row) => (row.object ?? 'not said') + number(row)),
    ),
    ...table(
      'Time by place',
      rows(times.places, (row) => row.name ?? 'not said'),
    ),
    ...table(
      `Effective and ineffective after ${groups.grouping.name}`,
      groups.rows.filter(happens).map((row) => [`${row.hand}: ${row.group}`, row.time, row.share]),
    ),
    ...table(
      'Working, holding, idle, of the cycle',
      states.filter(happens).map((row) => [`${row.hand}: ${row.state}`, row.time, row.share]),
    ),
    ...table(
      'Motions',
      pace.flatMap((row): Line[] => [
        [`${row.hand}: motions a cycle`, row.aCycle],
        [`${row.hand}: motions a minute`, row.aMinute],
      ]),
    ),
  ];
}

const mostCells = 12;

/** The cells with most time; the whole table is in the JSON. */
function largest({ overlap }: Figures): Line[] {
  const cells = [...overlap.cells].sort((a, b) => (b.time.value ?? 0) - (a.time.value ?? 0));
  return cells
    .slice(0, mostCells)
    .map(({ left, right, time, share }) => [
      `${motionFactsOf(left).name} | ${motionFactsOf(right).name}`,
      time,
      share,
    ]);
}

function meetingLines({ beginEnd }: Figures, unit: TimeUnit): Line[] {
  const within = `within ${timeText(beginEnd.tolerance, unit)}`;
  return (['begin', 'end'] as const).flatMap((name): Line[] => [
    [`gap between the hands where work ${name}s`, beginEnd[name].gap],
    ...beginEnd[name].motions.map((row): Line => [`${row.hand}: motions that ${name} ${within}`, row.share]),
  ]);
}

function sameMotionLines({ sameMotion }: Figures, unit: TimeUnit, table: Table): string[] {
  const lines = table('The same motion in both hands at once', [
    ['of the time marked in both', sameMotion.share],
    ['of the time in which both work', sameMotion.workShare],
  ]);
  const { lag } = sameMotion;
  if (lag === undefined) return lines;
  const { best } = lag;
  const shift =
    best.lag === 0 ? 'as recorded' : `when moved by ${timeText(best.lag, unit)}, ${leaderWords(best.leads)}`;
  return [
    ...lines,
    `  the rows agree best ${shift}: ${percentText(best.agreement)} of the time both are marked then`,
  ];
}

function leaderWords(leads: string): string {
  if (leads === 'left' || leads === 'right') return `the ${leads} hand first`;
  return 'either hand first';
}

const mostRuns = 6;

function repeatedLines(runs: readonly RepeatedRun[], unit: TimeUnit): string[] {
  const costly = [...runs].sort((a, b) => b.total - a.total).slice(0, mostRuns);
  if (costly.length === 0) return [];
  return [
    '',
    'Repeated sequences that take most time (all of them in the JSON)',
    ...costly.flatMap(({ row, words, count, timeACycle }) =>
      wrapped(`${row}: ${count} ×, ${timeText(timeACycle, unit)} a cycle: ${words}`, '    ', '  '),
    ),
  ];
}

function variationLines(
  { basis, elements, deviations, best, quartiles, cycles }: Variation,
  unit: TimeUnit,
  cycleName: (cycle: number) => string,
): string[] {
  const time = (value: number) => timeText(micros(Math.round(value)), unit);
  const rows = elements.flatMap(({ name, hand, spread }) => {
    if (spread?.sample.variation === undefined) return [];
    const { sample, least, most } = spread;
    const label = `  ${hand}: ${name}`.padEnd(50);
    return [
      `${label} ${time(sample.mean).padStart(10)} ${percentText(spread.sample.variation ?? 0).padStart(8)}  ${time(least)} to ${time(most)}`,
    ];
  });
  const bound = (item: Variation['best'] | Variation['quartiles']) =>
    item.bound === undefined ? item.reason : `${time(item.bound.time)}. ${item.bound.words}`;
  return [
    '',
    `Variation over cycles, by ${basis === 'elements' ? 'the named elements' : 'the motions of the typical cycle'}: mean, coefficient of variation, least to most`,
    ...rows,
    `  whole cycles from ${time(cycles.least)} to ${time(cycles.most)}`,
    ...wrapped(`best complete cycle: ${bound(best)}`, '    ', '  '),
    ...wrapped(`cycle of lower quartiles: ${bound(quartiles)}`, '    ', '  '),
    ...deviations.flatMap(({ cycle, hand, words, time: extra }) =>
      wrapped(`${cycleName(cycle)}, ${hand} hand, ${time(extra)} more: ${words}`, '    ', '  '),
    ),
  ];
}

function lineText([label, figure, share]: Line, unit: TimeUnit): string {
  const text = (value: number) => figureText(value, figure.unit, unit);
  const mean = figure.value === undefined ? '–' : text(figure.value);
  const { sample } = figure;
  const spread = sample?.deviation === undefined ? '' : text(sample.deviation);
  const interval =
    sample?.interval === undefined
      ? ''
      : `${text(atLeastNothing(sample.interval.low, sample.mean))} to ${text(sample.interval.high)}`;
  const part = share?.value === undefined ? '' : percentText(share.value);
  const columns = [
    `  ${label}`.padEnd(50),
    mean.padStart(10),
    spread.padStart(9),
    interval.padStart(20),
    part.padStart(8),
  ];
  return columns.join(' ').trimEnd();
}

/** An interval of what cannot be negative does not reach below nothing. */
function atLeastNothing(low: number, mean: number): number {
  return mean < 0 ? low : Math.max(0, low);
}

function figureText(value: number, kind: Figure['unit'], unit: TimeUnit): string {
  switch (kind) {
    case 'time':
      return timeText(micros(Math.round(value)), unit);
    case 'share':
      return percentText(value);
    case 'rate':
      return numberText(value, 1);
    default:
      return numberText(value, 2);
  }
}
