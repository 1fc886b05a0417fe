import { shortNumber } from '../../../ground/findings/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import { countText, percentText } from '../../../ground/units/index.ts';
import { placeScene } from '../../evaluate/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';
import { conventionSentences, sheetFaultWords } from './rest-words.ts';
import { runChart } from './run-chart.ts';
import { type RunFacts, runOf } from './run-facts.ts';
import type { Part } from './sheet-flow.ts';
import { shownNumber, timeCell, timeWords } from './sheet-numbers.ts';
import type { TablePlace } from './text-table.ts';

const height = 132;
const share = 0.47;

/** What the study comes to, beside the run of the whole cycle: what a reader looks for first. */
export function resultPart(sheet: TimeStudySheet, place: TablePlace): Part {
  const split = place.left + (place.right - place.left) * share;
  const room = { left: place.left, right: split - 16 };
  const { run, title } = runToShow(sheet);
  const chart = runChart(run, { width: place.right - split, height: height - 13, size: 6.6 });
  return {
    title: '',
    titleAt: 'above',
    role: 'figure',
    label: 'The standard and the run chart',
    strips: [
      {
        height,
        nodes: (top) => [
          groupNode(
            'note',
            sheet.standard === undefined ? noStandard(sheet, room, top) : standardNodes(sheet, room, top),
            'The standard',
          ),
          {
            ...groupNode('heading', [
              textNode(split, top + 7, fitText(title, place.right - split, 7.5, 600), {
                size: 7.5,
                weight: 600,
              }),
            ]),
            level: 2,
          },
          groupNode('figure', placeScene(chart, split, top + 13), chart.title),
        ],
        layer: (top) => [lineNode(split - 8, top, split - 8, top + height, 0.35)],
      },
    ],
  };
}

/** The whole cycle; where no cycle has all of its elements, the element that takes the most time. */
function runToShow(sheet: TimeStudySheet): { readonly run: RunFacts; readonly title: string } {
  const whole = runOf(sheet);
  const [most] = [...sheet.rows].sort((a, b) => (b.summary?.sum ?? 0) - (a.summary?.sum ?? 0));
  if (whole.mean !== undefined || most?.summary === undefined) {
    return { run: whole, title: 'Run of the whole cycle' };
  }
  const { id, name } = most.element;
  return { run: runOf(sheet, id), title: `Run of “${name}”: no cycle has all elements` };
}

interface Line {
  readonly words: string;
  readonly size: number;
  readonly weight?: 400 | 600;
  readonly most?: number;
  readonly soft?: boolean;
  /** Room above it. */
  readonly above?: number;
}

function lines(list: readonly Line[], { left, right }: TablePlace, top: number): SceneNode[] {
  let y = top;
  return list.flatMap(({ words, size, weight = 400, most = 3, soft, above = 0 }) => {
    y += above;
    const found = wrapText(words, right - left, size, weight, most).map((text) => {
      y += size * 1.24;
      return textNode(left, y - size * 0.24, text, {
        size,
        weight,
        ...(soft === true ? { ink: 'soft' as const } : {}),
      });
    });
    return found;
  });
}

function standardNodes(sheet: TimeStudySheet, place: TablePlace, top: number): SceneNode[] {
  const { standard, unit, timeStudy } = sheet;
  if (standard === undefined) return [];
  const { interval, piecesPerHour } = standard;
  const cycle = standard.standard.standard;
  const pieces = timeStudy.piecesPerCycle;
  const half = interval === undefined ? 0 : (interval.interval.high - interval.interval.low) / 2;
  const sure =
    interval === undefined
      ? 'No interval: an element with a single reading says nothing about its spread.'
      : `${percentText(timeStudy.confidence, 0)} interval ${timeCell(interval.interval.low, unit)} to ${timeWords(interval.interval.high, unit)} (± ${percentText(half / cycle)})`;
  return lines(
    [
      {
        words: `Standard time of a cycle${pieces === 1 ? ', one piece' : ''}`,
        size: 7.5,
        weight: 600,
        most: 1,
      },
      {
        words: timeWords(cycle, unit),
        size: largestThatFits(timeWords(cycle, unit), place),
        weight: 600,
        most: 1,
      },
      { words: sure, size: 8, most: 2 },
      ...(pieces === 1
        ? []
        : [
            {
              words: `${timeWords(cycle / pieces, unit, 1)} a piece, ${shortNumber(pieces)} a cycle`,
              size: 8,
              most: 1,
            },
          ]),
      {
        words: `${shownNumber(piecesPerHour.rate, 1)} pieces an hour (${countText(piecesPerHour.whole, 'whole one')})`,
        size: 10,
        weight: 600,
        most: 1,
        above: 2,
      },
      { words: conventionSentences(sheet), size: 6.8, most: 5, above: 3 },
    ],
    place,
    top,
  );
}

function largestThatFits(words: string, { left, right }: TablePlace): number {
  return Math.min(22, (22 * (right - left)) / textWidth(words, 22, 600));
}

const faultSize = 6.8;
const faultLines = 9;

function noStandard(sheet: TimeStudySheet, place: TablePlace, top: number): SceneNode[] {
  const faults = sheetFaultWords(sheet).map((words) => `– ${words}`);
  let room = faultLines;
  // Those that can be said in full; the whole list stands further down.
  const said = faults.filter((words) => {
    const needed = wrapText(words, place.right - place.left, faultSize, 400).length;
    const fits = needed <= room;
    room = fits ? room - needed : 0;
    return fits;
  });
  const first = said.length === 1 ? 'the first' : `the first ${said.length}`;
  const more =
    said.length === faults.length
      ? ''
      : said.length === 0
        ? `, ${faults.length} in all, is listed below`
        : `, ${first} of ${faults.length}; all are listed below`;
  return lines(
    [
      { words: 'Standard time', size: 7.5, weight: 600, most: 1 },
      { words: 'none yet', size: 22, weight: 600, most: 1 },
      { words: `What stands in its way${more}${said.length === 0 ? '.' : ':'}`, size: 7.5, most: 2 },
      ...said.map((words) => ({ words, size: faultSize, most: faultLines, above: 1 })),
    ],
    place,
    top,
  );
}
