import type { Fill, GroupNode, Scene, SceneNode, Stroke, TextNode } from '@evenhand/core/ground/scene';
import { cleanText } from '../clean-text.ts';
import { colourOf, type Look } from '../looks.ts';
import { type PathStep, readPath } from '../path-data.ts';
import { patternInk, patternTiles } from '../patterns.ts';

/** A scene in the form that the typesetting program reads: plain JSON, colours settled, lengths in points. */
export interface PageData {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly NodeData[];
}

type Pen = { readonly colour: string; readonly width: number; readonly dash: readonly number[] | null };
type Paint = { readonly colour: string; readonly pattern: string | null };

export type NodeData =
  | {
      readonly kind: 'shape';
      readonly steps: readonly PathStep[];
      readonly fill: Paint | null;
      readonly pen: Pen | null;
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly weight: number;
      readonly align: TextNode['align'];
      readonly italic: boolean;
      readonly colour: string;
    }
  | { readonly kind: 'drawing'; readonly nodes: readonly NodeData[] }
  | { readonly kind: 'figure'; readonly label: string; readonly nodes: readonly NodeData[] }
  | { readonly kind: 'heading'; readonly level: number; readonly nodes: readonly NodeData[] }
  | { readonly kind: 'block'; readonly nodes: readonly NodeData[] }
  | {
      readonly kind: 'table';
      readonly columns: number;
      readonly head: readonly (readonly NodeData[])[];
      readonly rows: readonly (readonly (readonly NodeData[])[])[];
    };

/** Patterns in use, by the name that a paint gives them. */
export interface PatternData {
  readonly width: number;
  readonly height: number;
  readonly ink: string;
  readonly marks: readonly { readonly steps: readonly PathStep[]; readonly line: number }[];
}

export interface PaperData {
  readonly pages: readonly PageData[];
  readonly patterns: Readonly<Record<string, PatternData>>;
}

/** Every scene as data for one document. */
export function paperData(scenes: readonly Scene[], look: Look): PaperData {
  const patterns = new Map<string, PatternData>();
  const writer = new PageWriter(look, patterns);
  const pages = scenes.map(({ width, height, nodes }) => ({ width, height, nodes: writer.nodes(nodes) }));
  return { pages, patterns: Object.fromEntries([...patterns].sort(([a], [b]) => (a < b ? -1 : 1))) };
}

class PageWriter {
  private readonly look: Look;
  private readonly patterns: Map<string, PatternData>;

  constructor(look: Look, patterns: Map<string, PatternData>) {
    this.look = look;
    this.patterns = patterns;
  }

  /** Shapes that stand outside a group are drawing and nothing to be read. */
  nodes(nodes: readonly SceneNode[]): readonly NodeData[] {
    return nodes.map((node, index) => {
      const data = this.node(node);
      if (data.kind === 'text') return joined(data, nodes[index - 1], nodes[index + 1]);
      return data.kind === 'shape' ? { kind: 'drawing', nodes: [data] } : data;
    });
  }

  private node(node: SceneNode): NodeData {
    switch (node.kind) {
      case 'group':
        return this.group(node);
      case 'text':
        return this.text(node);
      case 'line':
        return this.shape(
          [
            { kind: 'move', to: [node.x1, node.y1] },
            { kind: 'line', to: [node.x2, node.y2] },
          ],
          undefined,
          node.stroke,
        );
      case 'rect':
        return this.shape(rectSteps(node), node.fill, node.stroke);
      case 'path':
        return this.shape(readPath(node.d), node.fill, node.stroke);
    }
  }

  private group(node: GroupNode): NodeData {
    switch (node.role) {
      case 'layer':
        return { kind: 'drawing', nodes: this.plain(node.nodes) };
      case 'figure':
        return { kind: 'figure', label: cleanText(node.label ?? ''), nodes: this.plain(node.nodes) };
      case 'heading':
        return { kind: 'heading', level: node.level ?? 1, nodes: this.nodes(node.nodes) };
      case 'table':
        return this.table(node);
      default:
        return { kind: 'block', nodes: this.nodes(node.nodes) };
    }
  }

  /** Inside a drawing nothing is told apart any more. */
  private plain(nodes: readonly SceneNode[]): readonly NodeData[] {
    return nodes.flatMap((node) => (node.kind === 'group' ? this.plain(node.nodes) : [this.node(node)]));
  }

  private table(node: GroupNode): NodeData {
    const rowsOf = (role: GroupNode['role']) =>
      node.nodes.flatMap((row) => (row.kind === 'group' && row.role === role ? [this.cells(row)] : []));
    const head = rowsOf('head-row')[0] ?? [];
    const rows = rowsOf('row');
    const columns = [head, ...rows].reduce((most, row) => Math.max(most, row.length), 1);
    const fill = (row: readonly (readonly NodeData[])[]) => [
      ...row,
      ...Array.from({ length: columns - row.length }, () => []),
    ];
    return { kind: 'table', columns, head: head.length === 0 ? [] : fill(head), rows: rows.map(fill) };
  }

  /** An empty cell of the head that has a label is read by it. */
  private cells(row: GroupNode): readonly (readonly NodeData[])[] {
    return row.nodes.map((cell) => (cell.kind === 'group' ? this.nodes(cell.nodes) : this.nodes([cell])));
  }

  private text(node: TextNode): NodeData {
    return {
      kind: 'text',
      x: node.x,
      y: node.y,
      text: cleanText(node.text).replace(/\s+/g, ' '),
      size: node.size,
      weight: node.weight,
      align: node.align,
      italic: node.italic ?? false,
      colour: colourOf(node.ink, this.look),
    };
  }

  private shape(steps: readonly PathStep[], fill: Fill | undefined, stroke: Stroke | undefined): NodeData {
    return { kind: 'shape', steps, fill: this.paint(fill), pen: this.pen(stroke) };
  }

  private paint(fill: Fill | undefined): Paint | null {
    if (fill === undefined) return null;
    const colour = colourOf(fill.ink, this.look);
    return { colour: withOpacity(colour, fill.opacity), pattern: this.pattern(fill, colour) };
  }

  private pen(stroke: Stroke | undefined): Pen | null {
    return stroke === undefined
      ? null
      : { colour: colourOf(stroke.ink, this.look), width: stroke.width, dash: stroke.dash ?? null };
  }

  private pattern(fill: Fill, colour: string): string | null {
    const tile = fill.pattern === undefined ? undefined : patternTiles[fill.pattern];
    if (tile === undefined || fill.pattern === undefined) return null;
    const ink = patternInk(colour);
    const name = `${fill.pattern} ${ink}`;
    const marks = tile.marks.map(({ d, line }) => ({ steps: readPath(d), line }));
    this.patterns.set(name, { width: tile.width, height: tile.height, ink, marks });
    return name;
  }
}

/**
 * Lines of one text are read as one: without a space the last and the first word would run together. It stands on the
 * side that is not aligned, where it moves nothing.
 */
function joined(
  data: Extract<NodeData, { kind: 'text' }>,
  before: SceneNode | undefined,
  after: SceneNode | undefined,
): NodeData {
  if (data.align === 'start' && after?.kind === 'text') return { ...data, text: `${data.text} ` };
  return data.align === 'end' && before?.kind === 'text' ? { ...data, text: ` ${data.text}` } : data;
}

function withOpacity(colour: string, opacity: number | undefined): string {
  if (opacity === undefined || opacity >= 1) return colour;
  const part = Math.round(Math.max(0, opacity) * 255);
  return `${colour}${part.toString(16).padStart(2, '0')}`;
}

/** A rectangle as a path, its corners rounded by quarter arcs where it has a radius. */
function rectSteps(rect: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly radius?: number;
}): readonly PathStep[] {
  const { x, y, width, height } = rect;
  const [right, bottom] = [x + width, y + height];
  const r = Math.min(rect.radius ?? 0, width / 2, height / 2);
  if (r <= 0) return readPath(`M ${x} ${y} L ${right} ${y} L ${right} ${bottom} L ${x} ${bottom} Z`);
  const arc = (toX: number, toY: number) => `A ${r} ${r} 0 0 1 ${toX} ${toY}`;
  return readPath(
    `M ${x + r} ${y} L ${right - r} ${y} ${arc(right, y + r)} L ${right} ${bottom - r} ${arc(right - r, bottom)} L ${x + r} ${bottom} ${arc(x, bottom - r)} L ${x} ${y + r} ${arc(x + r, y)} Z`,
  );
}
