import { groupNode, lineNode, type SceneNode, textNode, wrapText } from '../../../ground/scene/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { processSymbols } from '../../../ground/tables/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import type { ChartFacts } from './facts.ts';
import { type ProcessLine, symbolCounts, togetherWithin } from './process-lines.ts';
import { boldLine, hairline, type Sheet, thinLine } from './sheet.ts';
import { symbolShape } from './symbols.ts';

const size = 7.2;
const rowHeight = 13;
const headHeight = 16;
const tableWidth = 210;
const edges = { name: 20, left: 160, right: tableWidth } as const;
const noteSize = 6.8;
const noteLine = 8.8;
const noteGap = 4;

interface SummaryRow {
  readonly name: string;
  readonly symbol?: (typeof processSymbols)[number]['symbol'];
  readonly left: number;
  readonly right: number;
  readonly bold?: boolean;
}

function summaryRows(lines: readonly ProcessLine[]): readonly SummaryRow[] {
  const [left, right] = [symbolCounts(lines, 'left'), symbolCounts(lines, 'right')];
  const rows = processSymbols.map(
    ({ symbol, name }): SummaryRow => ({
      name,
      symbol,
      left: left.symbols[symbol],
      right: right.symbols[symbol],
    }),
  );
  const open =
    left.unmarked + right.unmarked > 0
      ? [{ name: 'not marked yet', left: left.unmarked, right: right.unmarked }]
      : [];
  return [...rows, ...open, { name: 'Lines', left: left.lines, right: right.lines, bold: true }];
}

function noteTexts(facts: ChartFacts): readonly string[] {
  const together = numberText(togetherWithin / 1000, 0);
  return [
    'A filled symbol: the motion begins on this line. An open symbol: it goes on from the line before.',
    `A line begins wherever a hand begins a motion; what begins within ${together} ms of the other hand shares its line. Every line counts once for each hand.`,
    ...facts.notes.map((note) => note.message),
    ...(facts.demo ? ['Invented data, for trying the program.'] : []),
  ];
}

function noteLines(sheet: Sheet, facts: ChartFacts): readonly (readonly string[])[] {
  const room = sheet.right - sheet.left - tableWidth - 30;
  return noteTexts(facts).map((text) => wrapText(text, room, noteSize, 400));
}

export function summaryHeight(sheet: Sheet, facts: ChartFacts): number {
  const notes = noteLines(sheet, facts).reduce((sum, lines) => sum + lines.length * noteLine + noteGap, 4);
  return Math.max(headHeight + 7 * rowHeight, notes);
}

/** How often each symbol stands in the column of each hand, and what a reader must know. */
export function processSummary(
  sheet: Sheet,
  facts: ChartFacts,
  lines: readonly ProcessLine[],
  top: number,
): readonly SceneNode[] {
  const { left } = sheet;
  const rows = summaryRows(lines);
  const y = (index: number) => top + headHeight + index * rowHeight;
  const end = left + tableWidth;
  const last = rows.length - 1;
  const symbols = rows.flatMap((row, index) =>
    row.symbol === undefined
      ? []
      : [
          symbolShape(row.symbol, left + 6, y(index) + rowHeight / 2, 3.9, {
            stroke: { ink: 'ink', width: 0.9 },
          }),
        ],
  );
  return [
    groupNode('layer', [
      lineNode(left, top, end, top, boldLine, 'ink'),
      lineNode(left, y(0), end, y(0), thinLine, 'ink'),
      lineNode(left, y(last), end, y(last), hairline, 'ink'),
      lineNode(left, y(last + 1), end, y(last + 1), hairline),
      ...symbols,
    ]),
    groupNode(
      'table',
      [summaryHead(left, top), ...rows.map((row, index) => summaryRow(row, left, y(index) + 9))],
      'Count of each symbol',
    ),
    ...notes(sheet, facts, top),
  ];
}

function summaryHead(left: number, top: number): SceneNode {
  const cell = (x: number, text: string, align: 'start' | 'end') =>
    groupNode('cell', [textNode(left + x, top + 11, text, { size: 6.3, ink: 'soft', align })]);
  return groupNode('head-row', [
    cell(edges.name, 'Symbol', 'start'),
    cell(edges.left, 'Left hand', 'end'),
    cell(edges.right, 'Right hand', 'end'),
  ]);
}

function summaryRow(row: SummaryRow, left: number, y: number): SceneNode {
  const look = { size, weight: row.bold ? 600 : 400 } as const;
  return groupNode('row', [
    groupNode('cell', [textNode(left + (row.symbol === undefined ? 0 : edges.name), y, row.name, look)]),
    ...hands.map((hand) =>
      groupNode('cell', [textNode(left + edges[hand], y, String(row[hand]), { ...look, align: 'end' })]),
    ),
  ]);
}

function notes(sheet: Sheet, facts: ChartFacts, top: number): SceneNode[] {
  const x = sheet.left + tableWidth + 30;
  let y = top + 7;
  return noteLines(sheet, facts).map((lines) => {
    const nodes = lines.map((line, index) =>
      textNode(x, y + index * noteLine, line, { size: noteSize, ink: 'soft' }),
    );
    y += lines.length * noteLine + noteGap;
    return groupNode('note', nodes);
  });
}
