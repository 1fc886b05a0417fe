import {
  groupNode,
  lineNode,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import type { Part, Strip } from './sheet-flow.ts';

export interface TableColumn {
  readonly head: string;
  readonly align: 'start' | 'end';
  /** Takes its share of what the others leave, and wraps; other columns are as wide as what stands in them. */
  readonly grow?: number | undefined;
}

export interface TableRow {
  /** One for each column. */
  readonly cells: readonly string[];
  readonly bold?: boolean | undefined;
  /** A rule above it. */
  readonly ruled?: boolean | undefined;
}

export interface TableFacts {
  readonly title: string;
  readonly titleAt?: Part['titleAt'] | undefined;
  readonly label: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly together?: boolean | undefined;
}

export interface TablePlace {
  readonly left: number;
  readonly right: number;
}

interface Plan {
  readonly size: number;
  readonly line: number;
  readonly columns: readonly (TableColumn & { readonly from: number; readonly to: number })[];
}

const largest = 7.2;
const smallest = 3.6;
const headShare = 0.86;
const gap = 6;
/** A column that grows is at least so wide, in sizes of its letters. */
const leastGrown = 9;

/** A table as wide as its place: as large as it can be without cutting a number. */
export function textTable(facts: TableFacts, place: TablePlace): Part {
  const plan = planOf(facts, place);
  const strips = facts.rows.map((row) => rowStrip(row, plan, place));
  const bare = facts.columns.every(({ head }) => head === '');
  return {
    title: facts.title,
    titleAt: facts.titleAt ?? 'above',
    role: 'table',
    label: facts.label,
    ...(bare ? {} : { head: headStrip(plan, place) }),
    strips,
    together: facts.together,
    closing: 0.5,
  };
}

function planOf({ columns, rows }: TableFacts, { left, right }: TablePlace): Plan {
  let size = largest;
  for (;;) {
    const natural = columns.map((column, index) =>
      column.grow === undefined ? naturalWidth(column, index, rows, size) : 0,
    );
    const fixed = natural.reduce((sum, width) => sum + width, 0);
    const shares = columns.reduce((sum, { grow = 0 }) => sum + grow, 0);
    const rest = right - left - fixed - gap * (columns.length - 1);
    const least = columns.reduce((sum, { grow }) => sum + (grow === undefined ? 0 : leastGrown * size), 0);
    if (rest >= least || size <= smallest) {
      return placed(columns, natural, Math.max(rest, 0), shares, size, left);
    }
    size -= 0.2;
  }
}

function naturalWidth({ head }: TableColumn, index: number, rows: readonly TableRow[], size: number): number {
  let widest = headWidth(head, size * headShare);
  for (const { cells, bold } of rows) {
    widest = Math.max(widest, textWidth(cells[index] ?? '', size, bold === true ? 600 : 400));
  }
  return widest;
}

/** A head narrower than this, in sizes, is not broken. */
const shortHead = 4.2;

/** The least width at which a head takes two lines, or one when it is short. */
function headWidth(head: string, size: number): number {
  const whole = textWidth(head, size, 400);
  if (whole <= shortHead * size) return whole;
  const words = head.split(' ');
  const widths = words.map((_, index) =>
    Math.max(
      textWidth(words.slice(0, index).join(' '), size, 400),
      textWidth(words.slice(index).join(' '), size, 400),
    ),
  );
  return Math.min(...widths);
}

function placed(
  columns: readonly TableColumn[],
  natural: readonly number[],
  rest: number,
  shares: number,
  size: number,
  left: number,
): Plan {
  // Without a column that grows, the last one ends where it ends.
  let x = left;
  const list = columns.map((column, index) => {
    const width = column.grow === undefined ? (natural[index] ?? 0) : (rest * column.grow) / shares;
    const from = x;
    x += width + gap;
    return { ...column, from, to: from + width };
  });
  return { size, line: size * 1.27, columns: list };
}

function headStrip({ columns, size }: Plan, { left, right }: TablePlace): Strip {
  const small = size * headShare;
  const line = small * 1.2;
  const heads = columns.map(({ head, from, to }) => wrapText(head, to - from + 0.01, small, 400, 4));
  const most = Math.max(1, ...heads.map((lines) => lines.length));
  const height = most * line + 5;
  return {
    height,
    nodes: (top) => [
      groupNode(
        'head-row',
        columns.map((column, index) => {
          const lines = heads[index] ?? [];
          return groupNode(
            'cell',
            lines.map((text, at) =>
              textNode(
                column.align === 'end' ? column.to : column.from,
                top + 2 + small + (most - lines.length + at) * line - small * 0.12,
                text,
                { size: small, align: column.align, ink: 'soft' },
              ),
            ),
          );
        }),
      ),
    ],
    layer: (top) => [
      lineNode(left, top, right, top, 0.9, 'ink'),
      lineNode(left, top + height - 0.5, right, top + height - 0.5, 0.5, 'ink'),
    ],
  };
}

function rowStrip(row: TableRow, { columns, size, line }: Plan, { left, right }: TablePlace): Strip {
  const weight = row.bold === true ? 600 : 400;
  const cells = columns.map(({ grow, from, to }, index) => {
    const text = row.cells[index] ?? '';
    if (grow === undefined) return [text];
    // What would break may run on over empty cells.
    const next = row.cells.findIndex((cell, at) => at > index && cell !== '');
    const end = next === index + 1 ? to : (columns[next - 1]?.from ?? right) - gap;
    return wrapText(text, Math.max(to, end) - from, size, weight);
  });
  const most = Math.max(1, ...cells.map((lines) => lines.length));
  const height = most * line + size * 0.45;
  const cellNodes = (top: number): SceneNode[] =>
    columns.map((column, index) => {
      const lines = (cells[index] ?? []).filter((text) => text !== '');
      return groupNode(
        'cell',
        lines.map((text, at) =>
          textNode(
            column.align === 'end' ? column.to : column.from,
            top + size * 0.2 + size * 0.95 + at * line,
            text,
            { size, weight, align: column.align },
          ),
        ),
      );
    });
  return {
    height,
    nodes: (top) => [groupNode('row', cellNodes(top))],
    layer: (top) => {
      const rule = row.ruled === true ? 0.5 : 0.25;
      return [lineNode(left, top, right, top, rule, row.ruled === true ? 'ink' : 'rule')];
    },
  };
}
