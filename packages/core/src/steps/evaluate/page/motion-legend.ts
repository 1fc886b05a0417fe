import { groupNode, type SceneNode, textNode, textWidth } from '../../../ground/scene/index.ts';
import { type MotionKind, motionFactsOf, motionKinds } from '../../../ground/tables/index.ts';

export interface LegendPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly size: number;
}

/** The motions that occur, each with its colour, pattern, letter code and name, in as many lines as they need. */
export function motionLegend(
  kinds: ReadonlySet<MotionKind>,
  { left, right, top, size }: LegendPlace,
): { readonly nodes: readonly SceneNode[]; readonly bottom: number } {
  const line = size * 1.5;
  const swatch = size * 1.2;
  let [x, row] = [left, 0];
  const items = motionKinds
    .filter((kind) => kind !== 'unmarked' && kinds.has(kind))
    .map((kind) => {
      const facts = motionFactsOf(kind);
      const words = `${facts.code} ${facts.name}`;
      const width = swatch + size * 0.35 + textWidth(words, size, 400);
      if (x > left && x + width > right) [x, row] = [left, row + 1];
      const y = top + row * line;
      const item = groupNode('row', [
        groupNode('layer', [
          {
            kind: 'rect',
            x,
            y: y + size * 0.25,
            width: swatch,
            height: size * 0.85,
            fill: { ink: { colour: facts.colour }, pattern: facts.pattern },
            stroke: { ink: 'ink', width: 0.3 },
          },
        ]),
        groupNode('cell', [textNode(x + swatch + size * 0.35, y + size, words, { size })]),
      ]);
      x += width + size * 0.8;
      return item;
    });
  return { nodes: [groupNode('table', items, 'Motions')], bottom: top + (row + 1) * line };
}
