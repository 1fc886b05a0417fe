import { micros } from '../../../ground/base/index.ts';
import {
  groupNode,
  lineNode,
  type PathNode,
  type RectNode,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { type TimeUnit, timeNumber, timeUnits } from '../../../ground/units/index.ts';
import type { ChartMotion } from './facts.ts';
import { spreadLabels } from './labels.ts';
import { type ChartPage, type LabelledMotion, motionsOn } from './pages.ts';
import type { ChartScale } from './scale.ts';
import { hairline, thinLine } from './sheet.ts';

/** Widths of the columns of one hand in points, from the middle of the sheet outwards. */
export interface HandColumns {
  readonly hand: Hand;
  /** +1 when the columns go to the right, −1 to the left. */
  readonly outward: 1 | -1;
  /** Edge of the time scale, where the bars begin. */
  readonly inner: number;
  /** Far edge of the description. */
  readonly outer: number;
}

export const barWidth = 19;
const leaderWidth = 15;
const codeWidth = 21;
const timeWidth = 29;
const columnGap = 8;

export const textSize = 7.4;
export const lineHeight = 8.6;
const labelGap = 2.6;
export const mostLines = 3;

/** Baseline below the middle of a line: half the height of a capital (0.698 of the size). */
export const baselineDrop = 0.349 * textSize;

function columnsX({ outward, inner }: HandColumns) {
  const barOuter = inner + outward * barWidth;
  const code = barOuter + outward * leaderWidth;
  const time = code + outward * (codeWidth + timeWidth);
  return { barOuter, code, time, description: time + outward * columnGap };
}

function descriptionRoom(columns: HandColumns): number {
  return Math.abs(columns.outer - columnsX(columns).description);
}

/** The description with what the reader must know about its edges. */
export function wordsOf(motion: ChartMotion, continued: boolean): string {
  if (continued) return `${motion.description} (continued)`;
  const cut = [motion.cutStart ? 'began before' : '', motion.cutEnd ? 'goes on after' : ''].filter(
    (word) => word !== '',
  );
  return cut.length === 0 ? motion.description : `${motion.description} (${cut.join(', ')})`;
}

/** Shares of the column tried for the lines of one description, so that the last line is not a lonely word. */
const narrower = [0.6, 0.68, 0.76, 0.84, 0.92];

function linesOf(columns: HandColumns, motion: ChartMotion, continued: boolean): readonly string[] {
  return balancedLines(wordsOf(motion, continued), descriptionRoom(columns), mostLines);
}

/** A text in as few lines as fit into `room`, of about equal length. */
export function balancedLines(text: string, room: number, most: number): readonly string[] {
  if (!/\s{2}/.test(text) && textWidth(text, textSize, 400) <= room) return [text];
  const lines = wrapText(text, room, textSize, 400, most);
  if (lines.length <= 1 || lines.at(-1)?.endsWith('…')) return lines;
  for (const share of narrower) {
    const even = wrapText(text, room * share, textSize, 400);
    if (even.length === lines.length) return even;
  }
  return lines;
}

/** Motions with the height their labels need, wherever a sheet may break. */
export function labelled(columns: HandColumns, motions: readonly ChartMotion[]): readonly LabelledMotion[] {
  return motions.map((motion) => {
    const lines = Math.max(linesOf(columns, motion, false).length, linesOf(columns, motion, true).length);
    return { motion, height: lines * lineHeight + labelGap };
  });
}

/** Bars, leaders and the table of one hand on one sheet. */
export function handColumn(
  columns: HandColumns,
  row: readonly LabelledMotion[],
  page: ChartPage,
  scale: ChartScale,
  top: number,
): readonly SceneNode[] {
  const shown = motionsOn(row, page);
  const y = (time: number) => top + (time - page.from) * scale.pointsPerMicro;
  const middles = shown.map(
    ({ motion }) => (y(Math.max(page.from, motion.start)) + y(Math.min(page.to, motion.end))) / 2,
  );
  const half = (height: number) => (height - lineHeight) / 2;
  const places = spreadLabels(
    shown.map(({ height }, index) => ({ ideal: (middles[index] ?? top) + half(height), height })),
    top - lineHeight / 2,
    top + page.room,
  );
  const first = places.map((place, index) => place - half(shown[index]?.height ?? lineHeight));
  return [
    groupNode(
      'layer',
      shown.flatMap(({ motion }) => bar(columns, motion, page, scale, y)),
    ),
    groupNode(
      'layer',
      first.map((label, index) => leader(columns, middles[index] ?? label, label)),
    ),
    groupNode(
      'table',
      [
        headRow(columns, top, scale.unit),
        ...shown.map(({ motion }, index) =>
          labelRow(columns, motion, first[index] ?? top, scale.unit, motion.start < page.from),
        ),
      ],
      columns.hand === 'left' ? 'Left hand' : 'Right hand',
    ),
  ];
}

function bar(
  columns: HandColumns,
  motion: ChartMotion,
  page: ChartPage,
  scale: ChartScale,
  y: (time: number) => number,
): SceneNode[] {
  const from = y(Math.max(page.from, motion.start));
  const to = y(Math.min(page.to, motion.end));
  const { barOuter } = columnsX(columns);
  const left = Math.min(columns.inner, barOuter);
  const facts = motionFactsOf(motion.kind);
  const open = motion.kind === 'unmarked';
  const rect: RectNode = {
    kind: 'rect',
    x: left,
    y: from,
    width: barWidth,
    height: (Math.min(page.to, motion.end) - Math.max(page.from, motion.start)) * scale.pointsPerMicro,
    fill: open ? { ink: 'paper' } : { ink: { colour: facts.colour }, pattern: facts.pattern },
    stroke: open ? { ink: 'faint', width: hairline, dash: [2, 1.5] } : { ink: 'ink', width: hairline },
  };
  const torn: SceneNode[] = [];
  if (motion.cutStart && motion.start >= page.from) torn.push(tornEdge(left, from));
  if (motion.cutEnd && motion.end <= page.to) torn.push(tornEdge(left, to));
  return [rect, ...torn];
}

/** The mark of a bar that goes on beyond the chart: a broken line across its end. */
function tornEdge(left: number, y: number): PathNode {
  const teeth = 6;
  const step = (barWidth + 3) / teeth;
  const points = Array.from({ length: teeth + 1 }, (_, index) => {
    const x = (left - 1.5 + index * step).toFixed(2);
    return `${index === 0 ? 'M' : 'L'} ${x} ${(y + (index % 2 === 0 ? 1.1 : -1.1)).toFixed(2)}`;
  });
  return { kind: 'path', d: points.join(' '), stroke: { ink: 'ink', width: thinLine } };
}

/** From the middle of the bar to the middle of its label's first line; straight when the label stands beside its bar. */
function leader(columns: HandColumns, from: number, to: number): PathNode {
  const { barOuter } = columnsX(columns);
  const at = (distance: number, y: number) =>
    `${(barOuter + columns.outward * distance).toFixed(2)} ${y.toFixed(2)}`;
  const d = `M ${at(0, from)} L ${at(2.5, from)} L ${at(leaderWidth - 4.5, to)} L ${at(leaderWidth - 2, to)}`;
  return { kind: 'path', d, stroke: { ink: 'soft', width: hairline } };
}

function labelRow(
  columns: HandColumns,
  motion: ChartMotion,
  middle: number,
  unit: TimeUnit,
  continued: boolean,
): SceneNode {
  const x = columnsX(columns);
  const y = middle + baselineDrop;
  const outwards = columns.outward === 1 ? 'start' : 'end';
  const number = columns.outward === 1 ? x.time : x.code - codeWidth;
  const soft = continued || motion.kind === 'unmarked' ? { ink: 'soft' as const } : {};
  const cell = (nodes: readonly SceneNode[]) => groupNode('cell', nodes);
  const look = { size: textSize, ...soft };
  return groupNode('row', [
    cell([textNode(x.code, y, motionFactsOf(motion.kind).code, { ...look, weight: 600, align: outwards })]),
    cell(
      continued
        ? []
        : [textNode(number, y, timeNumber(micros(motion.duration), unit), { ...look, align: 'end' })],
    ),
    cell(
      linesOf(columns, motion, continued).map((line, index) =>
        textNode(x.description, y + index * lineHeight, line, { ...look, align: outwards }),
      ),
    ),
  ]);
}

export const columnHeadHeight = 46;

function headRow(columns: HandColumns, top: number, unit: TimeUnit): SceneNode {
  const x = columnsX(columns);
  const y = top - 15;
  const outwards = columns.outward === 1 ? 'start' : 'end';
  const number = columns.outward === 1 ? x.time : x.code - codeWidth;
  const look = { size: 6.3, ink: 'soft' as const };
  const cell = (at: number, text: string, align: 'start' | 'end') =>
    groupNode('cell', [textNode(at, y, text, { ...look, align })]);
  return groupNode('head-row', [
    cell(x.code, 'Code', outwards),
    cell(number, timeUnits[unit].symbol, 'end'),
    cell(x.description, 'Description', outwards),
  ]);
}

/** The name of the hand over its columns, and the rule under the heads. */
export function handHead(columns: HandColumns, top: number): readonly SceneNode[] {
  const { inner, outer, outward } = columns;
  const align = outward === 1 ? 'start' : 'end';
  const name = columns.hand === 'left' ? 'Left hand' : 'Right hand';
  const y = top - 10.5;
  return [
    groupNode('layer', [lineNode(inner, y, outer, y, thinLine, 'ink')]),
    {
      ...groupNode('heading', [textNode(inner, top - 27, name, { size: 9, weight: 600, align })]),
      level: 2,
    },
  ];
}
