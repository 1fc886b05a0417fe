import type { Hand, Method, MethodClock } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import type { TimeView } from './view.ts';

/** What is chosen on the score: one motion, or a span of one hand or of both. */
export type ScoreSelection =
  | { readonly kind: 'motion'; readonly hand: Hand; readonly motionId: string }
  | { readonly kind: 'span'; readonly hand: Hand | 'both'; readonly from: number; readonly to: number };

/** Which boundary is meant: the start of a motion or a cycle, or, with no id, the end of the row. */
export interface BoundaryRef {
  readonly row: Hand | 'cycles';
  readonly id: string | undefined;
}

/** A boundary on its way to another place while a pointer still holds it. */
export interface ScorePreview extends BoundaryRef {
  readonly to: number;
}

/** Everything a picture of the score is made of. */
export interface ScoreInput {
  readonly method: Method;
  readonly clock: MethodClock;
  readonly view: TimeView;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
  readonly ribbonHeight?: number | undefined;
  readonly unit: TimeUnit;
  /** The real time that reads zero on the axis; left out: the first boundary there can be. */
  readonly originUs?: number | undefined;
  readonly playhead: number;
  readonly selection?: ScoreSelection | undefined;
  readonly loop?: { readonly from: number; readonly to: number } | undefined;
  readonly hover?: BoundaryRef | undefined;
  readonly preview?: ScorePreview | undefined;
  readonly activeHands?: readonly Hand[] | undefined;
  /** The name of a place by its id. */
  readonly placeName?: ((id: string) => string | undefined) | undefined;
  /** Width of a line of text in CSS pixels. */
  readonly textWidth: (text: string, size: number, weight: 400 | 600) => number;
}
