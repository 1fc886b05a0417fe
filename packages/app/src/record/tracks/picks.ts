import type { Hand } from '@evenhand/core/ground/study';
import type { PlanePoint } from '@evenhand/core/record';

/** Points that the analyst is asked to set on the picture, one after the other, by pointer or by keys. */
export interface Pick {
  /** What each point is, in the order in which they are set. */
  readonly asks: readonly string[];
  readonly points: readonly PlanePoint[];
  /** Two points that span a rectangle, which may be drawn in one stroke. */
  readonly area: boolean;
  /** Whose it is, for its colour in words and its place in the list. */
  readonly hand?: Hand | undefined;
  readonly done: (points: readonly PlanePoint[]) => void;
}

export const cornerAsks = [
  'near left corner, as the operator sees it',
  'near right corner',
  'far right corner',
  'far left corner',
];
