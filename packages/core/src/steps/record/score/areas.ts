/** A rectangle in CSS pixels; y grows downwards. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The parts of the score from top to bottom: numbers of the cycles, left hand, time axis, right hand, a place for a
 * ribbon that shares the time scale, and the overview of the whole film. The hands mirror each other about the middle
 * of the axis. `gutter` holds the headings at the left.
 */
export interface ScoreAreas {
  readonly gutter: number;
  readonly cycles: Area;
  readonly left: Area;
  readonly axis: Area;
  readonly right: Area;
  readonly ribbon: Area;
  readonly overview: Area;
  /** Height of the outer part of a hand that holds code and object; the rest holds the colour. */
  readonly words: number;
}

export interface AreaWishes {
  readonly width: number;
  readonly height: number;
  /** Height kept free below the right hand, on the same time scale; 0 for none. */
  readonly ribbonHeight: number;
}

const cyclesHeight = 22;
const axisHeight = 30;
const rightMargin = 10;

/** Whole pixels throughout, so that a hand is never a pixel taller than the other. */
export function scoreAreas({ width, height, ribbonHeight }: AreaWishes): ScoreAreas {
  const gutter = width < 560 ? 26 : 78;
  const overviewHeight = height < 200 ? 22 : 40;
  const gap = 8;
  const ribbon = Math.round(ribbonHeight);
  const rest =
    Math.floor(height) -
    cyclesHeight -
    axisHeight -
    ribbon -
    (ribbon > 0 ? gap : 0) -
    overviewHeight -
    gap -
    4;
  const hand = Math.max(0, Math.floor(rest / 2));
  const across = { x: gutter, width: Math.max(1, Math.floor(width) - gutter - rightMargin) };
  const leftTop = cyclesHeight;
  const axisTop = leftTop + hand;
  const rightTop = axisTop + axisHeight;
  const ribbonTop = rightTop + hand + (ribbon > 0 ? gap : 0);
  return {
    gutter,
    cycles: { ...across, y: 0, height: cyclesHeight },
    left: { ...across, y: leftTop, height: hand },
    axis: { ...across, y: axisTop, height: axisHeight },
    right: { ...across, y: rightTop, height: hand },
    ribbon: { ...across, y: ribbonTop, height: ribbon },
    overview: { ...across, y: ribbonTop + ribbon + gap, height: overviewHeight },
    words: hand >= 72 ? 36 : hand >= 40 ? 19 : 0,
  };
}

export function inside(area: Area, x: number, y: number): boolean {
  return x >= area.x && x < area.x + area.width && y >= area.y && y < area.y + area.height;
}
