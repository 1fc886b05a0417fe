import type { Pattern } from '@evenhand/core/ground/tables';
import { type PatternTile, patternTiles } from '../patterns.ts';
import type { PaintContext } from './paint-scene.ts';

/** Pixels for one unit of a tile: fine enough for print previews, and whole for every tile (they come in eighths). */
const finest = 8;
/** Copies of a tile in one bitmap at most, in each direction. */
const mostCopies = 8;

/** How a tile is drawn into a bitmap: pixels for a unit, and copies beside and below each other. */
interface TilePlan {
  readonly pixels: number;
  readonly across: number;
  readonly down: number;
}

const bitmaps = new Map<string, OffscreenCanvas>();
const patterns = new WeakMap<PaintContext, Map<string, CanvasPattern>>();

/**
 * A pattern as a fill style of a context at its present scale; drawn once, then kept. Null for patterns without marks.
 */
export function canvasPattern(context: PaintContext, pattern: Pattern, ink: string): CanvasPattern | null {
  const tile = patternTiles[pattern];
  if (tile === undefined) return null;
  const plan = planOf(tile, Math.abs(context.getTransform().a));
  const key = `${pattern} ${ink} ${plan.pixels}`;
  const known = patterns.get(context)?.get(key);
  if (known !== undefined) return known;
  const bitmap = bitmaps.get(key) ?? draw(tile, ink, plan);
  bitmaps.set(key, bitmap);
  const made = context.createPattern(bitmap, 'repeat');
  if (made === null) return null;
  made.setTransform({ a: 1 / plan.pixels, d: 1 / plan.pixels });
  const own = patterns.get(context) ?? new Map<string, CanvasPattern>();
  patterns.set(context, own.set(key, made));
  return made;
}

/**
 * At the very scale of the screen when whole pixels can be had with a few copies: sharp, and painted without any
 * sampling between pixels. Otherwise finer than the screen.
 */
function planOf(tile: PatternTile, scale: number): TilePlan {
  const across = copies(tile.width * scale);
  const down = copies(tile.height * scale);
  return scale < finest && across !== undefined && down !== undefined
    ? { pixels: scale, across, down }
    : { pixels: finest, across: 1, down: 1 };
}

function copies(length: number): number | undefined {
  for (let count = 1; count <= mostCopies; count += 1) {
    const whole = Math.round(length * count);
    if (whole > 0 && Math.abs(length * count - whole) < 1e-6) return count;
  }
  return undefined;
}

function draw(tile: PatternTile, ink: string, { pixels, across, down }: TilePlan): OffscreenCanvas {
  const canvas = new OffscreenCanvas(
    Math.round(tile.width * pixels * across),
    Math.round(tile.height * pixels * down),
  );
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser gives no canvas to draw on');
  context.scale(pixels, pixels);
  context.fillStyle = ink;
  context.strokeStyle = ink;
  for (const line of new Set(tile.marks.map((mark) => mark.line))) {
    // One path for all copies: where marks of neighbours overlap, they are not painted twice.
    const path = new Path2D();
    for (const mark of tile.marks.filter((known) => known.line === line)) {
      const one = new Path2D(mark.d);
      for (let x = 0; x < across; x += 1)
        for (let y = 0; y < down; y += 1) path.addPath(one, { e: x * tile.width, f: y * tile.height });
    }
    if (line === 0) context.fill(path);
    else {
      context.lineWidth = line;
      context.stroke(path);
    }
  }
  return canvas;
}
