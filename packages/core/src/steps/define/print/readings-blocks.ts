import {
  fitText,
  groupNode,
  lineNode,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import type { SheetRow, TimeStudySheet } from '../sheet/index.ts';
import {
  bracketWidth,
  type ReadingsPlan,
  readingSizes,
  readingsPlan,
  type Written,
} from './readings-plan.ts';
import type { Part, Strip } from './sheet-flow.ts';
import type { SheetMarks } from './sheet-marks.ts';
import type { TablePlace } from './text-table.ts';

const { time: size, small, mark: markSize } = readingSizes;
const nameWidth = 112;
const nameFrom = 14;
const widestColumn = 44;
/** A block of more elements may go on over sheets. */
const mostTogether = 16;

/** All readings, elements down and cycles across, in as many blocks as the width asks for. Each reading stands in one of them. */
export function readingsBlocks(sheet: TimeStudySheet, marks: SheetMarks, place: TablePlace): readonly Part[] {
  if (sheet.cycles.length === 0) return [];
  const plan = readingsPlan(sheet, marks, place);
  const most = Math.max(1, Math.floor((place.right - place.left - nameWidth) / plan.column));
  const count = sheet.cycles.length;
  const per = perBlock(count, most);
  const wide = Math.max(plan.column, Math.min(widestColumn, (place.right - place.left - nameWidth) / per));
  const blocks: Part[] = [];
  for (let from = 0; from < count; from += per) {
    blocks.push(block({ ...plan, column: wide }, sheet.cycles.slice(from, from + per)));
  }
  return blocks;
}

/** Fives are easily found, but not at the price of a further block; otherwise the blocks are as even as they can be. */
function perBlock(count: number, most: number): number {
  if (count <= most) return count;
  const blocks = Math.ceil(count / most);
  const fives = most - (most % 5);
  return fives > 0 && Math.ceil(count / fives) === blocks ? fives : Math.ceil(count / blocks);
}

function block(plan: ReadingsPlan, cycles: readonly number[]): Part {
  const { rows, unit } = plan.sheet;
  const [first, last] = [cycles[0] ?? 0, cycles.at(-1) ?? 0];
  const span = first === last ? `cycle ${first}` : `cycles ${first}–${last}`;
  return {
    title: `Readings in ${timeUnits[unit].name}, ${span}`,
    titleAt: 'above',
    role: 'table',
    label: `Readings, ${span}`,
    head: headStrip(plan, cycles),
    strips: [
      ...rows.map((row, index) => rowStrip(plan, cycles, row, index)),
      ...(plan.whole.size === 0 ? [] : [wholeStrip(plan, cycles)]),
    ],
    together: rows.length <= mostTogether,
    closing: 0.5,
  };
}

/** The right edge of the numbers of a column. */
function edge({ left, column, behind }: ReadingsPlan, index: number): number {
  return left + nameWidth + (index + 1) * column - behind;
}

function headStrip(plan: ReadingsPlan, cycles: readonly number[]): Strip {
  const { left, right, bands, marks } = plan;
  const sittings = bands.some(({ code }) => code !== '') ? 8.5 : 0;
  const height = 11 + sittings;
  const base = (top: number) => top + sittings + 8;
  return {
    height,
    nodes: (top) => [
      groupNode('head-row', [
        groupNode('cell', [textNode(left + nameFrom, base(top), 'Element', { size: small, ink: 'soft' })]),
        ...cycles.map((cycle, index) =>
          groupNode('cell', [
            textNode(edge(plan, index), base(top), String(cycle), { size: small, align: 'end', ink: 'soft' }),
            ...markNodes(edge(plan, index), base(top), marks.ofCycle(cycle)),
          ]),
        ),
      ]),
    ],
    layer: (top) => [
      lineNode(left, top, right, top, 0.9, 'ink'),
      lineNode(left, top + height - 0.5, right, top + height - 0.5, 0.5, 'ink'),
      ...columnRules(plan, cycles, top, height),
      ...(sittings === 0 ? [] : sittingNodes(plan, cycles, top + 7)),
    ],
  };
}

/** The code of the operator over the first cycle of each sitting in the block. */
function sittingNodes(plan: ReadingsPlan, cycles: readonly number[], y: number): SceneNode[] {
  const { left, column, bands } = plan;
  return bands.flatMap(({ from, to, code }): SceneNode[] => {
    const start = cycles.findIndex((cycle) => cycle >= from && cycle <= to);
    if (start < 0 || code === '') return [];
    const within = cycles.filter((cycle) => cycle >= from && cycle <= to).length;
    const text = fitText(`operator ${code}`, within * column - 5, small, 400);
    const short = text.endsWith('…') ? fitText(code, within * column - 5, small, 400) : text;
    return short === '' || short === '…'
      ? []
      : [textNode(left + nameWidth + start * column + 3, y, short, { size: small, ink: 'soft' })];
  });
}

/** A fine rule behind cycles 5, 10 and so on, a stronger one where a sitting begins. */
function columnRules(
  plan: ReadingsPlan,
  cycles: readonly number[],
  top: number,
  height: number,
): SceneNode[] {
  const { left, column, bands } = plan;
  const starts = new Set(bands.slice(1).map(({ from }) => from));
  return cycles.flatMap((cycle, index): SceneNode[] => {
    if (index === 0) return [];
    const x = left + nameWidth + index * column;
    if (starts.has(cycle)) return [lineNode(x, top, x, top + height, 0.8, 'ink')];
    return cycle % 5 === 1 ? [lineNode(x, top, x, top + height, 0.3, 'rule')] : [];
  });
}

function markNodes(from: number, base: number, mark: string): SceneNode[] {
  return mark === '' ? [] : [textNode(from + 0.5, base - 2.4, mark, { size: markSize })];
}

function rowStrip(plan: ReadingsPlan, cycles: readonly number[], { element }: SheetRow, row: number): Strip {
  const { left, right } = plan;
  const readings = plan.written[row];
  const rated = cycles.some((cycle) => (readings?.get(cycle)?.rating ?? '') !== '');
  const height = rated ? 17 : 10.6;
  const room = nameWidth - nameFrom - 4;
  const whole = textWidth(element.name, size, 400) <= room;
  // The line of the ratings leaves room for a second line of the name.
  const names =
    rated && !whole
      ? wrapText(element.name, room, small, 400, 2)
      : [fitText(element.name, room, size, 400)].filter((text) => text !== '');
  const nameSize = rated && !whole ? small : size;
  return {
    height,
    nodes: (top) => {
      const base = top + 7.8;
      return [
        groupNode('row', [
          groupNode('cell', [
            textNode(left + nameFrom - 4, base, String(row + 1), { size, align: 'end', ink: 'soft' }),
            ...names.map((text, at) => textNode(left + nameFrom, base + at * 6.9, text, { size: nameSize })),
          ]),
          ...cycles.map((cycle, index) =>
            groupNode('cell', cellNodes(plan, index, base, readings?.get(cycle))),
          ),
        ]),
      ];
    },
    layer: (top) => [
      lineNode(left, top, right, top, 0.25, 'rule'),
      ...columnRules(plan, cycles, top, height),
    ],
  };
}

function cellNodes(plan: ReadingsPlan, index: number, base: number, cell: Written | undefined): SceneNode[] {
  if (cell === undefined) return [];
  const at = edge(plan, index);
  const end = cell.aside ? at + bracketWidth : at;
  return [
    textNode(end, base, cell.text, { size, align: 'end' }),
    ...markNodes(end, base, cell.mark),
    ...(cell.rating === ''
      ? []
      : [textNode(at, base + 6.9, cell.rating, { size: small, align: 'end', ink: 'soft' })]),
  ];
}

function wholeStrip(plan: ReadingsPlan, cycles: readonly number[]): Strip {
  const { left, right, whole } = plan;
  const height = 11;
  return {
    height,
    nodes: (top) => [
      groupNode('row', [
        groupNode('cell', [textNode(left + nameFrom, top + 8, 'Whole cycle', { size, weight: 600 })]),
        ...cycles.map((cycle, index) => {
          const text = whole.get(cycle);
          return groupNode(
            'cell',
            text === undefined
              ? []
              : [textNode(edge(plan, index), top + 8, text, { size, weight: 600, align: 'end' })],
          );
        }),
      ]),
    ],
    layer: (top) => [lineNode(left, top, right, top, 0.5, 'ink'), ...columnRules(plan, cycles, top, height)],
  };
}
