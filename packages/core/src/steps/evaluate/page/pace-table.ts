import { roundMicros } from '../../../ground/base/index.ts';
import { fitText, groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { countText, numberText, type TimeUnit, timeNumber, timeUnits } from '../../../ground/units/index.ts';
import type { EqualPace, PacedMotion } from '../pace/pace.ts';
import { partHeading } from './page-parts.ts';

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly unit: TimeUnit;
}

const size = 7;
const line = 10.5;

/** The motions that both methods share, with their mean lengths: those that weigh most, as many as there is room for. */
export function paceTable(
  { motions, ratio }: EqualPace,
  { left, right, top, bottom, unit }: Room,
): SceneNode[] {
  if (ratio === undefined) return [];
  const room = Math.floor((bottom - top - 14) / line) - 2;
  if (room < 1) return [];
  const sorted = [...motions].sort((a, b) => b.weight - a.weight || (a.name < b.name ? -1 : 1));
  const shown = sorted.slice(0, room);
  const symbol = timeUnits[unit].symbol;
  const rows = [
    ['', `before, ${symbol}`, `after, ${symbol}`, 'ratio'],
    ...shown.map((motion) => motionCells(motion, unit)),
    [`All ${countText(motions.length, 'motion')}`, '', '', numberText(ratio, 2)],
  ];
  return [
    partHeading(left, top, 'Pace: motions that both methods share'),
    groupNode(
      'table',
      rows.map((cells, index) => {
        const y = top + 4 + (index + 1) * line;
        const last = index === rows.length - 1;
        const rule = last ? y - line + 3 : y + 3;
        const rules = index === 0 || last ? [lineNode(left, rule, right, rule, 0.4)] : [];
        return groupNode(index === 0 ? 'head-row' : 'row', [
          groupNode('layer', rules),
          ...cells.map((words, column) =>
            cellNode(words, column, { left, right, y, head: index === 0, last }),
          ),
        ]);
      }),
      'Shared motions',
    ),
  ];
}

function motionCells({ name, hand, meanBefore, meanAfter, ratio }: PacedMotion, unit: TimeUnit): string[] {
  const time = (us: number) => timeNumber(roundMicros(us), unit);
  const words = hand === undefined ? name : `${name}, ${hand} hand`;
  return [words, time(meanBefore), time(meanAfter), numberText(ratio, 2)];
}

const ends = [0, 0.68, 0.82, 1] as const;

function cellNode(
  words: string,
  column: number,
  row: {
    readonly left: number;
    readonly right: number;
    readonly y: number;
    readonly head: boolean;
    readonly last: boolean;
  },
): SceneNode {
  const wide = row.right - row.left;
  const look = { size, weight: row.last ? 600 : 400, ink: row.head ? 'soft' : 'ink' } as const;
  if (words === '') return groupNode('cell', []);
  if (column === 0)
    return groupNode('cell', [
      textNode(row.left, row.y, fitText(words, wide * 0.53, size, look.weight), look),
    ]);
  const room = wide * ((ends[column] ?? 1) - Math.max(0.54, ends[column - 1] ?? 0)) - 2;
  return groupNode('cell', [
    textNode(row.left + wide * (ends[column] ?? 1), row.y, fitText(words, room, size, look.weight), {
      ...look,
      align: 'end',
    }),
  ]);
}
