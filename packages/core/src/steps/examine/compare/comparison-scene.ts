import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
  textWidth,
} from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { type TimeUnit, timeUnits } from '../../../ground/units/index.ts';
import { axisSteps, axisTicks, handHeight } from '../../record/index.ts';
import type { Piece } from '../reading/index.ts';
import type { ComparedCycle, Comparison } from './comparison.ts';
import { comparisonWords } from './comparison-words.ts';

export interface ComparisonLook {
  /** Paper units, 400 or more. */
  readonly width: number;
  readonly unit: TimeUnit;
  /** Height of the blocks of a hand in paper units; 54 when left out. */
  readonly blocks?: number | undefined;
}

/** Heights in paper units. A hand's row has room for its blocks and, at the outer edge, for the letter codes. */
const sizes = {
  gutter: 76,
  right: 12,
  title: 22,
  codes: 16,
  blocks: 54,
  axis: 22,
  gap: 26,
  foot: 8,
} as const;
/** Low blocks belong to a desk that has little room, so their cycles stand closer together. */
const gapBetween = (blocks: number) => (blocks < 30 ? 8 : sizes.gap);
const sideHeight = (blocks: number) => sizes.title + 2 * (sizes.codes + blocks) + sizes.axis;

/** Where time and rows lie in the picture, so that a page can stand a line on it and hear where it is pointed at. */
export interface ComparisonPlaces {
  readonly x: (us: number) => number;
  /** Microseconds since the start of the cycle, held within the longer one. */
  readonly timeAt: (x: number) => number;
  readonly upper: { readonly top: number; readonly bottom: number };
  readonly lower: { readonly top: number; readonly bottom: number };
}

export function comparisonPlaces(
  { upper, lower }: Comparison,
  width: number,
  blocks: number = sizes.blocks,
): ComparisonPlaces {
  const length = Math.max(upper.time, lower.time);
  const room = width - sizes.gutter - sizes.right;
  const side = sideHeight(blocks);
  const second = side + gapBetween(blocks);
  return {
    x: (us) => sizes.gutter + (us / length) * room,
    timeAt: (x) => Math.min(length, Math.max(0, ((x - sizes.gutter) / room) * length)),
    upper: { top: sizes.title, bottom: side },
    lower: { top: second + sizes.title, bottom: second + side },
  };
}

interface Plan {
  readonly look: ComparisonLook;
  readonly blocks: number;
  readonly x: (us: number) => number;
  /** The longer of the two cycles, microseconds. */
  readonly length: number;
}

/** Two cycles one under the other on one time scale, each with its left hand above the axis and its right hand below. */
export function comparisonScene(comparison: Comparison, look: ComparisonLook): Scene {
  const { upper, lower } = comparison;
  const length = Math.max(upper.time, lower.time);
  const { blocks = sizes.blocks } = look;
  const plan: Plan = { look, blocks, length, x: comparisonPlaces(comparison, look.width).x };
  const words = comparisonWords(comparison, look.unit);
  const side = sideHeight(blocks);
  const second = side + gapBetween(blocks);
  const ends = endLines(plan, [
    [upper.time, 0],
    [lower.time, second],
  ]);
  return {
    width: look.width,
    height: second + side + sizes.foot,
    title: `${upper.name} and ${lower.name} on one time scale`,
    description: `${words.upper} ${words.lower} ${words.difference}`,
    nodes: [
      ...ends,
      ...sideNodes(plan, upper, 0, words.upper),
      ...sideNodes(plan, lower, second, words.lower),
    ],
  };
}

/** Where each cycle ends, a line through the rows of both, so that the difference is seen at a glance. */
function endLines(
  { x, length, blocks }: Plan,
  list: readonly (readonly [time: number, top: number])[],
): SceneNode[] {
  const side = sideHeight(blocks);
  return list.flatMap(([time, top]) => {
    const at = x(time);
    const own = lineNode(at, top + sizes.title, at, top + side, 1.5, 'ink');
    const whole = lineNode(at, sizes.title, at, 2 * side + gapBetween(blocks), 1, 'soft', [3, 3]);
    return time < length ? [whole, own] : [own];
  });
}

function sideNodes(plan: Plan, { cycle }: ComparedCycle, top: number, title: string): SceneNode[] {
  const axisTop = top + sizes.title + sizes.codes + plan.blocks;
  const shown = fitText(title, plan.look.width - sizes.gutter, 13, 600);
  return [
    groupNode('heading', [textNode(sizes.gutter, top + 15, shown, { size: 13, weight: 600 })]),
    groupNode('layer', axisNodes(plan, axisTop)),
    ...hands.map((hand) => groupNode('figure', rowNodes(plan, cycle[hand], hand, axisTop), `${hand} hand`)),
  ];
}

function axisNodes({ look, x, length }: Plan, top: number): SceneNode[] {
  const bottom = top + sizes.axis;
  const end = x(length);
  const steps = axisSteps(length / (end - sizes.gutter), look.unit, 60);
  const ticks = axisTicks(0, length, 0, steps, look.unit).flatMap(({ us, text }): SceneNode[] => {
    const at = x(us);
    const long = text === undefined ? 3 : 5;
    const marks = [
      lineNode(at, top, at, top + long, 1, 'soft'),
      lineNode(at, bottom - long, at, bottom, 1, 'soft'),
    ];
    if (text === undefined || at + textWidth(text, 11, 400) / 2 > end + sizes.right) return marks;
    return [...marks, textNode(at, top + 15, text, { size: 11, align: 'middle' })];
  });
  return [
    lineNode(sizes.gutter, top, end, top, 1, 'ink'),
    lineNode(sizes.gutter, bottom, end, bottom, 1, 'ink'),
    textNode(sizes.gutter - 16, top + 15, timeUnits[look.unit].symbol, {
      size: 11,
      align: 'end',
      ink: 'soft',
    }),
    ...ticks,
  ];
}

function rowNodes(plan: Plan, pieces: readonly Piece[], hand: Hand, axisTop: number): SceneNode[] {
  const name = hand === 'left' ? 'Left hand' : 'Right hand';
  const half = plan.blocks / 2;
  const middle = hand === 'left' ? axisTop - half : axisTop + sizes.axis + half;
  return [
    textNode(sizes.gutter - 8, middle + 4, name, { size: 12, weight: 600, align: 'end' }),
    ...pieces.flatMap((piece) => blockNodes(plan, piece, hand, axisTop)),
  ];
}

function blockNodes({ x, blocks }: Plan, piece: Piece, hand: Hand, axisTop: number): SceneNode[] {
  const [left, right] = [x(piece.start), x(piece.end)];
  const width = right - left;
  const facts = motionFactsOf(piece.kind);
  if (piece.kind === 'unmarked' || width <= 0) return [];
  const height = blocks * handHeight(piece.kind);
  const y = hand === 'left' ? axisTop - height : axisTop + sizes.axis;
  const area = { x: left, y, width, height };
  const stroke = { ink: 'paper', width: 0.8 } as const;
  const { colour } = facts;
  const nodes: SceneNode[] = [
    {
      kind: 'rect',
      ...area,
      fill: { ink: { colour }, ...(width >= 5 ? { pattern: facts.pattern } : {}) },
      stroke,
    },
  ];
  if (width >= 5) nodes.push({ kind: 'rect', ...area, fill: { ink: { colour }, opacity: 0.35 } });
  if (textWidth(facts.code, 11, 600) > width - 2) return nodes;
  const words = hand === 'left' ? axisTop - blocks - 4 : axisTop + sizes.axis + blocks + 12;
  return [
    ...nodes,
    textNode(left + width / 2, words, facts.code, { size: 11, weight: 600, align: 'middle' }),
  ];
}
