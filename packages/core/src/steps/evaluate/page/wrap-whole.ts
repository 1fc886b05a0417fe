import { type FontWeight, fitText, textWidth, wrapText } from '../../../ground/scene/index.ts';

/** Between words, but not within "7.60 s", "95 %", "€ 34" or "200 000". */
const breakable = /(?<![€$£¥]) +(?!(?:%|s|h|min|winks?|TMU)(?!\p{L}))/u;

/**
 * The text in lines that fit into `room`, as `wrapText` does it, but a figure stays on one line with its unit and all its
 * digits. More than `most` lines are cut, and the last one ends in an ellipsis.
 */
export function wrapWhole(
  text: string,
  room: number,
  size: number,
  weight: FontWeight,
  most = Number.POSITIVE_INFINITY,
): readonly string[] {
  const fits = (words: string) => textWidth(words, size, weight) <= room;
  const lines: string[] = [];
  let line = '';
  for (const word of text
    .replace(/[\t\r\n]+/g, ' ')
    .trim()
    .split(breakable)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = fits(word) ? [word] : wrapText(word, room, size, weight);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  if (line !== '') lines.push(line);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), fitText(lines.slice(most - 1).join(' '), room, size, weight)];
}
