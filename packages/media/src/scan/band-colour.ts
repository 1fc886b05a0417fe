import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Hand } from '@evenhand/core/ground/study';
import type { Picture } from '../hands/picture.ts';

/** The colour of a wristband as it looks in the film: a range of hue, and how strong and bright it is at least. */
export interface BandColour {
  /** Middle of the range, 0 to 360 degrees round the circle of colours. */
  readonly hue: number;
  /** Half the width of the range, in degrees. */
  readonly spread: number;
  /** 0 grey to 1 pure. */
  readonly leastStrength: number;
  /** 0 black to 1 full. */
  readonly leastBrightness: number;
}

/** Hue in degrees, strength and brightness 0 to 1, of a colour of 0 to 255 (A. R. Smith, “Color gamut transform pairs”, SIGGRAPH 1978). */
export function hueOf(red: number, green: number, blue: number): readonly [number, number, number] {
  const most = Math.max(red, green, blue);
  const range = most - Math.min(red, green, blue);
  if (range === 0) return [0, 0, most / 255];
  const turn =
    most === red
      ? (green - blue) / range
      : most === green
        ? 2 + (blue - red) / range
        : 4 + (red - green) / range;
  return [(60 * turn + 360) % 360, range / most, most / 255];
}

/** Degrees from one hue to another the short way round, 0 to 180. */
export function hueBetween(a: number, b: number): number {
  const apart = Math.abs(a - b) % 360;
  return apart > 180 ? 360 - apart : apart;
}

const patch = 2;
const weakest = 0.35;
const darkest = 0.2;

/**
 * The colour at a click, from the pixels about it. Findings `band/dull` where it is too grey or too dark to be told from
 * others, `band/mixed` where it is no one colour, `band/outside`.
 * @param at in pixels of the picture
 */
export function bandColour(
  picture: Picture,
  at: { readonly x: number; readonly y: number },
): Result<BandColour, Finding> {
  const { width, height, data } = picture;
  const [column, row] = [Math.floor(at.x), Math.floor(at.y)];
  if (!(column >= 0 && row >= 0 && column < width && row < height)) return fail(finding('band/outside'));
  const found: (readonly [number, number, number])[] = [];
  for (let y = Math.max(0, row - patch); y <= Math.min(height - 1, row + patch); y += 1)
    for (let x = Math.max(0, column - patch); x <= Math.min(width - 1, column + patch); x += 1) {
      const pixel = 4 * (y * width + x);
      found.push(hueOf(data[pixel] as number, data[pixel + 1] as number, data[pixel + 2] as number));
    }
  const strength = middle(found.map(([, value]) => value));
  const brightness = middle(found.map(([, , value]) => value));
  if (strength < weakest || brightness < darkest) return fail(finding('band/dull'));
  const hue = commonHue(found.map(([value]) => value));
  const off = middle(found.map(([value]) => hueBetween(value, hue)));
  if (off > 15) return fail(finding('band/mixed'));
  return ok({
    hue,
    spread: Math.min(28, Math.max(12, 4 * off + 8)),
    leastStrength: Math.max(0.25, strength - 0.3),
    leastBrightness: Math.max(0.12, brightness - 0.45),
  });
}

/** Two bands whose ranges of hue touch cannot be told apart. */
export function bandsFault(colours: Readonly<Partial<Record<Hand, BandColour>>>): Finding | undefined {
  const { left, right } = colours;
  if (left === undefined || right === undefined) return undefined;
  const apart = hueBetween(left.hue, right.hue);
  return apart < left.spread + right.spread
    ? finding('band/alike', {}, { degrees: Math.round(apart), least: Math.ceil(left.spread + right.spread) })
    : undefined;
}

export function isOfBand(colour: BandColour, red: number, green: number, blue: number): boolean {
  const most = Math.max(red, green, blue);
  // Cheap tests first: nearly all pixels fail them.
  if (most < 255 * colour.leastBrightness) return false;
  if (most - Math.min(red, green, blue) < colour.leastStrength * most) return false;
  return hueBetween(hueOf(red, green, blue)[0], colour.hue) <= colour.spread;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** The hue that lies nearest to most of the others, so that a click at the edge of a band is not spoilt by what is beside it. */
function commonHue(hues: readonly number[]): number {
  const off = (hue: number) => middle(hues.map((other) => hueBetween(other, hue)));
  return hues.reduce((best, hue) => (off(hue) < off(best) ? hue : best), hues[0] ?? 0);
}
