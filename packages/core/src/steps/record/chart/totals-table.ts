import { type Micros, micros } from '../../../ground/base/index.ts';
import { groupNode, lineNode, type RectNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { type GroupingId, groupings, type MotionGroup, motionFactsOf } from '../../../ground/tables/index.ts';
import { percentText, type TimeUnit, timeNumber, timeUnits } from '../../../ground/units/index.ts';
import type { ChartFacts } from './facts.ts';
import { boldLine, hairline, thinLine } from './sheet.ts';
import { groupTimes, type KindTotal, kindTotals } from './totals.ts';

const size = 7.2;
const rowHeight = 11;
const headHeight = 24;

/** Right edges of the numbers, from the left edge of the table; each hand has count, time and share. */
const numberEdges: Readonly<Record<Hand, readonly [count: number, time: number, share: number]>> = {
  left: [168, 211, 250],
  right: [282, 325, 364],
};
export const totalsWidth = 364;
const swatchWidth = 16;
const codeAt = 23;
const nameAt = 44;

interface TotalsRow {
  readonly name: string;
  readonly code?: string;
  readonly swatch?: KindTotal['kind'];
  readonly bold?: boolean;
  readonly ruled?: boolean;
  readonly cells: Readonly<
    Record<Hand, { readonly count: string; readonly time: string; readonly share: string }>
  >;
}

/** Totals of every motion in each hand, which is at the same time the key to colours, patterns and letter codes. */
export function totalsTable(
  facts: ChartFacts,
  unit: TimeUnit,
  grouping: GroupingId,
  left: number,
  top: number,
): readonly SceneNode[] {
  const rows = totalsRows(facts, unit, grouping);
  const y = (index: number) => top + headHeight + index * rowHeight;
  const rules = rows.flatMap((row, index) =>
    row.ruled ? [lineNode(left, y(index), left + totalsWidth, y(index), hairline, 'ink')] : [],
  );
  const swatches = rows.flatMap((row, index) =>
    row.swatch === undefined ? [] : [swatch(row.swatch, left, y(index))],
  );
  return [
    groupNode('layer', [
      lineNode(left, top, left + totalsWidth, top, boldLine, 'ink'),
      lineNode(left, y(0), left + totalsWidth, y(0), thinLine, 'ink'),
      lineNode(left, y(rows.length), left + totalsWidth, y(rows.length), hairline),
      ...rules,
      ...swatches,
      ...hands.map((hand) => handName(hand, left, top)),
    ]),
    groupNode(
      'table',
      [tableHead(unit, left, top), ...rows.map((row, index) => tableRow(row, left, y(index) + 8))],
      'Totals of each motion and hand',
    ),
  ];
}

export function totalsHeight(facts: ChartFacts): number {
  // Totals, effective, ineffective and perhaps "not listed" follow the motions.
  return headHeight + (kindTotals(facts).length + 4) * rowHeight + 2;
}

function totalsRows(facts: ChartFacts, unit: TimeUnit, grouping: GroupingId): readonly TotalsRow[] {
  const share = (time: number) => percentText(time / facts.duration);
  const cellsOf = (total: Readonly<Record<Hand, { readonly count: number; readonly time: Micros }>>) => {
    const cell = (hand: Hand) => {
      const { count, time } = total[hand];
      return count === 0
        ? { count: '', time: '', share: '' }
        : { count: String(count), time: timeNumber(time, unit), share: share(time) };
    };
    return { left: cell('left'), right: cell('right') };
  };
  const kinds = kindTotals(facts).map((total): TotalsRow => {
    const { code, name } = motionFactsOf(total.kind);
    return { name, code, swatch: total.kind, cells: cellsOf(total) };
  });
  const sum = (hand: Hand) => ({
    count: facts[hand].filter((motion) => motion.kind !== 'unmarked').length,
    time: micros(facts[hand].reduce((time, motion) => time + motion.duration, 0)),
  });
  const all: TotalsRow = {
    name: 'Cycle',
    bold: true,
    ruled: true,
    cells: cellsOf({ left: sum('left'), right: sum('right') }),
  };
  return [...kinds, all, ...groupRows(facts, unit, grouping)];
}

/** Effective and ineffective time; its share is of the marked time of the hand, as the note beside the table says. */
function groupRows(facts: ChartFacts, unit: TimeUnit, grouping: GroupingId): readonly TotalsRow[] {
  const times = groupTimes(facts, grouping);
  const row = (group: MotionGroup, name: string, ruled: boolean): TotalsRow => {
    const cell = (hand: Hand) => {
      const { effective, ineffective, unlisted } = times[hand];
      const marked = effective + ineffective + unlisted;
      const share = marked === 0 ? '' : percentText(times[hand][group] / marked);
      return { count: '', time: timeNumber(times[hand][group], unit), share };
    };
    return { name, ruled, cells: { left: cell('left'), right: cell('right') } };
  };
  const unlisted = times.left.unlisted + times.right.unlisted > 0;
  const author = groupings[grouping].name;
  return [
    row('effective', `Effective (${author})`, true),
    row('ineffective', `Ineffective (${author})`, false),
    ...(unlisted ? [row('unlisted', 'Not listed there', false)] : []),
  ];
}

function swatch(kind: KindTotal['kind'], left: number, y: number): RectNode {
  const facts = motionFactsOf(kind);
  const open = kind === 'unmarked';
  return {
    kind: 'rect',
    x: left,
    y: y + 1.8,
    width: swatchWidth,
    height: rowHeight - 3.6,
    fill: open ? { ink: 'paper' } : { ink: { colour: facts.colour }, pattern: facts.pattern },
    stroke: open ? { ink: 'faint', width: hairline, dash: [2, 1.5] } : { ink: 'ink', width: hairline },
  };
}

function handName(hand: Hand, left: number, top: number): SceneNode {
  const [count, , share] = numberEdges[hand];
  const from = left + count - 22;
  return groupNode('layer', [
    textNode(left + share, top + 9.5, hand === 'left' ? 'Left hand' : 'Right hand', {
      size,
      weight: 600,
      align: 'end',
    }),
    lineNode(from, top + 13, left + share, top + 13, hairline),
  ]);
}

function tableHead(unit: TimeUnit, left: number, top: number): SceneNode {
  const y = top + 20.5;
  const look = { size: 6.3, ink: 'soft' as const };
  const cell = (at: number, text: string, align: 'start' | 'end') =>
    groupNode('cell', [textNode(left + at, y, text, { ...look, align })]);
  return groupNode('head-row', [
    cell(codeAt, 'Code', 'start'),
    cell(nameAt, 'Motion', 'start'),
    ...hands.flatMap((hand) => {
      const [count, time, share] = numberEdges[hand];
      return [
        cell(count, 'times', 'end'),
        cell(time, timeUnits[unit].symbol, 'end'),
        cell(share, 'share', 'end'),
      ];
    }),
  ]);
}

function tableRow(row: TotalsRow, left: number, y: number): SceneNode {
  const weight = row.bold ? 600 : 400;
  const cell = (at: number, text: string, align: 'start' | 'end', heavy = row.bold === true) =>
    groupNode(
      'cell',
      text === '' ? [] : [textNode(left + at, y, text, { size, weight: heavy ? 600 : weight, align })],
    );
  return groupNode('row', [
    cell(codeAt, row.code ?? '', 'start', true),
    cell(row.code === undefined ? 0 : nameAt, row.name, 'start'),
    ...hands.flatMap((hand) => {
      const [count, time, share] = numberEdges[hand];
      const cells = row.cells[hand];
      return [
        cell(count, cells.count, 'end'),
        cell(time, cells.time, 'end'),
        cell(share, cells.share, 'end'),
      ];
    }),
  ]);
}
