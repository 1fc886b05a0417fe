import type { Pattern } from '@evenhand/core/ground/tables';
import { patternTiles } from '../patterns.ts';
import type { PaintContext } from './paint-scene.ts';

/** Pixels for one unit of a tile: fine enough for print previews, and whole for every tile (they come in eighths). */
const fineness = 8;

const tiles = new Map<string, OffscreenCanvas>();
const patterns = new WeakMap<PaintContext, Map<string, CanvasPattern>>();

/** A pattern as a fill style of a context; drawn once, then kept. Null for patterns that have no marks. */
export function canvasPattern(context: PaintContext, pattern: Pattern, ink: string): CanvasPattern | null {
  const key = `${pattern} ${ink}`;
  const known = patterns.get(context)?.get(key);
  if (known !== undefined) return known;
  const tile = tileOf(key, pattern, ink);
  const made = tile === undefined ? null : context.createPattern(tile, 'repeat');
  if (made === null) return null;
  made.setTransform({ a: 1 / fineness, d: 1 / fineness });
  const own = patterns.get(context) ?? new Map<string, CanvasPattern>();
  patterns.set(context, own.set(key, made));
  return made;
}

function tileOf(key: string, pattern: Pattern, ink: string): OffscreenCanvas | undefined {
  const known = tiles.get(key);
  const facts = patternTiles[pattern];
  if (known !== undefined || facts === undefined) return known;
  const canvas = new OffscreenCanvas(facts.width * fineness, facts.height * fineness);
  const context = canvas.getContext('2d');
  if (context === null) return undefined;
  context.scale(fineness, fineness);
  context.fillStyle = ink;
  context.strokeStyle = ink;
  for (const { d, line } of facts.marks) {
    if (line === 0) context.fill(new Path2D(d));
    else {
      context.lineWidth = line;
      context.stroke(new Path2D(d));
    }
  }
  tiles.set(key, canvas);
  return canvas;
}
