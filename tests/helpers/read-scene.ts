import {
  type Box,
  type GroupNode,
  pointsPerMillimetre,
  type RectNode,
  type Scene,
  type SceneNode,
  textBox,
  textsOf,
} from '@evenhand/core/ground/scene';
import { type TimeUnit, timeUnits } from '@evenhand/core/ground/units';

/** Pairs of texts of a scene that lie over each other by more than a hundredth of a point. */
export function overlappingTexts(scene: Scene): readonly string[] {
  const texts = textsOf(scene.nodes).filter((node) => node.text !== '');
  const boxes = texts.map(textBox);
  const found: string[] = [];
  boxes.forEach((box, index) => {
    for (let other = index + 1; other < boxes.length; other += 1) {
      const second = boxes[other];
      if (second !== undefined && overlap(box, second))
        found.push(`“${texts[index]?.text}” and “${texts[other]?.text}”`);
    }
  });
  return found;
}

function overlap(a: Box, b: Box): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return across > 0.01 && down > 0.01;
}

/** Texts that reach over the edge of the sheet. */
export function textsOutside(scene: Scene): readonly string[] {
  return textsOf(scene.nodes)
    .filter((node) => {
      const box = textBox(node);
      return box.left < 0 || box.top < 0 || box.right > scene.width || box.bottom > scene.height;
    })
    .map((node) => node.text);
}

export function groupsOf(nodes: readonly SceneNode[], role: GroupNode['role']): readonly GroupNode[] {
  return nodes.flatMap((node) =>
    node.kind !== 'group' ? [] : node.role === role ? [node] : groupsOf(node.nodes, role),
  );
}

/** The texts of every cell of a table, row by row, without its head. */
export function tableTexts(scene: Scene, label: string): readonly (readonly string[])[] {
  const table = groupsOf(scene.nodes, 'table').find((group) => group.label === label);
  return groupsOf(table?.nodes ?? [], 'row').map((row) =>
    groupsOf(row.nodes, 'cell').map((cell) =>
      textsOf(cell.nodes)
        .map((node) => node.text)
        .join(' '),
    ),
  );
}

/** The bars of one hand, from top to bottom: rectangles of the scene on its side of the middle, above the totals. */
export function barsOf(scene: Scene, hand: 'left' | 'right', barWidth: number): readonly RectNode[] {
  const rects = (nodes: readonly SceneNode[]): RectNode[] =>
    nodes.flatMap((node) => (node.kind === 'group' ? rects(node.nodes) : node.kind === 'rect' ? [node] : []));
  return rects(scene.nodes).filter(
    (rect) =>
      rect.width === barWidth && (hand === 'left' ? rect.x < scene.width / 2 : rect.x > scene.width / 2),
  );
}

/** Points for a microsecond, from what the sheet itself says: "Scale: 6 mm to 10 winks." */
export function printedScale(scene: Scene, unit: TimeUnit): number | undefined {
  const text = textsOf(scene.nodes).find((node) => node.text.startsWith('Scale:'))?.text;
  const match = /^Scale: ([\d.]+) mm to ([\d.]+) /.exec(text ?? '');
  if (match === null) return undefined;
  return (Number(match[1]) * pointsPerMillimetre) / (Number(match[2]) * timeUnits[unit].microseconds);
}
