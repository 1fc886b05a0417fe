import type { Micros } from '../../../ground/base/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { HandMotion } from './hand-speed.ts';
import type { HandMotions } from './speed-ribbon.ts';

/** A place of a hand at a moment; the moments lie at equal time, so the distance of two neighbours is speed. */
export interface GraphDot {
  readonly x: number;
  readonly y: number;
  /** Real time since the start of the span, in microseconds. */
  readonly time: number;
  /** The frame that is shown at this moment. */
  readonly frame: number;
  /** The hand was not seen just before: no path leads here. */
  readonly afterGap: boolean;
}

/** The path of one hand in one cycle or span. */
export interface GraphPath {
  readonly hand: Hand;
  /** Which of the spans it is, from 0. */
  readonly span: number;
  readonly dots: readonly GraphDot[];
}

export interface GraphSpan {
  readonly from: number;
  readonly to: number;
}

/** More dots than these in a span are a blot. */
const mostDots = 4000;

/**
 * The chronocyclegraph after F. B. and L. M. Gilbreth (Applied Motion Study, 1917): the path of each hand in one cycle or
 * in several laid over one another, as dots at equal time. Between two frames a place is read on the straight line; where
 * a hand is not seen there is no dot.
 * @param every time from dot to dot in microseconds of real time, above 0
 * @param timeOf real time of a frame in microseconds
 */
export function chronocyclegraph(
  motions: HandMotions,
  spans: readonly GraphSpan[],
  every: number,
  timeOf: (frame: number) => Micros | number,
): readonly GraphPath[] {
  if (!(every > 0)) throw new RangeError(`dots must lie a time above 0 apart, got ${every}`);
  return spans.flatMap((span, index) =>
    hands.flatMap((hand) => {
      const motion = motions[hand];
      const dots = motion === undefined ? [] : dotsOf(motion, span, every, timeOf);
      return dots.length === 0 ? [] : [{ hand, span: index, dots }];
    }),
  );
}

function dotsOf(
  { x, y }: HandMotion,
  { from, to }: GraphSpan,
  every: number,
  timeOf: (frame: number) => number,
): GraphDot[] {
  const last = Math.min(to, x.length - 1);
  const dots: GraphDot[] = [];
  let frame = Math.max(0, from);
  let afterGap = true;
  const start = timeOf(frame);
  for (let count = 0; count < mostDots; count += 1) {
    const time = start + count * every;
    while (frame < last && timeOf(frame + 1) <= time) frame += 1;
    if (frame >= last && (time > timeOf(last) || last < from)) break;
    const place = placeAt(x, y, frame, last, time, timeOf);
    if (place !== undefined) dots.push({ ...place, time: count * every, frame, afterGap });
    afterGap = place === undefined;
  }
  return dots;
}

function placeAt(
  x: Float32Array,
  y: Float32Array,
  frame: number,
  last: number,
  time: number,
  timeOf: (frame: number) => number,
): { readonly x: number; readonly y: number } | undefined {
  const [ax, ay] = [x[frame] as number, y[frame] as number];
  if (Number.isNaN(ax)) return undefined;
  if (frame >= last || timeOf(frame) === time) return { x: ax, y: ay };
  const [bx, by] = [x[frame + 1] as number, y[frame + 1] as number];
  if (Number.isNaN(bx)) return undefined;
  const share = (time - timeOf(frame)) / (timeOf(frame + 1) - timeOf(frame));
  return { x: ax + (bx - ax) * share, y: ay + (by - ay) * share };
}
