import type { Scene, SceneNode } from '../../../ground/scene/index.ts';

/** The nodes of a scene at another place and size, so that a picture for the screen stands on a page as well. */
export function placeScene(
  { nodes }: Pick<Scene, 'nodes'>,
  x: number,
  y: number,
  scale = 1,
): readonly SceneNode[] {
  return nodes.map((node) => placed(node, { x, y, scale }));
}

interface Placing {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

function placed(node: SceneNode, at: Placing): SceneNode {
  const [x, y] = [(value: number) => at.x + value * at.scale, (value: number) => at.y + value * at.scale];
  const stroke =
    'stroke' in node && node.stroke !== undefined
      ? {
          stroke: {
            ...node.stroke,
            width: node.stroke.width * at.scale,
            ...(node.stroke.dash === undefined
              ? {}
              : { dash: node.stroke.dash.map((dash) => dash * at.scale) }),
          },
        }
      : {};
  switch (node.kind) {
    case 'group':
      return { ...node, nodes: node.nodes.map((inner) => placed(inner, at)) };
    case 'text':
      return { ...node, x: x(node.x), y: y(node.y), size: node.size * at.scale };
    case 'line':
      return {
        ...node,
        ...stroke,
        x1: x(node.x1),
        y1: y(node.y1),
        x2: x(node.x2),
        y2: y(node.y2),
      } as SceneNode;
    case 'rect':
      return {
        ...node,
        ...stroke,
        x: x(node.x),
        y: y(node.y),
        width: node.width * at.scale,
        height: node.height * at.scale,
        ...(node.radius === undefined ? {} : { radius: node.radius * at.scale }),
      };
    default:
      return { ...node, ...stroke, d: placedPath(node.d, at) };
  }
}

/** Commands of a scene's path are absolute: M, L and C take points, A radii, an angle, two flags and a point. */
function placedPath(d: string, { x, y, scale }: Placing): string {
  const parts = d.match(/[MLCAZ][^MLCAZ]*/g) ?? [];
  return parts
    .map((part) => {
      const command = part[0] ?? '';
      const numbers = (part.slice(1).match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g) ?? []).map(Number);
      const moved = numbers.map((value, index) => {
        if (command === 'A') {
          const role = index % 7;
          if (role < 2) return value * scale;
          if (role < 5) return value;
          return role === 5 ? x + value * scale : y + value * scale;
        }
        return index % 2 === 0 ? x + value * scale : y + value * scale;
      });
      return [command, ...moved.map((value) => Number(value.toFixed(3)))].join(' ');
    })
    .join(' ');
}
