import { micros } from '../../../ground/base/index.ts';
import { groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { type TimeUnit, timeNumber, timeUnits } from '../../../ground/units/index.ts';
import { balancedLines, baselineDrop, lineHeight, mostLines, textSize, wordsOf } from './hand-column.ts';
import { type ProcessEntry, type ProcessLine, symbolOrder } from './process-lines.ts';
import { hairline, type Sheet, thinLine } from './sheet.ts';
import { symbolShape } from './symbols.ts';

/** A line of the chart with its descriptions broken and its height known. */
export interface ProcessRow {
  readonly line: ProcessLine;
  readonly words: Readonly<Record<Hand, readonly string[]>>;
  readonly height: number;
}

const numberHalf = 15;
const symbolWidth = 14.5;
const symbolRadius = 3.9;
const timeWidth = 32;
const gap = 8;
const shortestRow = 14.5;
const rowPadding = 5.9;

/** Where the columns of a hand stand, from the middle outwards. */
function columnsOf(sheet: Sheet, hand: Hand) {
  const outward = hand === 'left' ? -1 : 1;
  const middle = sheet.width / 2;
  const symbols = middle + outward * numberHalf;
  const symbolsEnd = symbols + outward * symbolWidth * symbolOrder.length;
  const description = symbolsEnd + outward * (timeWidth + gap);
  const outer = hand === 'left' ? sheet.left : sheet.right;
  return {
    outward,
    /** The symbols stand in the order of the printed form in both hands. */
    symbolAt: (index: number) => Math.min(symbols, symbolsEnd) + (index + 0.5) * symbolWidth,
    symbolEdges: [Math.min(symbols, symbolsEnd), Math.max(symbols, symbolsEnd)] as const,
    timeEdge: hand === 'left' ? symbolsEnd - 5 : symbolsEnd + timeWidth,
    description,
    room: Math.abs(outer - description),
    align: hand === 'left' ? ('end' as const) : ('start' as const),
  };
}

export function processRow(sheet: Sheet, line: ProcessLine): ProcessRow {
  const wordsFor = (hand: Hand) => {
    const { motion, goesOn } = line[hand];
    return goesOn
      ? ['goes on']
      : balancedLines(wordsOf(motion, false), columnsOf(sheet, hand).room, mostLines);
  };
  const words = { left: wordsFor('left'), right: wordsFor('right') };
  const lines = Math.max(words.left.length, words.right.length);
  return { line, words, height: Math.max(shortestRow, lines * lineHeight + rowPadding) };
}

export const processHeadHeight = 46;

/** The heads of the columns; `top` is where the first row begins. */
export function processHead(sheet: Sheet, top: number): readonly SceneNode[] {
  const rule = lineNode(sheet.left, top, sheet.right, top, thinLine, 'ink');
  const names = hands.map((hand): SceneNode => {
    const { symbolEdges } = columnsOf(sheet, hand);
    const x = hand === 'left' ? symbolEdges[1] : symbolEdges[0];
    const text = hand === 'left' ? 'Left hand' : 'Right hand';
    const look = { size: 9, weight: 600, align: hand === 'left' ? 'end' : 'start' } as const;
    return groupNode('note', [textNode(x, top - 21, text, look)]);
  });
  return [groupNode('layer', [rule]), ...names];
}

export function processHeadRow(sheet: Sheet, top: number, unit: TimeUnit): SceneNode {
  const y = top - 7;
  const look = { size: 6.3, ink: 'soft' as const };
  const cell = (x: number, text: string, align: 'start' | 'middle' | 'end') =>
    groupNode('cell', [textNode(x, y, text, { ...look, align })]);
  const sides = hands.flatMap((hand) => {
    const { description, align, timeEdge } = columnsOf(sheet, hand);
    return [
      cell(description, 'Description', align),
      cell(timeEdge, timeUnits[unit].symbol, 'end'),
      groupNode('cell', [
        groupNode('figure', symbolKey(sheet, hand, top), `Symbol: ${symbolOrder.join(', ')}`),
      ]),
    ];
  });
  return groupNode('head-row', [cell(sheet.width / 2, 'Line', 'middle'), ...sides]);
}

function symbolKey(sheet: Sheet, hand: Hand, top: number): readonly SceneNode[] {
  return symbolOrder.map((symbol, index) =>
    symbolShape(symbol, columnsOf(sheet, hand).symbolAt(index), top - 9.5, 3.2, {
      stroke: { ink: 'soft', width: 0.6 },
    }),
  );
}

/** The drawing under the texts: rules, the printed symbols, and the line that links those of each hand. */
export function processDrawing(
  sheet: Sheet,
  rows: readonly ProcessRow[],
  tops: readonly number[],
): SceneNode {
  const middles = rows.map((row, index) => (tops[index] ?? 0) + row.height / 2);
  const nodes: SceneNode[] = [];
  rows.forEach((row, index) => {
    const y = (tops[index] ?? 0) + row.height;
    nodes.push(lineNode(sheet.left, y, sheet.right, y, hairline));
  });
  for (const hand of hands) {
    const { symbolAt } = columnsOf(sheet, hand);
    for (const middle of middles) {
      symbolOrder.forEach((symbol, column) => {
        nodes.push(
          symbolShape(symbol, symbolAt(column), middle, symbolRadius, {
            stroke: { ink: 'rule', width: 0.5 },
          }),
        );
      });
    }
    nodes.push(...linkingLine(rows, middles, hand, symbolAt));
  }
  return groupNode('layer', nodes);
}

/** Broken where a hand is not marked. */
function linkingLine(
  rows: readonly ProcessRow[],
  middles: readonly number[],
  hand: Hand,
  symbolAt: (index: number) => number,
): SceneNode[] {
  const nodes: SceneNode[] = [];
  for (let index = 1; index < rows.length; index += 1) {
    const from = rows[index - 1]?.line[hand].symbol;
    const to = rows[index]?.line[hand].symbol;
    if (from === undefined || to === undefined) continue;
    const x = (symbol: typeof from) => symbolAt(symbolOrder.indexOf(symbol));
    nodes.push(lineNode(x(from), middles[index - 1] ?? 0, x(to), middles[index] ?? 0, 0.9, 'ink'));
  }
  return nodes;
}

/** The texts and the chosen symbols of one line. */
export function processTableRow(sheet: Sheet, row: ProcessRow, top: number, unit: TimeUnit): SceneNode {
  const middle = top + row.height / 2;
  const y = middle + baselineDrop;
  const number = textNode(sheet.width / 2, y, String(row.line.number), {
    size: textSize,
    align: 'middle',
    weight: 600,
  });
  return groupNode('row', [
    groupNode('cell', [number]),
    ...hands.flatMap((hand) => handCells(sheet, row, hand, middle, unit)),
  ]);
}

function handCells(sheet: Sheet, row: ProcessRow, hand: Hand, middle: number, unit: TimeUnit): SceneNode[] {
  const columns = columnsOf(sheet, hand);
  const entry = row.line[hand];
  const soft = entry.goesOn || entry.symbol === undefined ? { ink: 'soft' as const } : {};
  const y = middle + baselineDrop;
  const first = y - ((row.words[hand].length - 1) * lineHeight) / 2;
  const words = row.words[hand].map((text, index) =>
    textNode(columns.description, first + index * lineHeight, text, {
      size: textSize,
      align: columns.align,
      ...soft,
    }),
  );
  const time = timeNumber(micros(entry.motion.duration), unit);
  return [
    groupNode('cell', words),
    groupNode(
      'cell',
      entry.goesOn ? [] : [textNode(columns.timeEdge, y, time, { size: textSize, align: 'end', ...soft })],
    ),
    symbolCell(columns, entry, middle),
  ];
}

/** The symbol filled where a motion begins, open where it goes on. */
function symbolCell(columns: ReturnType<typeof columnsOf>, entry: ProcessEntry, middle: number): SceneNode {
  const { symbol, goesOn } = entry;
  if (symbol === undefined) return groupNode('cell', []);
  const shape = symbolShape(symbol, columns.symbolAt(symbolOrder.indexOf(symbol)), middle, symbolRadius, {
    fill: { ink: goesOn ? 'paper' : 'ink' },
    stroke: { ink: 'ink', width: 0.9 },
  });
  return groupNode('cell', [groupNode('figure', [shape], symbol)]);
}
