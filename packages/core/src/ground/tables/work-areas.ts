import { bodySizes, bodySizesSource } from './body-sizes.ts';
import type { SourceId } from './sources.ts';

/** How far a place on the bench is for an arm: within the sweep of the forearm, of the straight arm, or beyond. */
export type WorkArea = 'normal' | 'maximum' | 'beyond';

export interface WorkAreaFacts {
  readonly who: string;
  readonly percentile: 5 | 50;
  /** Forearm to the centre of the grip, about the elbow, millimetres. */
  readonly normalRadius: number;
  /** Grip reach on a surface at the height of the seated elbow, about the shoulder, millimetres. */
  readonly maximumRadius: number;
  /** Half the breadth between the shoulders, millimetres. */
  readonly halfShoulders: number;
  readonly source: SourceId;
}

/**
 * Work areas of women from a survey of body sizes; the two-link arm behind them is ours. A layout that suits the 5th
 * percentile is within reach of nearly everybody. Millimetres, from figures printed to 0.1 cm.
 */
export const workAreas: Readonly<Record<'small' | 'middle', WorkAreaFacts>> = {
  small: areaFacts(5),
  middle: areaFacts(50),
};

function areaFacts(percentile: 5 | 50): WorkAreaFacts {
  const { forearm, reachAtElbow, halfShoulders } = bodySizes.women[percentile];
  return {
    who: `women, ${percentile}th percentile`,
    percentile,
    normalRadius: forearm,
    maximumRadius: reachAtElbow,
    halfShoulders,
    source: bodySizesSource,
  };
}

/**
 * The distance of a place from the shoulder of a hand, and the area it lies in for a small woman. Shoulder and hanging
 * elbow are taken to be above the near edge of the bench, as close as anybody can sit; the real distance is no less.
 * @param at millimetres: x to the operator's right from the middle, y away from the near edge
 * @returns distance in millimetres on the bench
 */
export function workAreaOf(
  at: { readonly x: number; readonly y: number },
  hand: 'left' | 'right',
): { readonly distance: number; readonly area: WorkArea } {
  const { halfShoulders, maximumRadius, normalRadius } = workAreas.small;
  const shoulder = hand === 'left' ? -halfShoulders : halfShoulders;
  const distance = Math.hypot(at.x - shoulder, at.y);
  const area = distance <= normalRadius ? 'normal' : distance <= maximumRadius ? 'maximum' : 'beyond';
  return { distance, area };
}
