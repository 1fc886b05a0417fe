import type { Fill, Scene, SceneNode, Stroke, TextNode } from '@evenhand/core/ground/scene';
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
  context.lineJoin = 'round';
  context.textBaseline = 'alphabetic';
  for (const node of scene.nodes) paintNode(context, node, look);
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
      const path = new Path2D();
      if (node.radius === undefined) path.rect(node.x, node.y, node.width, node.height);
      else path.roundRect(node.x, node.y, node.width, node.height, node.radius);
      paintShape(context, path, node.fill, node.stroke, look);
      return;
    }
    case 'path':
      paintShape(context, new Path2D(node.d), node.fill, node.stroke, look);
  }
}

function paintShape(
  context: PaintContext,
  path: Path2D,
  fill: Fill | undefined,
  stroke: Stroke | undefined,
  look: Look,
): void {
  if (fill !== undefined) fillPath(context, path, fill, look);
  if (stroke !== undefined) strokePath(context, path, stroke, look);
}

function fillPath(context: PaintContext, path: Path2D, fill: Fill, look: Look): void {
  const before = context.globalAlpha;
  const colour = colourOf(fill.ink, look);
  context.globalAlpha = before * (fill.opacity ?? 1);
  context.fillStyle = colour;
  context.fill(path);
  const pattern =
    fill.pattern === undefined ? null : canvasPattern(context, fill.pattern, patternInk(colour));
  if (pattern !== null) {
    context.fillStyle = pattern;
    context.fill(path);
  }
  context.globalAlpha = before;
}

function strokePath(context: PaintContext, path: Path2D, stroke: Stroke, look: Look): void {
  context.strokeStyle = colourOf(stroke.ink, look);
  context.lineWidth = stroke.width;
  context.setLineDash(stroke.dash === undefined ? [] : [...stroke.dash]);
  context.stroke(path);
}

function paintText(context: PaintContext, node: TextNode, look: Look): void {
  context.font = `${node.italic ? 'italic ' : ''}${node.weight} ${node.size}px ${look.fontFamily}`;
  context.textAlign = node.align === 'middle' ? 'center' : node.align;
  context.fillStyle = colourOf(node.ink, look);
  context.fillText(node.text, node.x, node.y);
}
