import { groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import type { ComparisonFacts } from '../comparison/comparison.ts';
import { outlookRule } from '../money/outlook.ts';
import { type Page, text } from './page-parts.ts';
import { wrapWhole } from './wrap-whole.ts';

const caution =
  'Pace, load, reach and repetition can hurt: whether the work may be done so is settled by local rules and qualified people. This compares methods, never persons.';

/** What the claim rests on, in small print in two columns that end at `bottom`. */
export function restBlock(
  { left, right, facts }: Page,
  bottom: number,
): { readonly nodes: readonly SceneNode[]; readonly top: number } {
  const size = 6.2;
  const gap = 14;
  const room = (right - left - gap) / 2;
  // The odds stand beside the figures already.
  const grounds = facts.proof.claim.restsOn.filter((sentence) => sentence !== facts.proof.difference.odds);
  const sentences = [...grounds, ...moneyConventions(facts)];
  const [first, second] = twoColumns(
    [...new Set(sentences), caution].map((sentence) => wrapWhole(`– ${sentence}`, room, size, 400)),
  );
  const step = size * 1.28;
  const top = bottom - Math.max(first.length, second.length) * step - 14;
  const column = (lines: readonly string[], x: number) =>
    lines.map((line, row) => text(x, top + 18 + row * step, line, size));
  return {
    nodes: [
      groupNode('layer', [lineNode(left, top, right, top, 0.5)]),
      {
        ...groupNode('heading', [textNode(left, top + 9, 'What it rests on', { size: 7.5, weight: 600 })]),
        level: 2,
      },
      groupNode('note', [...column(first, left), ...column(second, left + room + gap)]),
    ],
    top,
  };
}

/** Where no sentence is broken between the columns and the longer one is as short as it can be. */
function twoColumns(sentences: readonly (readonly string[])[]): readonly [string[], string[]] {
  const lengths = sentences.map(({ length }) => length);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  let [best, cut, at] = [total, sentences.length, 0];
  lengths.forEach((length, index) => {
    at += length;
    if (Math.max(at, total - at) < best) [best, cut] = [Math.max(at, total - at), index + 1];
  });
  return [sentences.slice(0, cut).flat(), sentences.slice(cut).flat()];
}

function moneyConventions({ money }: ComparisonFacts): readonly string[] {
  if (money === undefined) return [];
  return [
    money.basis,
    ...(money.outlook?.likely.conventions ?? []),
    ...(money.outlook === undefined || money.outlook.tornado.length === 0 ? [] : [outlookRule]),
  ];
}
