import type { Hand, Method, MethodClock } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import type { SpeedRibbon } from '../tracks/speed-ribbon.ts';
import type { TimeView } from './view.ts';

/** What is chosen on the score: one motion, or a span of one hand or of both. */
export type ScoreSelection =
  | { readonly kind: 'motion'; readonly hand: Hand; readonly motionId: string }
  | { readonly kind: 'span'; readonly hand: Hand | 'both'; readonly from: number; readonly to: number };

/** A stretch of one hand, or of both, that is pointed out. */
export interface LitSpan {
  readonly hand: Hand | 'both';
  readonly from: number;
  readonly to: number;
}

/** Which boundary is meant: the start of a motion or a cycle, or, with no id, the end of the row. */
export interface BoundaryRef {
  readonly row: Hand | 'cycles';
  readonly id: string | undefined;
}

/** A boundary on its way to another place while a pointer still holds it. */
export interface ScorePreview extends BoundaryRef {
  readonly to: number;
}

/** What the ground of the score is made of: everything that stands still while the film plays. */
export interface ScoreGround {
  readonly method: Method;
  readonly clock: MethodClock;
  readonly view: TimeView;
  /** The span of time that the overview shows. */
  readonly whole: TimeView;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
  readonly ribbonHeight?: number | undefined;
  /** The speed of the hands, shown in the room that `ribbonHeight` keeps free. */
  readonly ribbon?: SpeedRibbon | undefined;
  readonly unit: TimeUnit;
  /** The real time that reads zero on the axis; left out: the first boundary there can be. */
  readonly originUs?: number | undefined;
  readonly preview?: ScorePreview | undefined;
  /** Hands whose row is being worked on; the other one is drawn softer. */
  readonly activeHands?: readonly Hand[] | undefined;
  /** The name of a place by its id, for the words on a motion. */
  readonly placeName?: ((id: string) => string | undefined) | undefined;
}

/** The ground, and what moves over it. */
export interface ScoreInput extends ScoreGround {
  readonly playhead: number;
  readonly selection?: ScoreSelection | undefined;
  /** A span that a pointer is drawing now. */
  readonly drawn?: Extract<ScoreSelection, { kind: 'span' }> | undefined;
  readonly loop?: { readonly from: number; readonly to: number } | undefined;
  readonly hover?: BoundaryRef | undefined;
  /** Stretches that are shown to somebody; everything else is paled. */
  readonly lit?: readonly LitSpan[] | undefined;
}
