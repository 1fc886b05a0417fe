import type { Hand } from '@evenhand/core/ground/study';
import {
  type BoundaryRef,
  boundaryOf,
  boundaryRange,
  clampBoundary,
  overviewScale,
  type ScoreHit,
} from '@evenhand/core/record';
import {
  type Gesture,
  type GestureGround,
  handAtHeight,
  moveEvent,
  type PointerSpot,
  type Press,
  trembling,
} from './gesture.ts';

/** The gesture that a press begins. */
export function beginGesture(ground: () => GestureGround, press: Press): Gesture {
  const { hit, touch } = press;
  if (hit.part === 'boundary') return new BoundaryGesture(ground, press, hit);
  if (hit.part === 'overview') return overviewGesture(ground, press, hit.grip);
  if (hit.part === 'axis') return new ScrubGesture(ground, press.spot);
  if (hit.part === 'ribbon' || hit.part === 'nothing') return panGesture(ground, press.spot);
  return touch
    ? new ClickOrGesture(ground, press, panGesture(ground, press.spot))
    : new ClickOrGesture(ground, press, new SpanGesture(ground, press));
}

/** Drags a boundary between its neighbours; the film follows it, and goes back when the drag is given up. */
class BoundaryGesture implements Gesture {
  readonly cursor = 'ew-resize';
  readonly scrolls = true;
  readonly #ground: () => GestureGround;
  readonly #ref: BoundaryRef;
  /** From the boundary to where it was taken hold of, so that it does not jump. */
  readonly #grip: number;
  readonly #stood: number;
  #to: number;

  constructor(ground: () => GestureGround, press: Press, ref: BoundaryRef) {
    const { state, clock, scale } = ground();
    this.#ground = ground;
    this.#ref = { row: ref.row, id: ref.id };
    this.#to = boundaryOf(state.method, ref) ?? 0;
    this.#grip = press.spot.x - scale.exactX(clock.timeOf(this.#to));
    this.#stood = state.playhead;
  }

  get preview() {
    return { ...this.#ref, to: this.#to };
  }

  move({ x }: PointerSpot): void {
    const { state, clock, boundaryAt, emit } = this.#ground();
    const range = boundaryRange(state.method, clock, this.#ref);
    if (range === undefined) return;
    const to = clampBoundary(range, boundaryAt(x - this.#grip));
    if (to === this.#to) return;
    this.#to = to;
    emit(moveEvent(this.#ref, to, 'preview'));
    emit({ type: 'seek', boundary: to, phase: 'scrub' });
  }

  end(spot: PointerSpot): void {
    this.move(spot);
    const { state, clock, emit } = this.#ground();
    const range = boundaryRange(state.method, clock, this.#ref);
    // Another window may have moved or taken away the boundary meanwhile: what cannot be done is not asked for.
    if (range === undefined || range.at === this.#to || clampBoundary(range, this.#to) !== this.#to)
      return this.cancel();
    emit(moveEvent(this.#ref, this.#to, 'commit'));
    emit({ type: 'seek', boundary: this.#to, phase: 'settle' });
  }

  cancel(): void {
    const { emit } = this.#ground();
    emit(moveEvent(this.#ref, this.#to, 'cancel'));
    if (this.#ground().state.playhead !== this.#stood)
      emit({ type: 'seek', boundary: this.#stood, phase: 'settle' });
  }
}

/** The film follows the pointer along the axis. */
class ScrubGesture implements Gesture {
  readonly cursor = 'col-resize';
  readonly scrolls = true;
  readonly #ground: () => GestureGround;
  readonly #stood: number;
  #at = -1;

  constructor(ground: () => GestureGround, spot: PointerSpot) {
    this.#ground = ground;
    this.#stood = ground().state.playhead;
    this.move(spot);
  }

  move({ x }: PointerSpot): void {
    const { boundaryAt, emit } = this.#ground();
    const boundary = boundaryAt(x);
    if (boundary === this.#at) return;
    this.#at = boundary;
    emit({ type: 'seek', boundary, phase: 'scrub' });
  }

  end(spot: PointerSpot): void {
    this.move(spot);
    this.#ground().emit({ type: 'seek', boundary: this.#at, phase: 'settle' });
  }

  cancel(): void {
    this.#ground().emit({ type: 'seek', boundary: this.#stood, phase: 'settle' });
  }
}

/** Draws a span; one hand, or both once the pointer has crossed the axis. */
class SpanGesture implements Gesture {
  readonly cursor = 'text';
  readonly scrolls = true;
  readonly #ground: () => GestureGround;
  readonly #hand: Hand;
  readonly #strip: boolean;
  readonly #start: number;
  #to: number;
  #both: boolean;

  constructor(ground: () => GestureGround, { spot, hit }: Press) {
    const { areas, boundaryAt } = ground();
    this.#ground = ground;
    this.#hand = handAtHeight(areas, spot.y);
    this.#strip = hit.part === 'cycle' || hit.part === 'cycles';
    this.#both = this.#strip;
    this.#start = boundaryAt(spot.x);
    this.#to = this.#start;
  }

  get drawn() {
    return {
      kind: 'span' as const,
      hand: this.#both ? ('both' as const) : this.#hand,
      from: Math.min(this.#start, this.#to),
      to: Math.max(this.#start, this.#to),
    };
  }

  move({ x, y }: PointerSpot): void {
    const { areas, boundaryAt } = this.#ground();
    this.#to = boundaryAt(x);
    this.#both = this.#strip || handAtHeight(areas, y) !== this.#hand;
    this.#report('preview');
  }

  end(spot: PointerSpot): void {
    this.move(spot);
    this.#report(this.drawn.from < this.drawn.to ? 'commit' : 'cancel');
  }

  cancel(): void {
    this.#report('cancel');
  }

  #report(phase: 'preview' | 'commit' | 'cancel'): void {
    const { hand, from, to } = this.drawn;
    this.#ground().emit({ type: 'select-span', hand, from, to, phase });
  }
}

/** A click, until the pointer moves further than a hand trembles; then another gesture. */
class ClickOrGesture implements Gesture {
  readonly #ground: () => GestureGround;
  readonly #press: Press;
  readonly #other: Gesture;
  #begun = false;

  constructor(ground: () => GestureGround, press: Press, other: Gesture) {
    this.#ground = ground;
    this.#press = press;
    this.#other = other;
  }

  get cursor() {
    return this.#begun ? this.#other.cursor : 'default';
  }
  get scrolls() {
    return this.#begun && this.#other.scrolls;
  }
  get preview() {
    return this.#begun ? this.#other.preview : undefined;
  }
  get drawn() {
    return this.#begun ? this.#other.drawn : undefined;
  }

  move(spot: PointerSpot): void {
    const { spot: start, touch } = this.#press;
    this.#begun ||= Math.hypot(spot.x - start.x, spot.y - start.y) > trembling(touch);
    if (this.#begun) this.#other.move(spot);
  }

  end(spot: PointerSpot): void {
    if (this.#begun) this.#other.end(spot);
    else choose(this.#ground(), this.#press.hit, this.#press);
  }

  cancel(): void {
    if (this.#begun) this.#other.cancel();
  }
}

/** A click takes the film to the place and chooses what lies there. */
function choose({ boundaryAt, emit }: GestureGround, hit: ScoreHit, { extend, spot }: Press): void {
  if (hit.part === 'motion') emit({ type: 'select', hand: hit.hand, motionId: hit.motionId, extend });
  else if (hit.part === 'cycle') emit({ type: 'select-cycle', cycleId: hit.cycleId, extend });
  else emit({ type: 'select-none' });
  if (hit.part !== 'cycle' && hit.part !== 'cycles')
    emit({ type: 'seek', boundary: boundaryAt(spot.x), phase: 'settle' });
}

/** Something that moves the view only; given up, the view goes back. */
function viewGesture(
  ground: () => GestureGround,
  cursor: string,
  move: (spot: PointerSpot, before: { readonly fromUs: number; readonly toUs: number }) => void,
): Gesture {
  const before = ground().window.view;
  const moved = (spot: PointerSpot) => {
    move(spot, before);
    const { window, clock, state } = ground();
    window.lookedElsewhere(clock.timeOf(state.playhead));
  };
  return {
    cursor,
    scrolls: false,
    move: moved,
    end: moved,
    cancel: () => ground().window.show(before.fromUs, before.toUs),
  };
}

/** Drags the film along under the pointer. */
export function panGesture(ground: () => GestureGround, start: PointerSpot): Gesture {
  return viewGesture(ground, 'grabbing', ({ x }, before) => {
    const { window, scale } = ground();
    const by = (start.x - x) * scale.usPerPixel;
    window.show(before.fromUs + by, before.toUs + by);
  });
}

/** Moves the frame of the overview, or one of its sides; beside it, the frame comes to the pointer first. */
function overviewGesture(
  ground: () => GestureGround,
  press: Press,
  grip: Extract<ScoreHit, { part: 'overview' }>['grip'],
): Gesture {
  const timeAt = (x: number) => {
    const { areas, window, scale } = ground();
    return overviewScale({ whole: window.whole, pixelRatio: 1 / scale.hair }, areas).us(x);
  };
  if (grip === 'outside') {
    const { window } = ground();
    const half = (window.view.toUs - window.view.fromUs) / 2;
    const middle = timeAt(press.spot.x);
    window.show(middle - half, middle + half);
  }
  const start = timeAt(press.spot.x);
  return viewGesture(ground, grip === 'from' || grip === 'to' ? 'ew-resize' : 'grabbing', ({ x }, before) => {
    const { window } = ground();
    const by = timeAt(x) - start;
    if (grip === 'from') window.show(Math.min(before.fromUs + by, before.toUs - 1), before.toUs);
    else if (grip === 'to') window.show(before.fromUs, Math.max(before.toUs + by, before.fromUs + 1));
    else window.show(before.fromUs + by, before.toUs + by);
  });
}
