import type { Hand } from '../../../ground/study/index.ts';
import type { ScoreAreas } from './areas.ts';

/** One hand's part of the score, measured from the axis outwards, so that one drawing serves both hands. */
export interface HandSide {
  readonly hand: Hand;
  /** From the axis to where the words begin: room for colour. */
  readonly colour: number;
  /** From there to the outer edge: room for words. */
  readonly words: number;
  readonly height: number;
  /** Top of something that begins `from` pixels off the axis and is `height` high. */
  readonly top: (from: number, height: number) => number;
}

export function handSide(areas: ScoreAreas, hand: Hand): HandSide {
  const { height } = areas[hand];
  const upper = areas.axis.y;
  const lower = areas.axis.y + areas.axis.height;
  return {
    hand,
    colour: height - areas.words,
    words: areas.words,
    height,
    top: hand === 'left' ? (from, high) => upper - from - high : (from) => lower + from,
  };
}
