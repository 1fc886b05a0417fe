import { fitText, type SceneNode } from '../../../ground/scene/index.ts';
import type { Motion } from '../../../ground/study/index.ts';
import type { HandSide } from './hand-side.ts';
import { box, wordsAt } from './marks.ts';
import { wordWidth } from './motion-words.ts';
import type { Piece } from './pieces.ts';
import type { TimeScale } from './scale.ts';

const size = 11.5;
/** From the outer edge of a hand to the line of objects. */
const offEdge = 9;
/** Fewer letters of a name say nothing. */
const leastLetters = 5;

interface ObjectSpan {
  readonly object: string;
  readonly fromUs: number;
  readonly toUs: number;
}

/** Motions in a row with the same object, taken together; merged motions and those without an object part them. */
function objectSpans(pieces: readonly Piece[], items: readonly Motion[]): ObjectSpan[] {
  const spans: ObjectSpan[] = [];
  let open: ObjectSpan | undefined;
  for (const piece of pieces) {
    const object = piece.piece === 'motion' ? items[piece.index]?.object : undefined;
    if (object !== undefined && open?.object === object) open = { ...open, toUs: piece.toUs };
    else {
      if (open !== undefined) spans.push(open);
      open = object === undefined ? undefined : { object, fromUs: piece.fromUs, toUs: piece.toUs };
    }
  }
  return open === undefined ? spans : [...spans, open];
}

/** What a hand has to do with, at its outer edge: each object once, on a line as long as the hand is busy with it. */
export function objectNodes(
  side: HandSide,
  scale: TimeScale,
  pieces: readonly Piece[],
  items: readonly Motion[],
): SceneNode[] {
  return objectSpans(pieces, items).flatMap((span) => spanNodes(side, scale, span));
}

function spanNodes(side: HandSide, scale: TimeScale, span: ObjectSpan): SceneNode[] {
  const left = scale.cutX(span.fromUs) + 2;
  const right = scale.cutX(span.toUs) - 1;
  if (right - left < 6) return [];
  const { hair } = scale;
  const off = side.height - offEdge;
  const line = (from: number, to: number) =>
    to - from < 2 ? [] : [box(from, side.top(off, hair), to - from, hair, { ink: 'faint' })];
  const tick = (x: number) => box(x, side.top(off - 3, 6 + hair), hair, 6 + hair, { ink: 'faint' });
  const ends = [
    ...(span.fromUs >= scale.view.fromUs ? [tick(left)] : []),
    ...(span.toUs <= scale.view.toUs ? [tick(right - hair)] : []),
  ];
  const text = named(span.object, right - left - 10);
  if (text === '') return [...line(left, right), ...ends];
  const half = wordWidth(text, size, 400) / 2;
  const centre = (left + right) / 2;
  return [
    ...line(left, centre - half - 4),
    ...line(centre + half + 4, right),
    ...ends,
    wordsAt(centre, side.top(off + hair / 2, 0), text, { size, weight: 400, ink: 'ink', align: 'middle' }),
  ];
}

function named(object: string, room: number): string {
  if (wordWidth(object, size, 400) <= room) return object;
  const cut = fitText(object, room, size, 400);
  return cut.length > leastLetters ? cut : '';
}
