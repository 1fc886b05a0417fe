import { groupNode, type PaperName, type Scene, type SceneNode } from '../../../ground/scene/index.ts';
import { countText, type TimeUnit, timeText } from '../../../ground/units/index.ts';
import type { ChartFacts } from './facts.ts';
import { type ProcessLine, processLines, symbolCounts } from './process-lines.ts';
import {
  type ProcessRow,
  processDrawing,
  processHead,
  processHeadHeight,
  processHeadRow,
  processRow,
  processTableRow,
} from './process-rows.ts';
import { processSummary, summaryHeight } from './process-summary.ts';
import {
  runningHead,
  runningHeadHeight,
  type Sheet,
  sheetNumber,
  sheetOf,
  titleBlock,
  titleBlockHeight,
} from './sheet.ts';

export interface ProcessChartLook {
  readonly paper: PaperName;
  /** Unit of the times; winks when left out. */
  readonly unit?: TimeUnit | undefined;
}

const title = 'Two-handed process chart';
const footGap = 20;

/**
 * The two-handed process chart with the ASME symbols, one scene a sheet: a line for everything that begins, and for each
 * hand its description, time and symbol, linked down the column; the count of each symbol stands at the foot.
 */
export function processChart(facts: ChartFacts, look: ProcessChartLook): readonly Scene[] {
  const sheet = sheetOf(look.paper);
  const unit = look.unit ?? 'winks';
  const lines = processLines(facts);
  const rows = lines.map((line) => processRow(sheet, line));
  const room = sheet.bottom - sheet.top - processHeadHeight;
  const pages = breakRows(rows, {
    first: room - titleBlockHeight,
    later: room - runningHeadHeight,
    foot: summaryHeight(sheet, facts) + footGap,
  });
  const words = describe(facts, lines, unit);
  return pages.map((page, index): Scene => {
    const top = sheet.top + processHeadHeight + (index === 0 ? titleBlockHeight : runningHeadHeight);
    const bottom = page.reduce((y, row) => y + row.height, top);
    return {
      width: sheet.width,
      height: sheet.height,
      title: `${title}: ${facts.header.operation}`,
      description: `Sheet ${index + 1} of ${pages.length}. ${words}`,
      nodes: [
        ...(index === 0
          ? titleBlock(sheet, title, facts, timeText(facts.duration, unit))
          : runningHead(sheet, title, facts)),
        ...(page.length === 0 ? [] : processBody(sheet, page, top, unit)),
        ...(index === pages.length - 1 ? processSummary(sheet, facts, lines, bottom + footGap) : []),
        sheetNumber(sheet, index + 1, pages.length),
      ],
    };
  });
}

function processBody(
  sheet: Sheet,
  page: readonly ProcessRow[],
  top: number,
  unit: TimeUnit,
): readonly SceneNode[] {
  let y = top;
  const tops = page.map((row) => {
    const at = y;
    y += row.height;
    return at;
  });
  return [
    ...processHead(sheet, top),
    processDrawing(sheet, page, tops),
    groupNode(
      'table',
      [
        processHeadRow(sheet, top, unit),
        ...page.map((row, index) => processTableRow(sheet, row, tops[index] ?? top, unit)),
      ],
      'Lines of the chart: left hand, then right hand',
    ),
  ];
}

/** Rows over sheets in order; the last sheet keeps room for the foot, and may hold nothing else. */
function breakRows(
  rows: readonly ProcessRow[],
  room: { readonly first: number; readonly later: number; readonly foot: number },
): readonly (readonly ProcessRow[])[] {
  const pages: ProcessRow[][] = [[]];
  let left = room.first;
  for (const row of rows) {
    if (row.height > left) {
      pages.push([]);
      left = room.later;
    }
    pages.at(-1)?.push(row);
    left -= row.height;
  }
  if (left < room.foot) pages.push([]);
  return pages;
}

/** The chart in words, for those who cannot see it. */
function describe(facts: ChartFacts, lines: readonly ProcessLine[], unit: TimeUnit): string {
  const hand = (name: 'left' | 'right') => {
    const { symbols } = symbolCounts(lines, name);
    return `${countText(symbols.operation, 'operation')}, ${countText(symbols.transport, 'transport')}, ${countText(symbols.hold, 'hold')}, ${countText(symbols.delay, 'delay')} and ${countText(symbols.inspection, 'inspection')}`;
  };
  return [
    `${facts.header.operation}, ${facts.header.method}, ${facts.header.span}.`,
    `${countText(lines.length, 'line')} in ${timeText(facts.duration, unit)}.`,
    `Left hand: ${hand('left')}. Right hand: ${hand('right')}.`,
    ...(facts.demo ? ['The data are invented.'] : []),
  ].join(' ');
}
