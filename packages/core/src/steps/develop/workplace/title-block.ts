import { fitText, groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import type { Work } from '../work/index.ts';
import type { PlanFrame, PlanLook } from './plan-frame.ts';

/** Points. */
const row = 19;

/** Where the title block begins; the heading stands left of it. */
export function titleBlockLeft({ left, right }: PlanFrame): number {
  return left + (right - left) * 0.4;
}

interface Cell {
  readonly label: string;
  readonly text: string;
  /** Share of the width at which it begins, and its line. */
  readonly start: number;
  readonly line: 0 | 1;
}

/** What a drawing says of itself: what it shows, of what, how large, by whom and when. Two lines of cells. */
export function titleBlock(work: Work, look: PlanLook, frame: PlanFrame, top: number): SceneNode[] {
  const { titleBlock: facts, scale, paper } = look;
  if (facts === undefined) return [];
  const { bench, right } = frame;
  const left = titleBlockLeft(frame);
  const width = right - left;
  const cells: readonly Cell[] = [
    { label: 'Operation', text: facts.operation, start: 0, line: 0 },
    { label: 'Scale', text: `1:${scale} on ${paper.toUpperCase()}`, start: 0.5, line: 0 },
    {
      label: 'Bench, mm',
      text: `${numberText(bench.width, 0)} × ${numberText(bench.depth, 0)}`,
      start: 0.74,
      line: 0,
    },
    { label: 'Work', text: work.title, start: 0, line: 1 },
    { label: 'Drawn by', text: facts.drawnBy ?? '', start: 0.5, line: 1 },
    { label: 'Date', text: facts.date ?? '', start: 0.74, line: 1 },
  ];
  const nodes = cells.flatMap(({ label, text, start, line }, index): SceneNode[] => {
    const [x, y] = [left + start * width, top + line * row];
    const next = cells[index + 1];
    const end = next === undefined || next.line !== line ? 1 : next.start;
    const words = text === '' ? [] : [fitText(text, (end - start) * width - 6, 7, 600)];
    return [
      ...(start === 0 ? [] : [lineNode(x, y, x, y + row, 0.5, 'ink')]),
      textNode(x + 3, y + 6.5, label, { size: 5, ink: 'soft' }),
      ...words.map((word) => textNode(x + 3, y + 15.5, word, { size: 7, weight: 600 })),
    ];
  });
  const across = [0, 1, 2].map((line) =>
    lineNode(left, top + line * row, right, top + line * row, 0.7, 'ink'),
  );
  const sides = [left, right].map((x) => lineNode(x, top, x, top + 2 * row, 0.7, 'ink'));
  return [groupNode('note', [...across, ...sides, ...nodes])];
}
