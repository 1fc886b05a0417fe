import type { FontWeight, GroupNode, Ink, LineNode, SceneNode, TextNode } from './scene.ts';
import { fontAscent, fontDescent, textWidth } from './text-width.ts';

export interface TextLook {
  readonly size: number;
  readonly weight?: FontWeight;
  readonly align?: TextNode['align'];
  readonly ink?: Ink;
  readonly italic?: boolean;
}

/** A line of text with the usual look: regular, from its start, in ink. */
export function textNode(x: number, y: number, text: string, look: TextLook): TextNode {
  const { size, weight = 400, align = 'start', ink = 'ink', italic } = look;
  return { kind: 'text', x, y, text, size, weight, align, ink, ...(italic ? { italic } : {}) };
}

export function lineNode(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  width: number,
  ink: Ink = 'rule',
  dash?: readonly number[],
): LineNode {
  return { kind: 'line', x1, y1, x2, y2, stroke: { ink, width, ...(dash ? { dash } : {}) } };
}

export function groupNode(role: GroupNode['role'], nodes: readonly SceneNode[], label?: string): GroupNode {
  return { kind: 'group', role, nodes, ...(label === undefined ? {} : { label }) };
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The space that a text takes by the font's own figures. */
export function textBox(node: TextNode): Box {
  const width = textWidth(node.text, node.size, node.weight);
  const left = node.align === 'start' ? node.x : node.align === 'end' ? node.x - width : node.x - width / 2;
  return {
    left,
    top: node.y - fontAscent * node.size,
    right: left + width,
    bottom: node.y + fontDescent * node.size,
  };
}

/** Every text of a scene, whatever group it stands in, in the order in which it is read. */
export function textsOf(nodes: readonly SceneNode[]): readonly TextNode[] {
  return nodes.flatMap((node) =>
    node.kind === 'group' ? textsOf(node.nodes) : node.kind === 'text' ? [node] : [],
  );
}
