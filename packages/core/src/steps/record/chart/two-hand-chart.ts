import {
  groupNode,
  type PaperName,
  type Scene,
  type SceneNode,
  textBox,
  textNode,
  textsOf,
  wrapText,
} from '../../../ground/scene/index.ts';
import { type GroupingId, groupings, motionFactsOf, sources } from '../../../ground/tables/index.ts';
import { countText, percentText, type TimeUnit, timeText } from '../../../ground/units/index.ts';
import type { ChartFacts } from './facts.ts';
import { columnHeadHeight, type HandColumns, handColumn, handHead, labelled } from './hand-column.ts';
import { type ChartPage, chooseScale, type LabelledMotion } from './pages.ts';
import { type ChartScale, roundScales, scaleText } from './scale.ts';
import {
  runningHead,
  runningHeadHeight,
  type Sheet,
  sheetNumber,
  sheetOf,
  titleBlock,
  titleBlockHeight,
} from './sheet.ts';
import { timeScale } from './time-scale.ts';
import { groupTimes, kindTotals } from './totals.ts';
import { totalsHeight, totalsTable, totalsWidth } from './totals-table.ts';

export interface TwoHandChartLook {
  readonly paper: PaperName;
  readonly unit: TimeUnit;
  readonly grouping: GroupingId;
}

const title = 'Simultaneous-motion chart';
const scaleWidth = 34;
const footGap = 22;
/** Points a motion may take on average: a chart of four motions does not need a whole sheet. */
const longestMean = 70;
const shortestMean = 2;

/**
 * The simultaneous-motion chart, one scene a sheet: time runs down the middle, to one round scale for both hands on
 * every sheet; from there outwards each hand has its bars, letter codes, times and descriptions. Totals, the key to
 * the colours and the share of effective motions after the named author stand at the foot of the last sheet.
 */
export function twoHandChart(facts: ChartFacts, look: TwoHandChartLook): readonly Scene[] {
  const sheet = sheetOf(look.paper);
  const columns = handColumns(sheet);
  const rows = columns.map((column) => labelled(column, facts[column.hand]));
  const room = sheet.bottom - sheet.top - columnHeadHeight - 6;
  const foot = Math.max(totalsHeight(facts), notesHeight(facts, look, sheet)) + footGap;
  const motions = Math.max(facts.left.length, facts.right.length, 1);
  const mean = facts.duration / motions;
  const { scale, pages } = chooseScale(
    rows,
    facts.duration,
    roundScales(look.unit, longestMean / mean, shortestMean / mean),
    { first: room - titleBlockHeight, later: room - runningHeadHeight, foot },
  );
  const words = describe(facts, look);
  return pages.map((page, index): Scene => {
    const head = index === 0 ? titleBlockHeight : runningHeadHeight;
    const top = sheet.top + head + columnHeadHeight;
    const body = chartBody(columns, rows, page, scale, top);
    return {
      width: sheet.width,
      height: sheet.height,
      title: `${title}: ${facts.header.operation}`,
      description: `Sheet ${index + 1} of ${pages.length}. ${words}`,
      nodes: [
        ...(index === 0
          ? titleBlock(sheet, title, facts, timeText(facts.duration, look.unit))
          : runningHead(sheet, title, facts)),
        ...body,
        ...(page.last ? chartFoot(sheet, facts, look, scale, lowest(body, top) + footGap) : []),
        sheetNumber(sheet, index + 1, pages.length),
      ],
    };
  });
}

function handColumns(sheet: Sheet): readonly [HandColumns, HandColumns] {
  const middle = sheet.width / 2;
  return [
    { hand: 'left', outward: -1, inner: middle - scaleWidth / 2, outer: sheet.left },
    { hand: 'right', outward: 1, inner: middle + scaleWidth / 2, outer: sheet.right },
  ];
}

function chartBody(
  columns: readonly [HandColumns, HandColumns],
  rows: readonly (readonly LabelledMotion[])[],
  page: ChartPage,
  scale: ChartScale,
  top: number,
): readonly SceneNode[] {
  const [left, right] = columns;
  const unit = groupNode('layer', [
    textNode((left.inner + right.inner) / 2, top - 15, 'Time', { size: 6.3, align: 'middle', ink: 'soft' }),
  ]);
  return [
    unit,
    timeScale({ left: left.inner, right: right.inner, top }, page, scale),
    ...columns.flatMap((column, index) => [
      ...handHead(column, top),
      ...handColumn(column, rows[index] ?? [], page, scale, top),
    ]),
  ];
}

/** The lowest point of a drawing, at least `least`. */
function lowest(nodes: readonly SceneNode[], least: number): number {
  const bottoms = (list: readonly SceneNode[]): number[] =>
    list.flatMap((node) => {
      if (node.kind === 'group') return bottoms(node.nodes);
      return node.kind === 'rect' ? [node.y + node.height] : [];
    });
  const texts = textsOf(nodes).map((text) => textBox(text).bottom);
  return [...bottoms(nodes), ...texts].reduce((most, value) => Math.max(most, value), least);
}

const noteSize = 6.8;
const noteLine = 8.8;
const noteGap = 4;

function notesWidth(sheet: Sheet): number {
  return sheet.right - sheet.left - totalsWidth - 20;
}

/** What a reader must know to read the figures, paragraph by paragraph. */
function noteTexts(facts: ChartFacts, look: TwoHandChartLook, scale: string): readonly string[] {
  const grouping = groupings[look.grouping];
  const cut = [...facts.left, ...facts.right].some((motion) => motion.cutStart || motion.cutEnd);
  return [
    `${scale}.`,
    `Effective and ineffective: shares of the marked time of the hand, grouped after ${sources[grouping.source].reference}.`,
    grouping.note,
    ...(cut ? ['A bar with a broken end goes on beyond the cycle; only the part inside is counted.'] : []),
    ...facts.notes.map((note) => note.message),
    ...(facts.demo ? ['Invented data, for trying the program.'] : []),
  ];
}

function notesHeight(facts: ChartFacts, look: TwoHandChartLook, sheet: Sheet): number {
  const paragraphs = noteTexts(facts, look, 'Scale: 2.5 mm to 1 wink').map(
    (text) => wrapText(text, notesWidth(sheet), noteSize, 400).length * noteLine + noteGap,
  );
  return paragraphs.reduce((sum, height) => sum + height, 4);
}

function chartFoot(
  sheet: Sheet,
  facts: ChartFacts,
  look: TwoHandChartLook,
  scale: ChartScale,
  top: number,
): readonly SceneNode[] {
  const x = sheet.left + totalsWidth + 20;
  let y = top + 7;
  const notes = noteTexts(facts, look, scaleText(scale)).map((text) => {
    const lines = wrapText(text, notesWidth(sheet), noteSize, 400).map((line, index) =>
      textNode(x, y + index * noteLine, line, { size: noteSize, ink: 'soft' }),
    );
    y += lines.length * noteLine + noteGap;
    return groupNode('note', lines);
  });
  return [...totalsTable(facts, look.unit, look.grouping, sheet.left, top), ...notes];
}

/** The chart in words, for those who cannot see it. */
function describe(facts: ChartFacts, look: TwoHandChartLook): string {
  const hand = (name: 'left' | 'right') => countText(facts[name].length, 'motion');
  const most = [...kindTotals(facts)].sort(
    (a, b) => b.left.time + b.right.time - (a.left.time + a.right.time) || (a.kind < b.kind ? -1 : 1),
  )[0];
  const shares = groupTimes(facts, look.grouping);
  const share = (name: 'left' | 'right') => {
    const part = shares[name].effectiveShare;
    return part === undefined ? 'nothing marked' : percentText(part);
  };
  return [
    `${facts.header.operation}, ${facts.header.method}, ${facts.header.span}.`,
    `The left hand makes ${hand('left')}, the right hand ${hand('right')}, in ${timeText(facts.duration, look.unit)}.`,
    most === undefined ? '' : `Most time goes to ${motionFactsOf(most.kind).name}.`,
    `Effective after ${groupings[look.grouping].name}: left hand ${share('left')}, right hand ${share('right')}.`,
    facts.demo ? 'The data are invented.' : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
