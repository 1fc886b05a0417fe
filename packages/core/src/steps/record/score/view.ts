/** A stretch of real time laid over a width: `fromUs` at `left`, `toUs` at `left + width` (CSS pixels). */
export interface TimeView {
  readonly fromUs: number;
  readonly toUs: number;
}

/** How much of a film can be seen at most and at least. */
export interface ViewLimits {
  readonly fromUs: number;
  readonly toUs: number;
  /** The shortest span that is worth showing, in microseconds. */
  readonly leastUs: number;
}

/** Keeps a view inside its limits: its span first, then its place. */
export function clampView(view: TimeView, limits: ViewLimits): TimeView {
  const whole = limits.toUs - limits.fromUs;
  const span = Math.min(whole, Math.max(Math.min(limits.leastUs, whole), view.toUs - view.fromUs));
  const fromUs = Math.min(limits.toUs - span, Math.max(limits.fromUs, view.fromUs));
  return { fromUs, toUs: fromUs + span };
}

/** Shows 1/factor of the span; the time at `atUs` stays where it is on the screen. */
export function zoomView(view: TimeView, factor: number, atUs: number, limits: ViewLimits): TimeView {
  const whole = limits.toUs - limits.fromUs;
  const span = view.toUs - view.fromUs;
  const next = Math.min(whole, Math.max(Math.min(limits.leastUs, whole), span / factor));
  const share = (atUs - view.fromUs) / span;
  const fromUs = atUs - share * next;
  return clampView({ fromUs, toUs: fromUs + next }, limits);
}

export function panView(view: TimeView, byUs: number, limits: ViewLimits): TimeView {
  return clampView({ fromUs: view.fromUs + byUs, toUs: view.toUs + byUs }, limits);
}

/**
 * The view in which a time can be seen. Unchanged while the time is inside; else the view turns over like a page: the
 * time comes to stand a tenth from the side it enters by.
 */
export function followView(view: TimeView, us: number, limits: ViewLimits): TimeView {
  if (us >= view.fromUs && us < view.toUs) return view;
  const span = view.toUs - view.fromUs;
  const fromUs = us >= view.toUs ? us - span / 10 : us - (9 * span) / 10;
  const turned = clampView({ fromUs, toUs: fromUs + span }, limits);
  return turned.fromUs === view.fromUs ? view : turned;
}

/** A span of time with a little room at both sides. */
export function frameSpan(fromUs: number, toUs: number, limits: ViewLimits): TimeView {
  const room = (toUs - fromUs) * 0.04;
  const middle = (fromUs + toUs) / 2;
  const half = Math.max(limits.leastUs / 2, (toUs - fromUs) / 2 + room);
  return clampView({ fromUs: middle - half, toUs: middle + half }, limits);
}
