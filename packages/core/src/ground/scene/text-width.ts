import { type WidthRun, widths400, widths600 } from './plex-sans-widths.ts';
import type { FontWeight } from './scene.ts';

/** What a character without a glyph is taken for: as wide as it is high, which no other font exceeds by much. */
const unknownWidth = 1000;

/**
 * Above and below the baseline, in parts of the size: room for every letter of IBM Plex Sans (ascenders reach 0.740,
 * brackets 0.760, descenders 0.212) except capitals with an accent.
 */
export const fontAscent = 0.78;
export const fontDescent = 0.22;

const ellipsis = '…';

function unpack(runs: readonly WidthRun[]): ReadonlyMap<number, number> {
  return new Map(
    runs.flatMap(([first, widths]) =>
      widths.split(' ').map((width, index): [number, number] => [first + index, Number(width)]),
    ),
  );
}

const widths: Readonly<Record<FontWeight, ReadonlyMap<number, number>>> = {
  400: unpack(widths400),
  600: unpack(widths600),
};

/**
 * How wide a line of text is, in the unit of `size`: the sum of the advance widths of IBM Plex Sans. Kerning and
 * ligatures are left out; they mostly draw letters together, so the figure is on the safe side.
 * A character that the font does not have counts as one em.
 */
export function textWidth(text: string, size: number, weight: FontWeight): number {
  const known = widths[weight];
  let sum = 0;
  for (const character of text) sum += known.get(character.codePointAt(0) ?? 0) ?? unknownWidth;
  return (sum * size) / 1000;
}

/** Whether the font has every character of a text. */
export function fontCovers(text: string): boolean {
  return Array.from(text).every((character) => widths[400].has(character.codePointAt(0) ?? 0));
}

/** The text, or as much of its beginning as fits into `room` with an ellipsis behind it; '' when not even that fits. */
export function fitText(text: string, room: number, size: number, weight: FontWeight): string {
  if (textWidth(text, size, weight) <= room) return text;
  const characters = Array.from(text);
  let low = 0;
  let high = characters.length;
  const cut = (count: number) => `${characters.slice(0, count).join('').trimEnd()}${ellipsis}`;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (textWidth(cut(middle), size, weight) <= room) low = middle;
    else high = middle - 1;
  }
  return textWidth(cut(low), size, weight) <= room ? cut(low) : '';
}

/** Spaces at which a line may end: all but those that keep what they stand between together. */
const betweenWords = /[^\S\u00a0\u2007\u2009\u202f]+/;

/**
 * The text broken between words into lines that fit into `room`; a word that is too long alone is broken inside.
 * More than `most` lines are cut, and the last one ends in an ellipsis.
 */
export function wrapText(
  text: string,
  room: number,
  size: number,
  weight: FontWeight,
  most = Number.POSITIVE_INFINITY,
): readonly string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (candidate: string) => textWidth(candidate, size, weight) <= room;
  for (const word of text.split(betweenWords).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  if (line !== '') lines.push(line);
  if (lines.length <= most) return lines;
  const rest = lines.slice(most - 1).join(' ');
  return [...lines.slice(0, most - 1), fitText(rest, room, size, weight)];
}

function breakWord(word: string, fits: (candidate: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && !fits(piece + character)) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}
