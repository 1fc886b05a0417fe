import { groupNode, papers, type Scene, type SceneNode } from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { ComparisonFacts } from '../comparison/comparison.ts';
import { unitTimes } from '../pace/pace.ts';
import { type RunPair, representativeRuns } from './cycle-run.ts';
import { cycleTimesPicture } from './cycle-times-picture.ts';
import { decompositionPicture } from './decomposition-picture.ts';
import { moneyTable } from './money-table.ts';
import { motionLegend } from './motion-legend.ts';
import { paceTable } from './pace-table.ts';
import { figuresBlock, headBlock } from './page-head.ts';
import { type Block, margin, type Page, type ProofPageLook, partHeading, text } from './page-parts.ts';
import { restBlock } from './page-rest.ts';
import { placeScene } from './place-scene.ts';
import { twoScoresOnOneScale, unevenWords } from './two-scores.ts';
import { wrapWhole } from './wrap-whole.ts';

export type { ProofPageLook } from './page-parts.ts';

/**
 * The proof on one page: what was compared, the claim, the figures, both methods on one time scale, where the difference
 * comes from, money if a case was given, and what it all rests on.
 */
export function proofPage(study: Study, facts: ComparisonFacts, look: ProofPageLook): Scene {
  const { width, height } = papers[look.paper];
  const page: Page = { ...look, study, facts, left: margin.side, right: width - margin.side };
  const { proof } = facts;
  const head = headBlock(page);
  const figures = figuresBlock(page, head.bottom + 6);
  const rest = restBlock(page, height - margin.bottom);
  const charts = chartsBlock(page, figures.bottom + 8, (rest.top - figures.bottom) * 0.4);
  const lower = lowerBlock(page, charts.bottom + 8, rest.top - 6);
  const { before, after } = proof.difference;
  return {
    width,
    height,
    title: `Comparison of ${before.name} and ${after.name}`,
    description: proof.claim.sentence,
    nodes: [...head.nodes, ...figures.nodes, ...charts.nodes, ...lower, ...rest.nodes],
  };
}

/** Both methods on one time scale, as large as the room allows, and what their letters and patterns mean. */
function chartsBlock({ left, right, facts, unit }: Page, top: number, room: number): Block {
  const { before, after } = facts.proof;
  const runs = representativeRuns(before, after);
  const note = runs.even ? [] : wrapWhole(unevenWords, right - left, 7, 400, 2);
  const under = top + 13 + note.length * 9;
  const key = (y: number) => motionLegend(kindsOf(runs), { left, right, top: y, size: 6.2 });
  const drawn = (row: number) =>
    twoScoresOnOneScale(before, after, { width: right - left, unit, size: 6.8, row });
  const spare = room - (under - top) - drawn(0).height - key(0).bottom;
  const scene = drawn(Math.min(30, Math.max(9, spare / 4)));
  const legend = key(under + scene.height + 3);
  return {
    nodes: [
      partHeading(left, top + 8, 'What both hands do, on one time scale'),
      groupNode(
        'note',
        note.map((line, index) => text(left, top + 19 + index * 9, line, 7)),
      ),
      groupNode('figure', placeScene(scene, left, under), scene.title),
      ...legend.nodes,
    ],
    bottom: legend.bottom,
  };
}

function kindsOf({ before, after }: RunPair): ReadonlySet<MotionKind> {
  const cycles = [before.joined, after.joined];
  return new Set(cycles.flatMap(({ left, right }) => [...left, ...right].map(({ kind }) => kind)));
}

/** Left where the difference comes from, right the cycle times, and the money or else the pace. */
function lowerBlock(page: Page, top: number, bottom: number): SceneNode[] {
  const { left, right, facts, unit } = page;
  const { proof, money } = facts;
  const split = left + (right - left) * 0.54;
  const times = cycleTimesPicture(
    proof.difference,
    { before: unitTimes(proof.before), after: unitTimes(proof.after) },
    { width: right - split, unit, size: 7.5 },
  );
  const room = { left: split, right, top: top + 14 + times.height + 14, bottom, unit };
  return [
    ...differenceNodes(page, { top, bottom, width: split - left - 16 }),
    partHeading(split, top + 8, 'Every cycle that counts, a unit'),
    groupNode('figure', placeScene(times, split, top + 14), times.title),
    ...(money === undefined ? paceTable(proof.pace, room) : moneyTable(money, room)),
  ];
}

/** With as many of the largest steps standing alone as there is room for. */
function differenceNodes(
  { left, facts, unit }: Page,
  { top, bottom, width }: { readonly top: number; readonly bottom: number; readonly width: number },
): SceneNode[] {
  const { decomposition, difference } = facts.proof;
  const names = { before: difference.before.name, after: difference.after.name };
  const room = bottom - top - 14;
  const drawn = (most: number) =>
    decompositionPicture(decomposition, { width, unit, names, most, size: 7.5 });
  let most = 16;
  while (most > 0 && drawn(most).height > room) most -= 1;
  const scene = drawn(most);
  const scale = Math.min(1, room / scene.height);
  return [
    partHeading(left, top + 8, 'Where the difference comes from, a unit'),
    groupNode('figure', placeScene(scene, left, top + 14, scale), scene.title),
  ];
}
