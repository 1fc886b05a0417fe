import { palmAnchors, palmInput } from './palm-anchors.ts';
import { inPicture, type Point, type Square } from './picture.ts';

/** A palm that the first model believes to see; in pixels of the picture. */
export interface Palm {
  /** 0 to 1. */
  readonly score: number;
  /** The palm's upright box. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Seven points; the first is the middle of the wrist, the third the knuckle of the middle finger. */
  readonly points: readonly Point[];
}

const numbersPerBox = 18;
const pointsPerBox = 7;
const anchors = palmAnchors();

/** Boxes that overlap more than this are one palm (as published with the model). */
const sameOverlap = 0.3;

/**
 * The palms in what the model gave for a square of the picture, best first.
 * @param boxes 2016 × 18 numbers: middle and size of the box, then its points, in pixels of the model from its anchor
 * @param scores 2016 log-odds
 * @param least score from which a palm counts, 0 to 1
 */
export function findPalms(boxes: Float32Array, scores: Float32Array, square: Square, least: number): Palm[] {
  const leastOdds = Math.log(least / (1 - least));
  const found: Palm[] = [];
  for (let box = 0; box < scores.length; box += 1) {
    const odds = scores[box] as number;
    if (odds >= leastOdds) found.push(decodeBox(boxes, box, 1 / (1 + Math.exp(-odds)), square));
  }
  return joinOverlapping(found);
}

function decodeBox(boxes: Float32Array, box: number, score: number, square: Square): Palm {
  const at = box * numbersPerBox;
  const place = (index: number): Point =>
    inPicture(
      square,
      (boxes[at + index] as number) / palmInput + (anchors[2 * box] as number),
      (boxes[at + index + 1] as number) / palmInput + (anchors[2 * box + 1] as number),
    );
  const scale = square.side / palmInput;
  const middle = place(0);
  const [width, height] = [(boxes[at + 2] as number) * scale, (boxes[at + 3] as number) * scale];
  const points = Array.from({ length: pointsPerBox }, (_, point) => place(4 + 2 * point));
  return { score, x: middle.x - width / 2, y: middle.y - height / 2, width, height, points };
}

/** Weighted non-maximum suppression: boxes over one palm become their mean, weighted by score. */
export function joinOverlapping(palms: readonly Palm[]): Palm[] {
  let rest = [...palms].sort((a, b) => b.score - a.score);
  const joined: Palm[] = [];
  for (let best = rest[0]; best !== undefined; best = rest[0]) {
    const first = best;
    const same = rest.filter((palm) => palm === first || overlap(palm, first) > sameOverlap);
    rest = rest.filter((palm) => !same.includes(palm));
    joined.push(meanPalm(same, first.score));
  }
  return joined;
}

function meanPalm(palms: readonly Palm[], score: number): Palm {
  const weight = palms.reduce((sum, palm) => sum + palm.score, 0);
  const mean = (of: (palm: Palm) => number) =>
    palms.reduce((sum, palm) => sum + of(palm) * palm.score, 0) / weight;
  const points = Array.from({ length: pointsPerBox }, (_, point) => ({
    x: mean((palm) => palm.points[point]?.x ?? 0),
    y: mean((palm) => palm.points[point]?.y ?? 0),
  }));
  return {
    score,
    x: mean((palm) => palm.x),
    y: mean((palm) => palm.y),
    width: mean((palm) => palm.width),
    height: mean((palm) => palm.height),
    points,
  };
}

/** Intersection over union of two boxes, 0 to 1. */
function overlap(a: Palm, b: Palm): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  if (across <= 0 || down <= 0) return 0;
  const common = across * down;
  return common / (a.width * a.height + b.width * b.height - common);
}
