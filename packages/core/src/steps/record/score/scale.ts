import type { Area } from './areas.ts';
import type { TimeView } from './view.ts';

/** Between real time and the screen. */
export interface TimeScale {
  readonly view: TimeView;
  readonly left: number;
  readonly right: number;
  readonly usPerPixel: number;
  /** Exact place of a time, CSS pixels. */
  readonly exactX: (us: number) => number;
  /** Place of a time on the nearest edge of a device pixel; the same time always gives the same edge. */
  readonly x: (us: number) => number;
  /** As `x`, kept between the two sides. */
  readonly cutX: (us: number) => number;
  readonly us: (x: number) => number;
  /** One device pixel in CSS pixels: the width of a thin line. */
  readonly hair: number;
}

export function timeScale(view: TimeView, area: Area, pixelRatio: number): TimeScale {
  const usPerPixel = (view.toUs - view.fromUs) / area.width;
  const right = area.x + area.width;
  const exactX = (us: number) => area.x + (us - view.fromUs) / usPerPixel;
  const x = (us: number) => Math.round(exactX(us) * pixelRatio) / pixelRatio;
  return {
    view,
    left: area.x,
    right,
    usPerPixel,
    exactX,
    x,
    cutX: (us) => Math.min(right, Math.max(area.x, x(us))),
    us: (at) => view.fromUs + (at - area.x) * usPerPixel,
    hair: 1 / pixelRatio,
  };
}
