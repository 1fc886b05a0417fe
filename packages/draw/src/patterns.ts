import type { Pattern } from '@evenhand/core/ground/tables';

/** A mark of a pattern: an open or closed path of straight and round parts, drawn as a line or filled. */
export interface PatternMark {
  /** Absolute SVG path commands M, L, C, A, Z. */
  readonly d: string;
  /** Width of the line; 0 fills instead. */
  readonly line: number;
}

/** A tile that repeats in both directions without a seam, in the unit of the scene. */
export interface PatternTile {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PatternMark[];
}

function lines(width: number, height: number, line: number, ...paths: readonly string[]): PatternTile {
  return { width, height, marks: paths.map((d) => ({ d, line })) };
}

/** A dot as two half circles. */
function dot(x: number, y: number, radius: number): string {
  return `M ${x - radius} ${y} A ${radius} ${radius} 0 1 1 ${x + radius} ${y} A ${radius} ${radius} 0 1 1 ${x - radius} ${y} Z`;
}

// Lines run past the edges of the tile so that they meet those of the next one without a seam.
const up = (size: number) => [
  `M -1 1 L 1 -1`,
  `M 0 ${size} L ${size} 0`,
  `M ${size - 1} ${size + 1} L ${size + 1} ${size - 1}`,
];
const down = (size: number) => [
  `M -1 ${size - 1} L 1 ${size + 1}`,
  `M 0 0 L ${size} ${size}`,
  `M ${size - 1} -1 L ${size + 1} 1`,
];

const squares = (size: number, step: number) =>
  Array.from({ length: size / step }, (_, index) => (index + 0.5) * step).flatMap((at) => [
    `M -1 ${at} L ${size + 1} ${at}`,
    `M ${at} -1 L ${at} ${size + 1}`,
  ]);

/** Tiles of level and upright lines are long: some viewers of PDF show a faint seam where two tiles meet. */
const long = 24;

/** Patterns that lie over a fill. `solid`, `plain` and `empty` have none: the fill itself is what tells them apart. */
export const patternTiles: Readonly<Record<Pattern, PatternTile | undefined>> = {
  solid: undefined,
  plain: undefined,
  empty: undefined,
  diagonal: lines(3, 3, 0.6, ...up(3)),
  'diagonal-back': lines(3, 3, 0.6, ...down(3)),
  'wide-diagonal': lines(6, 6, 1.3, ...up(6)),
  'wide-diagonal-back': lines(6, 6, 1.3, ...down(6)),
  'cross-diagonal': lines(4.5, 4.5, 0.55, ...up(4.5), ...down(4.5)),
  horizontal: lines(long, 2.5, 0.6, `M -1 1.25 L ${long + 1} 1.25`),
  vertical: lines(2.5, long, 0.6, `M 1.25 -1 L 1.25 ${long + 1}`),
  'wide-horizontal': lines(long, 5, 1.3, `M -1 2.5 L ${long + 1} 2.5`),
  'wide-vertical': lines(5, long, 1.3, `M 2.5 -1 L 2.5 ${long + 1}`),
  grid: lines(long, long, 0.55, ...squares(long, 4)),
  dots: { width: 4, height: 4, marks: [mark(dot(1, 1, 0.6)), mark(dot(3, 3, 0.6))] },
  'dots-dense': {
    width: 2.5,
    height: 2.5,
    marks: [mark(dot(0.625, 0.625, 0.42)), mark(dot(1.875, 1.875, 0.42))],
  },
  dashes: lines(6, 4, 0.7, 'M 0.5 1 L 3 1', 'M 3.5 3 L 6 3'),
  zigzag: lines(4, 3, 0.6, 'M -1 1.5 L 0 2.5 L 2 0.5 L 4 2.5 L 5 1.5'),
  rings: { width: 5, height: 5, marks: [{ d: dot(2.5, 2.5, 1.3), line: 0.55 }] },
  crosses: lines(5, 5, 0.6, 'M 2.5 1.2 L 2.5 3.8', 'M 1.2 2.5 L 3.8 2.5'),
};

function mark(d: string): PatternMark {
  return { d, line: 0 };
}

/**
 * The ink of a pattern on a colour: dark on light colours, light on dark ones, whichever contrasts more
 * (relative luminance and contrast ratio as in WCAG 2.2).
 * @param colour #rrggbb
 */
export function patternInk(colour: string): '#000000' | '#ffffff' {
  const luminance = luminanceOf(colour);
  return 1.05 / (luminance + 0.05) > (luminance + 0.05) / 0.05 ? '#ffffff' : '#000000';
}

function luminanceOf(colour: string): number {
  const part = (at: number) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5);
}
