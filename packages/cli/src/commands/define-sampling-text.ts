import type { ShareChart, ShareSeen } from '@evenhand/core/define';
import type { Micros } from '@evenhand/core/ground/base';
import { numberText, percentText } from '@evenhand/core/ground/units';
import type { SamplingAsked, SamplingTold } from './define-sampling.ts';
import type { SampledPiece } from './define-sampling-work.ts';
import { type Day, momentText } from './define-shifts.ts';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

export function samplingText(asked: SamplingAsked, told: SamplingTold): string {
  const lines = [
    ...neededLines(asked, told),
    ...seenLines(asked, told),
    ...chartLines(told.chart),
    ...pieceLines(told.piece),
    ...dayLines(told.moments),
  ];
  return `${lines.join('\n')}\n`;
}

function sureWords({ assurance }: SamplingAsked): string {
  return assurance.kind === 'confidence'
    ? `at ${percentText(assurance.confidence)}`
    : `with ${numberText(assurance.multiplier, 2)} standard errors`;
}

function neededLines(asked: SamplingAsked, { needed }: SamplingTold): string[] {
  const { precision, share } = asked;
  if (needed === undefined || share === undefined) return [];
  const wanted =
    precision.kind === 'of-the-whole'
      ? `±${numberText(precision.amount * 100, 2)} points of the whole`
      : `±${percentText(precision.amount)} of the share itself`;
  return [
    `Observations needed for a share of ${percentText(share)} within ${wanted} ${sureWords(asked)}: ${needed.needed} (unrounded ${numberText(needed.unrounded, 2)}, factor ${numberText(needed.multiplier, 3)})`,
  ];
}

function seenLines(asked: SamplingAsked, told: SamplingTold): string[] {
  const { seen } = asked;
  if (told.seen === undefined || seen === undefined) return [];
  const { share, halfWidth, interval, wilson } = told.seen;
  const range = ({ low, high }: ShareSeen['interval']) => `${percentText(low, 2)} to ${percentText(high, 2)}`;
  return [
    `Seen ${seen.times} times in ${seen.count} observations: ${percentText(share, 2)} ± ${numberText(halfWidth * 100, 2)} points ${sureWords(asked)}`,
    `  interval by the normal distribution ${range(interval)}; after Wilson ${range(wilson)}`,
  ];
}

function chartLines(chart: ShareChart | undefined): string[] {
  if (chart === undefined) return [];
  const outside = chart.days.filter((day) => day.outside).map(({ name }) => name);
  return [
    '',
    `p-chart: each day against three standard errors about ${percentText(chart.share, 2)}`,
    ...tableLines(
      ['day', 'seen', 'of', 'share', 'low', 'high', ''],
      chart.days.map(({ name, seen, count, share, low, high, outside: out }) => [
        ...[name, String(seen), String(count)],
        ...[share, low, high].map((value) => percentText(value, 2)),
        out ? 'outside' : '',
      ]),
    ).map((line) => line.trimEnd()),
    ...wrapped(
      outside.length === 0
        ? 'No day lies outside: nothing speaks against taking the days together.'
        : `Outside: ${outside.join(', ')}. Look for what was different then before the days are taken together.`,
      '  ',
      '',
    ),
  ];
}

function pieceLines(piece: SampledPiece | undefined): string[] {
  if (piece === undefined) return [];
  const { observed, basic, standard, interval, rated, allowance, words } = piece;
  const time = (value: number) => numberText(value, 4);
  const range =
    interval === undefined
      ? ', without an interval'
      : `, ${percentText(interval.confidence, 0)} interval ${time(interval.low)} to ${time(interval.high)}`;
  return [
    '',
    `Standard time  ${time(standard)} a piece${range}; in the unit of --over`,
    ...wrapped(
      `Observed ${time(observed)}, basic ${time(basic)}, allowance ${percentText(allowance)}. ${words}`,
      '  ',
      '',
    ),
    ...(rated
      ? []
      : wrapped(
          'The pace was not rated, standard was taken: it holds only if the work was done at standard pace.',
          '  ',
          '',
        )),
  ];
}

function dayLines(moments: readonly Micros[] | undefined): string[] {
  if (moments === undefined) return [];
  const days = new Map<number, string[]>();
  for (const { day, clock } of moments.map((moment): Day => momentText(moment))) {
    days.set(day, [...(days.get(day) ?? []), clock]);
  }
  return [
    `Times to look (${moments.length}), drawn at random:`,
    ...[...days].flatMap(([day, clocks]) => [
      `Day ${day}`,
      ...rows(clocks, 12).map((row) => `  ${row.join('  ')}`),
    ]),
  ];
}

function rows<Item>(items: readonly Item[], size: number): Item[][] {
  const count = Math.ceil(items.length / size);
  return Array.from({ length: count }, (_, index) => items.slice(index * size, (index + 1) * size));
}
