import type { Hand, Method, Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import type { SpeedRibbon } from '@evenhand/core/record';

/** What is chosen on the score: one motion, one cycle, or a span of one hand or of both. */
export type ScoreSelection =
  | { readonly kind: 'motion'; readonly hand: Hand; readonly motionId: string }
  | { readonly kind: 'span'; readonly hand: Hand | 'both'; readonly from: number; readonly to: number };

/** Everything the surface shows. Plain values; the surface compares them by identity and paints what changed. */
export interface ScoreState {
  readonly study: Study;
  readonly method: Method;
  readonly unit: TimeUnit;
  /** The boundary at which the film stands: a frame in a filmed method, microseconds in any other. */
  readonly playhead: number;
  readonly playing: boolean;
  readonly look: 'light' | 'dark';
  readonly selection?: ScoreSelection | undefined;
  /** The span that is played over and over. */
  readonly loop?: { readonly from: number; readonly to: number } | undefined;
  /** Stretches that are pointed out; everything else is paled. */
  readonly lit?:
    | readonly { readonly hand: Hand | 'both'; readonly from: number; readonly to: number }[]
    | undefined;
  /** Hands whose row is being marked now; the others are drawn softer. Left out: both. */
  readonly activeHands?: readonly Hand[] | undefined;
  /** The speed of the hands, in a ribbon under the score. */
  readonly ribbon?: SpeedRibbon | undefined;
}

/** `preview` many times, then exactly one of `commit` (one undo entry) or `cancel` (nothing happened). */
export type GesturePhase = 'preview' | 'commit' | 'cancel';

/** What a person asks for by pointer. The surface edits nothing: whoever listens turns it into edits or movement. */
export type ScoreEvent =
  | {
      readonly type: 'seek';
      readonly boundary: number;
      /** `scrub` while the pointer is still down, `settle` when it is up. */
      readonly phase: 'scrub' | 'settle';
    }
  | { readonly type: 'select'; readonly hand: Hand; readonly motionId: string; readonly extend: boolean }
  | { readonly type: 'select-cycle'; readonly cycleId: string; readonly extend: boolean }
  | {
      readonly type: 'select-span';
      readonly hand: Hand | 'both';
      readonly from: number;
      readonly to: number;
      readonly phase: GesturePhase;
    }
  | { readonly type: 'select-none' }
  | {
      readonly type: 'move-boundary';
      readonly hand: Hand;
      /** The motion whose start moves; the one before it ends there. */
      readonly motionId: string;
      readonly to: number;
      readonly phase: GesturePhase;
    }
  | { readonly type: 'move-row-end'; readonly hand: Hand; readonly to: number; readonly phase: GesturePhase }
  | {
      readonly type: 'move-cycle';
      readonly cycleId: string;
      readonly to: number;
      readonly phase: GesturePhase;
    }
  | { readonly type: 'move-cycles-end'; readonly to: number; readonly phase: GesturePhase }
  | { readonly type: 'view-changed'; readonly fromUs: number; readonly toUs: number };

export interface ScoreOptions {
  readonly onEvent: (event: ScoreEvent) => void;
  /** What someone hears who cannot see the canvas; it should say where the list of motions is. */
  readonly label?: string;
}

/** What `ScoreSurface` (constructor: host element, options) offers. */
export interface ScoreControls {
  /** Shows another state; painted in the next animation frame. The first state shows the whole film. */
  update(state: ScoreState): void;
  /** Shows a span of boundaries over the whole width. */
  zoomTo(from: number, to: number): void;
  /** Shows everything. */
  fit(): void;
  /** Zooms around the playhead (or the middle when it is out of sight): 2 shows half the time, 0.5 twice. */
  zoomBy(factor: number): void;
  /** Pans by a share of what is shown: 0.5 half a page forward, −1 a page back. */
  panBy(share: number): void;
  /** Pans just so far that a boundary can be seen. */
  reveal(boundary: number): void;
  /** The real time shown, in microseconds. */
  readonly view: { readonly fromUs: number; readonly toUs: number };
  /** Throws away the gesture that is going on, as Escape does; false when there is none. */
  cancelGesture(): boolean;
  /** Resolves when everything asked for so far has been painted. */
  idle(): Promise<void>;
  dispose(): void;
}
