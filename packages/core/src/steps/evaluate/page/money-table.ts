import { roundMicros } from '../../../ground/base/index.ts';
import { fitText, groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { type TimeUnit, timeText } from '../../../ground/units/index.ts';
import type { ComparedMoney } from '../comparison/comparison.ts';
import { type MoneyRow, mattersMostWords, moneyGivenWords, moneyRows } from './money-rows.ts';
import { partHeading } from './page-parts.ts';
import { wrapWhole } from './wrap-whole.ts';

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly unit: TimeUnit;
}

const size = 7;
const small = 6.5;
const step = small * 1.28;

/** What the money is reckoned with, then low, likely and high as a table; where it cannot be reckoned, the reason. */
export function moneyTable(money: ComparedMoney, { left, right, top, bottom, unit }: Room): SceneNode[] {
  const { outlook, fault, given } = money;
  const wide = right - left;
  const years = given.years === 1 ? '1 year' : `${given.years} years`;
  const heading = partHeading(left, top, `Money over ${years}`);
  const lines = (from: number, words: readonly string[]) =>
    groupNode(
      'note',
      words.map((line, index) => textNode(left, from + index * step, line, { size: small, ink: 'soft' })),
    );
  const givenLines = wrapWhole(moneyGivenWords(money), wide, small, 400, 4);
  if (outlook === undefined) {
    const reason = wrapWhole(fault?.message ?? '', wide, small, 400, 6);
    return [heading, lines(top + 10, [...givenLines, ...reason])];
  }
  const most = mattersMostWords(outlook, given.currency, (us) => timeText(roundMicros(us), unit));
  const foot = most === undefined ? [] : wrapWhole(most, wide, small, 400, 3);
  const rows = [
    { name: '', low: 'low', likely: 'likely', high: 'high' },
    ...moneyRows(outlook, given.currency),
  ];
  const tableTop = top + 10 + givenLines.length * step - 3;
  const room = bottom - tableTop - 2;
  // Without room for the last sentence the table goes before it.
  const footed = room - foot.length * step >= rows.length * size * 1.2 ? foot : [];
  const line = Math.min(12, (room - footed.length * step) / rows.length);
  return [
    heading,
    lines(top + 10, givenLines),
    groupNode('layer', [lineNode(left, tableTop + line, right, tableTop + line, 0.4)]),
    groupNode(
      'table',
      rows.map((row, index) =>
        moneyLine(row, index === 0, tableTop + (index + 1) * line - 3, { left, right }),
      ),
      'Money: low, likely and high',
    ),
    ...(footed.length === 0 ? [] : [lines(tableTop + rows.length * line + 7, footed)]),
  ];
}

function moneyLine(
  row: MoneyRow,
  head: boolean,
  y: number,
  { left, right }: Pick<Room, 'left' | 'right'>,
): SceneNode {
  const wide = right - left;
  const cell = (value: string, share: number, weight: 400 | 600) =>
    groupNode('cell', [
      textNode(left + wide * share, y, fitText(value, wide * 0.205, size, weight), {
        size,
        align: 'end',
        weight,
        ink: head ? 'soft' : 'ink',
      }),
    ]);
  const name =
    row.name === '' ? [] : [textNode(left, y, fitText(row.name, wide * 0.37, size, 400), { size })];
  return groupNode(head ? 'head-row' : 'row', [
    groupNode('cell', name),
    cell(row.low, 0.58, 400),
    cell(row.likely, 0.79, head ? 400 : 600),
    cell(row.high, 1, 400),
  ]);
}
