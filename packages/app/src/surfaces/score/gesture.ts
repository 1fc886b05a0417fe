import type { Hand, MethodClock } from '@evenhand/core/ground/study';
import type {
  BoundaryRef,
  ScoreAreas,
  ScoreHit,
  ScorePreview,
  ScoreSelection,
  TimeScale,
} from '@evenhand/core/record';
import type { ScoreEvent, ScoreState } from './score-events.ts';
import type { ScoreWindow } from './score-window.ts';

/** Where a pointer is on the score, in CSS pixels. */
export interface PointerSpot {
  readonly x: number;
  readonly y: number;
}

/** What a gesture sees of the surface, always as it is now: the document may change while a pointer is down. */
export interface GestureGround {
  readonly state: ScoreState;
  readonly clock: MethodClock;
  readonly areas: ScoreAreas;
  readonly scale: TimeScale;
  readonly window: ScoreWindow;
  /** The boundary nearest to a place on the screen. */
  readonly boundaryAt: (x: number) => number;
  readonly emit: (event: ScoreEvent) => void;
}

/** One gesture from press to release. It ends exactly once: by `end`, or by `cancel`, which leaves no trace. */
export interface Gesture {
  readonly cursor: string;
  /** Whether the view moves along when the pointer is held beyond a side. */
  readonly scrolls: boolean;
  readonly preview?: ScorePreview | undefined;
  readonly drawn?: Extract<ScoreSelection, { kind: 'span' }> | undefined;
  move(spot: PointerSpot): void;
  end(spot: PointerSpot): void;
  cancel(): void;
}

export interface Press {
  readonly spot: PointerSpot;
  readonly hit: ScoreHit;
  readonly touch: boolean;
  readonly extend: boolean;
}

/** The hand whose part is nearest to a height. */
export function handAtHeight(areas: ScoreAreas, y: number): Hand {
  return y < areas.axis.y + areas.axis.height / 2 ? 'left' : 'right';
}

/** Pixels that a pointer may tremble in a click. */
export function trembling(touch: boolean): number {
  return touch ? 9 : 4;
}

export function moveEvent(ref: BoundaryRef, to: number, phase: 'preview' | 'commit' | 'cancel'): ScoreEvent {
  const { row, id } = ref;
  if (row === 'cycles')
    return id === undefined
      ? { type: 'move-cycles-end', to, phase }
      : { type: 'move-cycle', cycleId: id, to, phase };
  return id === undefined
    ? { type: 'move-row-end', hand: row, to, phase }
    : { type: 'move-boundary', hand: row, motionId: id, to, phase };
}
