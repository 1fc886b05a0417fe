import type { BoundaryRef, ScoreHit } from '@evenhand/core/record';
import type { Gesture, GestureGround, PointerSpot } from './gesture.ts';
import { beginGesture, panGesture } from './gestures.ts';
import { Pinch } from './pinch.ts';

export interface PointerPorts {
  /** Undefined while there is nothing to work on. */
  readonly ground: () => GestureGround | undefined;
  readonly hit: (spot: PointerSpot, touch: boolean) => ScoreHit;
  readonly repaint: () => void;
  /** A motion or cycle was double-clicked; any other part. */
  readonly opened: (hit: ScoreHit) => void;
  /** What lies under a resting pointer, for its words. */
  readonly rested: (hit: ScoreHit) => void;
}

const cursors: Readonly<Record<ScoreHit['part'], string>> = {
  boundary: 'ew-resize',
  motion: 'default',
  run: 'default',
  hand: 'default',
  cycle: 'default',
  cycles: 'default',
  axis: 'col-resize',
  overview: 'grab',
  ribbon: 'grab',
  nothing: 'default',
};

/** Listens to mouse, pen, fingers and wheel, and runs one gesture at a time. */
export class ScorePointer {
  readonly #target: HTMLElement;
  readonly #ports: PointerPorts;
  readonly #listening = new AbortController();
  readonly #spots = new Map<number, PointerSpot>();
  #gesture: Gesture | undefined;
  #holder = -1;
  #pinch: Pinch | undefined;
  #hover: BoundaryRef | undefined;

  constructor(target: HTMLElement, ports: PointerPorts) {
    this.#target = target;
    this.#ports = ports;
    const { signal } = this.#listening;
    target.addEventListener('pointerdown', (event) => this.#down(event), { signal });
    target.addEventListener('pointermove', (event) => this.#move(event), { signal });
    target.addEventListener('pointerup', (event) => this.#up(event), { signal });
    target.addEventListener('pointercancel', (event) => this.#lost(event), { signal });
    target.addEventListener('lostpointercapture', (event) => this.#lost(event), { signal });
    target.addEventListener('pointerleave', () => this.#setHover(undefined), { signal });
    target.addEventListener('dblclick', (event) => this.#double(event), { signal });
    target.addEventListener('wheel', (event) => this.#wheel(event), { signal, passive: false });
    // Escape belongs to the gesture while there is one, whoever has the focus.
    window.addEventListener('keydown', (event) => this.#key(event), { signal, capture: true });
  }

  get gesture(): Gesture | undefined {
    return this.#gesture;
  }

  get hover(): BoundaryRef | undefined {
    return this.#gesture === undefined ? this.#hover : undefined;
  }

  /** The pointer that holds the gesture. */
  get held(): PointerSpot | undefined {
    return this.#spots.get(this.#holder);
  }

  cancel(): boolean {
    const gesture = this.#end();
    gesture?.cancel();
    return gesture !== undefined;
  }

  dispose(): void {
    this.cancel();
    this.#listening.abort();
  }

  #ground = (): GestureGround => {
    const ground = this.#ports.ground();
    if (ground === undefined) throw new TypeError('a gesture needs a score');
    return ground;
  };

  #down(event: PointerEvent): void {
    if (this.#ports.ground() === undefined || event.button > 1) return;
    const touch = event.pointerType === 'touch';
    const spot = this.#spot(event);
    capture(this.#target, event.pointerId);
    this.#spots.set(event.pointerId, spot);
    if (touch && this.#spots.size === 2) {
      this.cancel();
      this.#pinch = new Pinch(this.#ground, this.#spots);
      return;
    }
    if (this.#gesture !== undefined || this.#pinch !== undefined) return;
    // The middle button would start the browser's own scrolling.
    if (event.button === 1) event.preventDefault();
    const press = { spot, hit: this.#ports.hit(spot, touch), touch, extend: event.shiftKey };
    this.#holder = event.pointerId;
    this.#gesture = event.button === 1 ? panGesture(this.#ground, spot) : beginGesture(this.#ground, press);
    this.#show();
  }

  #move(event: PointerEvent): void {
    const spot = this.#spot(event);
    if (this.#spots.has(event.pointerId)) this.#spots.set(event.pointerId, spot);
    if (this.#pinch !== undefined) this.#pinch.move();
    else if (this.#gesture === undefined) this.#rest(spot, event.pointerType === 'touch');
    else if (event.pointerId === this.#holder) {
      this.#gesture.move(spot);
      this.#show();
    }
  }

  #up(event: PointerEvent): void {
    const spot = this.#spot(event);
    this.#spots.delete(event.pointerId);
    if (this.#pinch !== undefined) {
      if (this.#spots.size === 0) this.#pinch = undefined;
      return;
    }
    if (event.pointerId !== this.#holder) return;
    this.#end()?.end(spot);
    if (event.pointerType !== 'touch') this.#rest(spot, false);
  }

  #lost(event: PointerEvent): void {
    this.#spots.delete(event.pointerId);
    if (this.#spots.size === 0) this.#pinch = undefined;
    if (event.pointerId === this.#holder) this.cancel();
  }

  #end(): Gesture | undefined {
    const gesture = this.#gesture;
    this.#gesture = undefined;
    this.#holder = -1;
    this.#show();
    return gesture;
  }

  #show(): void {
    this.#target.style.cursor = this.#gesture?.cursor ?? 'default';
    this.#ports.repaint();
  }

  #rest(spot: PointerSpot, touch: boolean): void {
    if (this.#ports.ground() === undefined || touch) return;
    const hit = this.#ports.hit(spot, false);
    const side = hit.part === 'overview' && (hit.grip === 'from' || hit.grip === 'to');
    this.#target.style.cursor = side ? 'ew-resize' : cursors[hit.part];
    this.#setHover(hit.part === 'boundary' ? { row: hit.row, id: hit.id } : undefined);
    this.#ports.rested(hit);
  }

  #setHover(hover: BoundaryRef | undefined): void {
    if (hover?.row === this.#hover?.row && hover?.id === this.#hover?.id) return;
    this.#hover = hover;
    this.#ports.repaint();
  }

  #double(event: MouseEvent): void {
    if (this.#ports.ground() !== undefined) this.#ports.opened(this.#ports.hit(this.#spot(event), false));
  }

  #wheel(event: WheelEvent): void {
    const ground = this.#ports.ground();
    if (ground === undefined) return;
    event.preventDefault();
    const { scale, window, clock, state } = ground;
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 24 : 1;
    const sideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
    const amount = unit * (sideways && event.deltaX !== 0 ? event.deltaX : event.deltaY);
    if (sideways) window.panBy(amount * scale.usPerPixel);
    // Browsers report a pinch on a touch pad as a wheel with Ctrl, in steps of a few pixels.
    else window.zoomAt(2 ** (-amount / (event.ctrlKey ? 90 : 260)), scale.us(this.#spot(event).x));
    window.lookedElsewhere(clock.timeOf(state.playhead));
  }

  #key(event: KeyboardEvent): void {
    if (event.code !== 'Escape' || !this.cancel()) return;
    event.preventDefault();
    event.stopPropagation();
  }

  #spot(event: MouseEvent): PointerSpot {
    const { left, top } = this.#target.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  }
}

/** A pointer that is gone already cannot be captured; it then ends like any other. */
function capture(target: Element, pointerId: number): void {
  try {
    target.setPointerCapture(pointerId);
  } catch {
    return;
  }
}
