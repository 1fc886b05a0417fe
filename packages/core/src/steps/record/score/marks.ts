import type { Fill, Ink, RectNode, TextNode } from '../../../ground/scene/index.ts';
import type { Area } from './areas.ts';

/** Height of a capital letter of IBM Plex Sans in parts of the size (its OS/2 table says 698 of 1000). */
const capHeight = 0.698;

/** Opacity of what is only proposed where hatching has no room. */
export const pale = 0.35;

export function box(x: number, y: number, width: number, height: number, fill: Fill): RectNode {
  return { kind: 'rect', x, y, width, height, fill };
}

/** A frame of a width that stays wholly inside the rectangle. */
export function frame(
  { x, y, width, height }: Area,
  ink: Ink,
  thick: number,
  dash?: readonly number[],
): RectNode {
  return {
    kind: 'rect',
    x: x + thick / 2,
    y: y + thick / 2,
    width: Math.max(0, width - thick),
    height: Math.max(0, height - thick),
    stroke: { ink, width: thick, ...(dash === undefined ? {} : { dash }) },
  };
}

export type WordsLook = Pick<TextNode, 'size' | 'weight' | 'ink'> & {
  readonly align?: TextNode['align'];
  readonly italic?: boolean;
};

/** A line of words whose capitals have their middle at `middle`. */
export function wordsAt(x: number, middle: number, text: string, look: WordsLook): TextNode {
  const { size, weight, ink, align = 'start', italic } = look;
  const y = middle + (capHeight / 2) * size;
  return { kind: 'text', x, y, text, size, weight, align, ink, ...(italic ? { italic } : {}) };
}

/** The middle of a line of words: the inverse of `wordsAt`. */
export function middleOf(text: TextNode): number {
  return text.y - (capHeight / 2) * text.size;
}
