import type { Fill, RectNode, Scene, SceneNode, Stroke, TextNode } from '@evenhand/core/ground/scene';
import { colourOf, type Look } from '../looks.ts';
import { patternInk } from '../patterns.ts';
import { canvasPattern } from './canvas-pattern.ts';

export type PaintContext = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/**
 * Paints a scene at the context's present transform: scale it beforehand for the screen's pixels or for a zoom.
 * The sheet is painted too. Nothing of the context's state is left changed.
 */
export function paintScene(context: PaintContext, scene: Scene, look: Look): void {
  context.save();
  context.fillStyle = look.inks.paper;
  context.fillRect(0, 0, scene.width, scene.height);
  context.restore();
  paintNodes(context, scene.nodes, look);
}

/** Paints nodes over what is there already: for surfaces that keep their drawing in layers. */
export function paintNodes(context: PaintContext, nodes: readonly SceneNode[], look: Look): void {
  context.save();
  context.lineJoin = 'round';
  context.imageSmoothingQuality = 'high';
  context.textBaseline = 'alphabetic';
  for (const node of nodes) paintNode(context, node, look);
  context.restore();
}

function paintNode(context: PaintContext, node: SceneNode, look: Look): void {
  switch (node.kind) {
    case 'group':
      for (const child of node.nodes) paintNode(context, child, look);
      return;
    case 'text':
      paintText(context, node, look);
      return;
    case 'line': {
      const path = new Path2D();
      path.moveTo(node.x1, node.y1);
      path.lineTo(node.x2, node.y2);
      strokePath(context, path, node.stroke, look);
      return;
    }
    case 'rect': {
      if (node.radius === undefined) {
        paintRect(context, node, look);
        return;
      }
      const path = new Path2D();
      path.roundRect(node.x, node.y, node.width, node.height, node.radius);
      paintShape(context, path, node.fill, node.stroke, look);
      return;
    }
    case 'path':
      paintShape(context, new Path2D(node.d), node.fill, node.stroke, look);
  }
}

/** Without a path of its own: a screen may have thousands of plain rectangles. */
function paintRect(context: PaintContext, node: RectNode, look: Look): void {
  const { x, y, width, height, fill, stroke } = node;
  if (fill !== undefined && fill.pattern === undefined && fill.opacity === undefined) {
    context.fillStyle = colourOf(fill.ink, look);
    context.fillRect(x, y, width, height);
  } else if (fill !== undefined) layFill(context, fill, look, () => context.fillRect(x, y, width, height));
  if (stroke === undefined) return;
  setStroke(context, stroke, look);
  context.strokeRect(x, y, width, height);
}

function paintShape(
  context: PaintContext,
  path: Path2D,
  fill: Fill | undefined,
  stroke: Stroke | undefined,
  look: Look,
): void {
  if (fill !== undefined) layFill(context, fill, look, () => context.fill(path));
  if (stroke !== undefined) strokePath(context, path, stroke, look);
}

function layFill(context: PaintContext, fill: Fill, look: Look, lay: () => void): void {
  const colour = colourOf(fill.ink, look);
  context.fillStyle = colour;
  const before = context.globalAlpha;
  context.globalAlpha = before * (fill.opacity ?? 1);
  lay();
  const pattern =
    fill.pattern === undefined ? null : canvasPattern(context, fill.pattern, patternInk(colour));
  if (pattern !== null) {
    context.fillStyle = pattern;
    lay();
  }
  context.globalAlpha = before;
}

function strokePath(context: PaintContext, path: Path2D, stroke: Stroke, look: Look): void {
  setStroke(context, stroke, look);
  context.stroke(path);
}

function setStroke(context: PaintContext, stroke: Stroke, look: Look): void {
  context.strokeStyle = colourOf(stroke.ink, look);
  context.lineWidth = stroke.width;
  context.setLineDash(stroke.dash === undefined ? [] : [...stroke.dash]);
}

function paintText(context: PaintContext, node: TextNode, look: Look): void {
  context.font = `${node.italic ? 'italic ' : ''}${node.weight} ${node.size}px ${look.fontFamily}`;
  context.textAlign = node.align === 'middle' ? 'center' : node.align;
  context.fillStyle = colourOf(node.ink, look);
  context.fillText(node.text, node.x, node.y);
}
