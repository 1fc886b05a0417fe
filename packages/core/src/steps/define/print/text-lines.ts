import { textNode, wrapText } from '../../../ground/scene/index.ts';
import { besideWidth, type Part, type Strip } from './sheet-flow.ts';
import type { TablePlace } from './text-table.ts';

const size = 7.2;
const line = 9.3;
const between = 3;

/** A paragraph of more lines than these may go on over sheets. */
const mostTogether = 6;

/** Paragraphs beside their title; only a long one is torn apart at the end of a sheet. */
export function textLines(title: string, paragraphs: readonly string[], place: TablePlace): Part {
  const left = place.left + besideWidth;
  const strips = paragraphs
    .filter((words) => words.trim() !== '')
    .flatMap((words) => {
      const lines = wrapText(words, place.right - left, size, 400);
      return lines.length <= mostTogether
        ? [strip(lines, left, between)]
        : lines.map((text, index) => strip([text], left, index === lines.length - 1 ? between : 0));
    });
  return { title, titleAt: 'beside', role: 'note', label: title, strips };
}

function strip(lines: readonly string[], left: number, below: number): Strip {
  return {
    height: lines.length * line + below,
    nodes: (top) =>
      lines.map((text, index) => textNode(left, top + size * 0.97 + index * line, text, { size })),
  };
}
