import { groupNode, type PaperName, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import type { ComparisonFacts } from '../comparison/comparison.ts';

export interface ProofPageLook {
  readonly paper: PaperName;
  readonly unit: TimeUnit;
  /** As it shall be printed; no date when left out. */
  readonly date?: string | undefined;
}

/** What was laid out from the top: nodes, and how far down they reach. */
export interface Block {
  readonly nodes: readonly SceneNode[];
  readonly bottom: number;
}

export interface Page extends ProofPageLook {
  readonly left: number;
  readonly right: number;
  readonly study: Study;
  readonly facts: ComparisonFacts;
}

export const margin = { side: 36, top: 32, bottom: 30 } as const;

export function text(
  x: number,
  y: number,
  words: string,
  size: number,
  look: Omit<Parameters<typeof textNode>[3], 'size'> = {},
): SceneNode {
  return textNode(x, y, words, { size, ...look });
}

export function partHeading(x: number, y: number, words: string): SceneNode {
  return { ...groupNode('heading', [textNode(x, y, words, { size: 8.5, weight: 600 })]), level: 2 };
}
