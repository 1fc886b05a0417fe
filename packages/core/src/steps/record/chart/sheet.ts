import {
  fitText,
  groupNode,
  lineNode,
  type PaperName,
  papers,
  type SceneNode,
  textNode,
} from '../../../ground/scene/index.ts';
import type { ChartFacts } from './facts.ts';

/** The frame of a drawing sheet: its edges in points, and what is said at its head and foot. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function sheetOf(paper: PaperName): Sheet {
  const { width, height } = papers[paper];
  return { width, height, left: 36, right: width - 36, top: 34, bottom: height - 40 };
}

export const hairline = 0.35;
export const thinLine = 0.6;
export const boldLine = 1.1;

interface Field {
  readonly caption: string;
  readonly value: string;
  readonly columns: number;
}

const blockColumns = 12;
const fieldHeight = 25;
const titleHeight = 26;
export const titleBlockHeight = titleHeight + 3 * fieldHeight;

function fieldRows({ header }: ChartFacts, time: string): readonly (readonly Field[])[] {
  const field = (caption: string, value: string | undefined, columns: number): Field => ({
    caption,
    value: value ?? '',
    columns,
  });
  return [
    [
      field('Operation', header.operation, 6),
      field('Part', header.part, 4),
      field('Operation no.', header.number, 2),
    ],
    [
      field('Method', header.method, 6),
      field('Film', header.film, 4),
      field('Department', header.department, 2),
    ],
    [
      field('Charted by', header.analyst, 2),
      field('Operator', header.operatorCode, 2),
      field('Date', header.date, 2),
      field('Charted', `${header.span}, ${header.reading}`, 4),
      field('Cycle time', time, 2),
    ],
  ];
}

/**
 * The title and the block of fields at the head of the first sheet.
 * @param time the cycle time with its unit
 */
export function titleBlock(
  sheet: Sheet,
  title: string,
  facts: ChartFacts,
  time: string,
): readonly SceneNode[] {
  const { left, right, top } = sheet;
  const rows = fieldRows(facts, time);
  const block = top + titleHeight;
  const rules = [0, 1, 2, 3].map((row) => {
    const y = block + row * fieldHeight;
    return lineNode(left, y, right, y, row === 0 ? boldLine : hairline, row === 0 ? 'ink' : 'rule');
  });
  return [
    groupNode('heading', [textNode(left, top + 14, title, { size: 16, weight: 600 })]),
    ...inventedNote(sheet, facts, top + 14),
    groupNode('layer', [...rules, ...rows.flatMap((fields, row) => fieldRules(sheet, fields, block, row))]),
    groupNode(
      'table',
      rows.flatMap((fields, row) => fieldCells(sheet, fields, block + row * fieldHeight)),
      'Title block',
    ),
  ];
}

function fieldRules(sheet: Sheet, fields: readonly Field[], block: number, row: number): SceneNode[] {
  const unit = (sheet.right - sheet.left) / blockColumns;
  const y = block + row * fieldHeight;
  let at = 0;
  return fields.slice(0, -1).map((field) => {
    at += field.columns;
    const x = sheet.left + at * unit;
    return lineNode(x, y, x, y + fieldHeight, hairline);
  });
}

function fieldCells(sheet: Sheet, fields: readonly Field[], y: number): SceneNode[] {
  const unit = (sheet.right - sheet.left) / blockColumns;
  let at = 0;
  return fields.map((field) => {
    const x = sheet.left + at * unit + (at === 0 ? 0 : 6);
    const room = field.columns * unit - (at === 0 ? 6 : 12);
    at += field.columns;
    const value = fitText(field.value, room, 8.5, 400);
    return groupNode('row', [
      groupNode('cell', [
        textNode(x, y + 8.5, fitText(field.caption, room, 6, 400), { size: 6, ink: 'soft' }),
      ]),
      groupNode('cell', value === '' ? [] : [textNode(x, y + 19.5, value, { size: 8.5 })]),
    ]);
  });
}

export const runningHeadHeight = 24;

/** One line at the head of every further sheet. */
export function runningHead(sheet: Sheet, title: string, facts: ChartFacts): readonly SceneNode[] {
  const { left, right, top } = sheet;
  const { operation, method, span } = facts.header;
  const head = `${title}, continued`;
  const words = [operation, method, span].filter((word) => word !== '').join(' · ');
  const room = right - left - 290;
  return [
    groupNode('heading', [textNode(left, top + 11, head, { size: 10, weight: 600 })]),
    groupNode('note', [
      textNode(right, top + 11, fitText(words, room, 8, 400), { size: 8, align: 'end', ink: 'soft' }),
    ]),
    ...inventedNote({ ...sheet, right: left + 280 }, facts, top + 11),
    groupNode('layer', [lineNode(left, top + 18, right, top + 18, boldLine, 'ink')]),
  ];
}

function inventedNote(sheet: Sheet, facts: ChartFacts, y: number): readonly SceneNode[] {
  if (!facts.demo) return [];
  return [
    groupNode('note', [
      textNode(sheet.right, y, 'Invented data', { size: 8, weight: 600, align: 'end', ink: 'warn' }),
    ]),
  ];
}

/** "Sheet 1 of 3" under the drawing. */
export function sheetNumber(sheet: Sheet, page: number, pages: number): SceneNode {
  const text = `Sheet ${page} of ${pages}`;
  return groupNode('note', [
    textNode(sheet.right, sheet.height - 24, text, { size: 6.5, align: 'end', ink: 'soft' }),
  ]);
}
