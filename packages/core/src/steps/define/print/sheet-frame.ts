import { shortNumber } from '../../../ground/findings/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type PaperName,
  papers,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import { timeUnits } from '../../../ground/units/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';
import {
  analystWords,
  cyclesWords,
  dateWords,
  operatorWords,
  scaleWords,
  sourceWords,
} from './sheet-words.ts';

/** Edges of the printed area, in points. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function frameOf(paper: PaperName): Frame {
  const { width, height } = papers[paper];
  return { width, height, left: 36, right: width - 36, top: 34, bottom: height - 38 };
}

interface Field {
  readonly caption: string;
  readonly value: string;
  readonly columns: number;
}

const blockColumns = 12;
const fieldHeight = 25;
const titleHeight = 25;
const runningHeight = 24;
export const headHeight = titleHeight + 4 * fieldHeight;
export const laterHeadHeight = runningHeight;

function fieldRows(study: Study, sheet: TimeStudySheet): readonly (readonly Field[])[] {
  const { operation } = study;
  const { timeStudy } = sheet;
  const field = (caption: string, value: string | undefined, columns: number): Field => ({
    caption,
    value: value ?? '',
    columns,
  });
  return [
    [
      field('Operation', operation.name || study.title, 6),
      field('Part', operation.part, 4),
      field('Operation no.', operation.number, 2),
    ],
    [
      field('Method', sheet.method?.name, 4),
      field('Department', operation.department, 3),
      field('Analyst', analystWords(study, timeStudy), 2),
      field('Date of study', dateWords(timeStudy), 3),
    ],
    [
      field('Times from', sourceWords(study, sheet), 6),
      field('Operators (codes)', operatorWords(study, sheet), 3),
      field('Cycles', cyclesWords(sheet), 3),
    ],
    [
      field('Study', timeStudy.name, 4),
      field('Rating scale', scaleWords(timeStudy), 4),
      field('Unit of all times', timeUnits[sheet.unit].name, 2),
      field('Pieces a cycle', shortNumber(timeStudy.piecesPerCycle), 2),
    ],
  ];
}

export const sheetTitle = 'Time study sheet';

/** The title and the fields at the head of the first sheet. */
export function firstHead(frame: Frame, study: Study, sheet: TimeStudySheet): readonly SceneNode[] {
  const { left, right, top } = frame;
  const rows = fieldRows(study, sheet);
  const block = top + titleHeight;
  const rules = rows.map((_, row) => {
    const y = block + row * fieldHeight;
    return lineNode(left, y, right, y, row === 0 ? 1.1 : 0.35, row === 0 ? 'ink' : 'rule');
  });
  const end = block + rows.length * fieldHeight;
  return [
    groupNode('heading', [textNode(left, top + 14, sheetTitle, { size: 16, weight: 600 })]),
    ...inventedNote(study, right, top + 14),
    groupNode('layer', [
      ...rules,
      lineNode(left, end, right, end, 1.1, 'ink'),
      ...rows.flatMap((fields, row) => fieldRules(frame, fields, block + row * fieldHeight)),
    ]),
    groupNode(
      'table',
      rows.map((fields, row) => groupNode('row', fieldCells(frame, fields, block + row * fieldHeight))),
      'Heading of the sheet',
    ),
  ];
}

function fieldRules({ left, right }: Frame, fields: readonly Field[], y: number): SceneNode[] {
  const unit = (right - left) / blockColumns;
  let at = 0;
  return fields.slice(0, -1).map((field) => {
    at += field.columns;
    return lineNode(left + at * unit, y, left + at * unit, y + fieldHeight, 0.35);
  });
}

function fieldCells({ left, right }: Frame, fields: readonly Field[], y: number): SceneNode[] {
  const unit = (right - left) / blockColumns;
  let at = 0;
  return fields.map(({ caption, value, columns }) => {
    const x = left + at * unit + (at === 0 ? 0 : 6);
    const room = columns * unit - (at === 0 ? 6 : 12);
    at += columns;
    return groupNode('cell', [
      textNode(x, y + 8, caption, { size: 6, ink: 'soft' }),
      ...fieldValue(value, x, y, room),
    ]);
  });
}

/** As large as it fits, on two lines before anything is cut. */
function fieldValue(value: string, x: number, y: number, room: number): SceneNode[] {
  if (value.trim() === '') return [];
  const size = [8.5, 7.6, 6.8].find((each) => textWidth(value, each, 400) <= room);
  if (size !== undefined) return [textNode(x, y + 19.5, value, { size })];
  const lines = wrapText(value, room, 6, 400, 2);
  return lines.map((line, index) => textNode(x, y + 15.5 + index * 7, line, { size: 6 }));
}

/** One line at the head of every further sheet. */
export function laterHead(frame: Frame, study: Study, sheet: TimeStudySheet): readonly SceneNode[] {
  const { left, right, top } = frame;
  const words = [study.operation.name || study.title, study.operation.number, sheet.timeStudy.name]
    .filter((word) => word !== undefined && word !== '')
    .join(' · ');
  return [
    groupNode('heading', [textNode(left, top + 11, `${sheetTitle}, continued`, { size: 10, weight: 600 })]),
    groupNode('note', [
      textNode(right, top + 11, fitText(words, right - left - 240, 8, 400), {
        size: 8,
        align: 'end',
        ink: 'soft',
      }),
    ]),
    ...inventedNote(study, left + 220, top + 11),
    groupNode('layer', [lineNode(left, top + 17, right, top + 17, 1.1, 'ink')]),
  ];
}

function inventedNote({ demo }: Study, right: number, y: number): readonly SceneNode[] {
  if (demo !== true) return [];
  return [
    groupNode('note', [
      textNode(right, y, 'Invented data', { size: 8.5, weight: 600, align: 'end', ink: 'warn' }),
    ]),
  ];
}

export const signatureHeight = 52;

/** Two lines to sign on, each with its date, at the foot of the first sheet. */
export function signatures(
  { left, right, bottom }: Frame,
  sheets: number,
  isStandard: boolean,
): readonly SceneNode[] {
  const middle = (left + right) / 2;
  const y = bottom - 16;
  const place = (from: number, to: number, caption: string): SceneNode[] => {
    const date = to - 78;
    return [
      groupNode('layer', [lineNode(from, y, date - 10, y, 0.6, 'ink'), lineNode(date, y, to, y, 0.6, 'ink')]),
      groupNode('note', [
        textNode(from, y + 8.5, caption, { size: 6.5, ink: 'soft' }),
        textNode(date, y + 8.5, 'Date', { size: 6.5, ink: 'soft' }),
      ]),
    ];
  };
  const whole = sheets === 1 ? 'this sheet' : `all ${sheets} sheets of this study`;
  const all = `Signed for ${whole}${isStandard ? '' : ': readings alone, there is no standard yet'}.`;
  return [
    ...place(left, middle - 10, 'Analyst'),
    ...place(middle + 10, right, 'Checked'),
    groupNode('note', [textNode(left, y - 26, all, { size: 6.5, ink: 'soft' })]),
  ];
}

/** The number of the sheet, and when it was printed. */
export function sheetFoot(
  { left, right, height }: Frame,
  page: number,
  pages: number,
  printed: string | undefined,
): readonly SceneNode[] {
  const y = height - 22;
  const look = { size: 6.5, ink: 'soft' as const };
  return [
    ...(printed === undefined || printed === ''
      ? []
      : [groupNode('note', [textNode(left, y, fitText(`Printed ${printed}`, 250, 6.5, 400), look)])]),
    groupNode('note', [textNode(right, y, `Sheet ${page} of ${pages}`, { ...look, align: 'end' })]),
  ];
}
