import { micros } from '../../../ground/base/index.ts';
import type { Fill, SceneNode } from '../../../ground/scene/index.ts';
import type { Motion } from '../../../ground/study/index.ts';
import { motionFacts, motionFactsOf } from '../../../ground/tables/index.ts';
import { timeNumber } from '../../../ground/units/index.ts';
import { handHeight, heightOfPlace } from './hand-height.ts';
import type { HandSide } from './hand-side.ts';
import { box, frame, pale, wordsAt } from './marks.ts';
import { motionWay, wordWidth } from './motion-words.ts';
import { objectNodes } from './object-nodes.ts';
import type { MotionPiece, Piece, RunPiece } from './pieces.ts';
import type { TimeScale } from './scale.ts';
import type { ScoreGround } from './score-input.ts';

/** Narrower blocks show their colour only: a pattern would have no room to repeat. CSS pixels. */
const leastPatterned = 5;
const codeSize = 13;
const hatch = 5;

interface Drawing {
  readonly ground: ScoreGround;
  readonly side: HandSide;
  readonly scale: TimeScale;
  readonly nodes: SceneNode[];
}

/** A hand's motions: blocks that stand on the axis, with their words at the outer edge. */
export function handNodes(
  ground: ScoreGround,
  side: HandSide,
  scale: TimeScale,
  pieces: readonly Piece[],
): SceneNode[] {
  const drawing: Drawing = { ground, side, scale, nodes: [] };
  const { items } = ground.method[side.hand];
  for (const piece of pieces) {
    if (piece.piece === 'run') run(drawing, piece);
    else {
      const motion = items[piece.index];
      if (motion !== undefined) block(drawing, motion, piece);
    }
  }
  if (side.words < 30) return drawing.nodes;
  return [...drawing.nodes, ...objectNodes(side, scale, pieces, items)];
}

function block(drawing: Drawing, motion: Motion, piece: MotionPiece): void {
  const { scale, side, nodes } = drawing;
  const x = scale.cutX(piece.fromUs);
  const width = Math.max(scale.hair, scale.cutX(piece.toUs) - x);
  if (motion.kind === 'unmarked') {
    unmarked(drawing, x, width);
    return;
  }
  const height = Math.round(side.colour * handHeight(motion.kind));
  const area = { x, y: side.top(0, height), width, height };
  if (motion.said === 'proposed') proposed(nodes, motion, area);
  else {
    const { colour, pattern } = motionFactsOf(motion.kind);
    const patterned = width >= leastPatterned && pattern !== 'solid' && pattern !== 'plain';
    nodes.push(box(x, area.y, width, height, patterned ? { ink: { colour }, pattern } : { ink: { colour } }));
    // On a screen the colour leads; under a thin coat of it the pattern stays legible and does not flicker.
    if (patterned) nodes.push(box(x, area.y, width, height, { ink: { colour }, opacity: 0.35 }));
  }
  edges(drawing, area, piece.fromUs);
  if (side.words > 0) words(drawing, motion, piece, x, width);
}

/** The skyline in thin ink, so that black stands out from dark paper and lemon from white; a gap of paper before each. */
function edges(
  { nodes, scale, side }: Drawing,
  area: { readonly x: number; readonly width: number; readonly height: number },
  fromUs: number,
): void {
  nodes.push(
    box(area.x, side.top(area.height - scale.hair, scale.hair), area.width, scale.hair, { ink: 'soft' }),
  );
  if (area.width < 3 || fromUs < scale.view.fromUs) return;
  nodes.push(box(area.x, side.top(0, area.height), Math.max(scale.hair, 1), area.height, { ink: 'paper' }));
  const rest = side.colour + Math.min(side.words, 18) - area.height;
  if (area.width >= 12 && side.words > 0)
    nodes.push(box(area.x, side.top(area.height, rest), scale.hair, rest, { ink: 'rule' }));
}

function unmarked({ nodes, side, scale }: Drawing, x: number, width: number): void {
  if (width < 4 || side.colour < 8) return;
  const area = { x: x + 1, y: side.top(0, side.colour), width: width - 2, height: side.colour };
  nodes.push(frame(area, 'rule', scale.hair, [4, 4]));
  const text = ['not marked yet', 'unmarked'].find((wish) => wordWidth(wish, 12, 400) <= width - 12);
  if (text === undefined || side.colour < 20) return;
  const look = { size: 12, weight: 400, ink: 'soft', align: 'middle' } as const;
  nodes.push(wordsAt(x + width / 2, side.top(side.colour / 2, 0), text, look));
}

/** What the program only proposes: a pale body in a hatched frame, until a person confirms it. */
function proposed(
  nodes: SceneNode[],
  motion: Motion,
  area: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): void {
  const ink = { colour: motionFactsOf(motion.kind).colour };
  nodes.push(box(area.x, area.y, area.width, area.height, { ink, pattern: 'diagonal', opacity: 0.6 }));
  const [width, height] = [area.width - 2 * hatch, area.height - 2 * hatch];
  if (width <= 0 || height <= 0) return;
  nodes.push(box(area.x + hatch, area.y + hatch, width, height, { ink: 'paper' }));
  nodes.push(box(area.x + hatch, area.y + hatch, width, height, { ink, opacity: 0.2 }));
}

/** The code next to the colour, then the time, then the way; each only where it fits whole. */
function words(
  { ground, nodes, side }: Drawing,
  motion: Motion,
  piece: MotionPiece,
  x: number,
  width: number,
): void {
  const { code } = motionFactsOf(motion.kind);
  const open = motion.said === 'proposed';
  const text = open ? `${code}?` : code;
  const codeWidth = wordWidth(text, codeSize, 600);
  if (codeWidth > width - 4) return;
  const middle = side.top(side.colour + 10, 0);
  let at = x + Math.min(4, (width - codeWidth) / 2);
  nodes.push(wordsAt(at, middle, text, { size: codeSize, weight: 600, ink: 'ink', italic: open }));
  at += codeWidth + 6;
  const time = timeNumber(micros(Math.round(piece.toUs - piece.fromUs)), ground.unit);
  const way = motionWay(motion, ground.placeName ?? (() => undefined));
  for (const more of way === undefined ? [time] : [time, way]) {
    const moreWidth = wordWidth(more, 11, 400);
    if (at + moreWidth > x + width - 4) return;
    nodes.push(wordsAt(at, middle, more, { size: 11, weight: 400, ink: 'soft' }));
    at += moreWidth + 10;
  }
}

/** One fill for each kind: a picture may hold thousands of them. */
const fills: readonly (Fill | undefined)[] = motionFacts.map(({ kind, colour }) =>
  kind === 'unmarked' ? undefined : { ink: { colour } },
);

/**
 * Motions too narrow to be told apart: their kinds stacked on the axis, each as thick as its share of the time. The
 * edges lie on whole pixels of the screen; what one band loses by rounding the next one gains.
 */
function run({ nodes, side, scale }: Drawing, piece: RunPiece): void {
  const x = scale.cutX(piece.fromUs);
  const width = Math.max(scale.hair, scale.cutX(piece.toUs) - x);
  const perUs = side.colour / (piece.toUs - piece.fromUs);
  let exact = 0;
  let from = 0;
  for (let index = 0; index < piece.kinds.length; index += 1) {
    const place = piece.kinds[index] as number;
    const fill = fills[place];
    if (fill === undefined) continue;
    exact += (piece.times[index] as number) * perUs * (heightOfPlace[place] as number);
    const to = Math.round(exact / scale.hair) * scale.hair;
    const look = piece.proposed[index] === true ? { ...fill, opacity: pale } : fill;
    if (to > from) nodes.push(box(x, side.top(from, to - from), width, to - from, look));
    from = to;
  }
  if (from > 0)
    nodes.push(box(x, side.top(from - scale.hair, scale.hair), width, scale.hair, { ink: 'soft' }));
}
