import { type Hand, hands, type MethodClock, methodClock } from '@evenhand/core/ground/study';
import {
  boundaryRange,
  clampBoundary,
  clampView,
  followView,
  frameSpan,
  nearestBoundary,
  panView,
  rowTimes,
  type ScoreAreas,
  scoreAreas,
  type TimeScale,
  type TimeView,
  timeScale,
  type ViewLimits,
  zoomView,
} from '@evenhand/core/record';
import { looks } from '@evenhand/draw';
import type { GesturePhase, ScoreControls, ScoreOptions, ScoreState } from './score-events.ts';
import { boundaryAt, type ScoreHit, scoreHit } from './score-hit.ts';
import { type HeldBoundary, paintScore } from './score-painter.ts';

type Gesture =
  | { readonly kind: 'boundary'; readonly held: HeldBoundary; readonly from: number; readonly grip: number }
  | { readonly kind: 'scrub' }
  | { readonly kind: 'pan' }
  | {
      readonly kind: 'span';
      readonly hit: ScoreHit;
      readonly hand: Hand;
      readonly x: number;
      readonly y: number;
      readonly from: number;
      readonly to: number;
      readonly both: boolean;
      readonly far: boolean;
      readonly extend: boolean;
    };

/** Film shown at most: a second film frame would not be worth a whole screen. */
const leastView = 200_000;

/** The canvas of the two-hand score. It shows a state and reports what a pointer asks for; it edits nothing itself. */
export class ScoreSurface implements ScoreControls {
  readonly #host: HTMLElement;
  readonly #canvas: HTMLCanvasElement;
  readonly #context: CanvasRenderingContext2D;
  readonly #options: ScoreOptions;
  readonly #observer: ResizeObserver;
  #state: ScoreState | undefined;
  #view: TimeView = { fromUs: 0, toUs: 1 };
  #method = '';
  #gesture: Gesture | undefined;
  #asked = 0;
  #waiting: (() => void)[] = [];

  constructor(host: HTMLElement, options: ScoreOptions) {
    this.#host = host;
    this.#options = options;
    this.#canvas = document.createElement('canvas');
    this.#canvas.setAttribute('role', 'img');
    this.#canvas.setAttribute('aria-label', options.label ?? 'Two-hand score');
    this.#canvas.style.display = 'block';
    this.#canvas.style.touchAction = 'none';
    const context = this.#canvas.getContext('2d', { alpha: false });
    if (context === null) throw new Error('this browser gives no canvas to draw on');
    this.#context = context;
    host.replaceChildren(this.#canvas);
    this.#observer = new ResizeObserver(() => this.#paintSoon());
    this.#observer.observe(host);
    this.#canvas.addEventListener('pointerdown', this.#onDown);
    this.#canvas.addEventListener('pointermove', this.#onMove);
    this.#canvas.addEventListener('pointerup', this.#onUp);
    this.#canvas.addEventListener('pointercancel', () => this.cancelGesture());
    this.#canvas.addEventListener('dblclick', this.#onDouble);
    this.#canvas.addEventListener('wheel', this.#onWheel, { passive: false });
    void document.fonts.ready.then(() => this.#paintSoon());
  }

  get view(): TimeView {
    return this.#view;
  }

  update(state: ScoreState): void {
    const before = this.#state;
    this.#state = state;
    if (this.#method !== state.method.id) {
      this.#method = state.method.id;
      this.#gesture = undefined;
      this.#view = this.#limits(state).toUs > 0 ? this.#whole(state) : this.#view;
    } else if (state.playing && before?.playhead !== state.playhead) {
      this.#setView(followView(this.#view, this.#clock(state).timeOf(state.playhead), this.#limits(state)));
    }
    this.#paintSoon();
  }

  zoomTo(from: number, to: number): void {
    if (this.#state === undefined) return;
    const clock = this.#clock(this.#state);
    this.#setView(frameSpan(clock.timeOf(from), clock.timeOf(to), this.#limits(this.#state)));
  }

  fit(): void {
    if (this.#state !== undefined) this.#setView(this.#whole(this.#state));
  }

  zoomBy(factor: number): void {
    const state = this.#state;
    if (state === undefined) return;
    const us = this.#clock(state).timeOf(state.playhead);
    const seen = us >= this.#view.fromUs && us <= this.#view.toUs;
    this.#setView(
      zoomView(
        this.#view,
        factor,
        seen ? us : (this.#view.fromUs + this.#view.toUs) / 2,
        this.#limits(state),
      ),
    );
  }

  panBy(share: number): void {
    if (this.#state === undefined) return;
    this.#setView(
      panView(this.#view, share * (this.#view.toUs - this.#view.fromUs), this.#limits(this.#state)),
    );
  }

  reveal(boundary: number): void {
    const state = this.#state;
    if (state === undefined) return;
    this.#setView(followView(this.#view, this.#clock(state).timeOf(boundary), this.#limits(state)));
  }

  cancelGesture(): boolean {
    const gesture = this.#gesture;
    this.#gesture = undefined;
    if (gesture === undefined) return false;
    if (gesture.kind === 'boundary') this.#reportMove(gesture.held, 'cancel');
    if (gesture.kind === 'span' && gesture.far) this.#reportSpan(gesture, 'cancel');
    this.#paintSoon();
    return true;
  }

  idle(): Promise<void> {
    return this.#asked === 0 ? Promise.resolve() : new Promise((resolve) => this.#waiting.push(resolve));
  }

  dispose(): void {
    cancelAnimationFrame(this.#asked);
    this.#observer.disconnect();
    this.#host.replaceChildren();
  }

  #clock(state: ScoreState): MethodClock {
    return methodClock(state.study, state.method);
  }

  #limits(state: ScoreState): ViewLimits {
    const clock = this.#clock(state);
    const last =
      clock.last ?? Math.max(1, ...hands.map((hand) => state.method[hand].end), state.method.cycles.end);
    return { fromUs: clock.timeOf(0), toUs: clock.timeOf(last), leastUs: leastView };
  }

  #whole(state: ScoreState): TimeView {
    const { fromUs, toUs } = this.#limits(state);
    return { fromUs, toUs };
  }

  #setView(view: TimeView): void {
    if (view.fromUs === this.#view.fromUs && view.toUs === this.#view.toUs) return;
    this.#view = view;
    this.#options.onEvent({ type: 'view-changed', fromUs: view.fromUs, toUs: view.toUs });
    this.#paintSoon();
  }

  #paintSoon(): void {
    if (this.#asked !== 0) return;
    this.#asked = requestAnimationFrame(() => {
      this.#asked = 0;
      this.#paint();
      const waiting = this.#waiting;
      this.#waiting = [];
      for (const done of waiting) done();
    });
  }

  #place(): { areas: ScoreAreas; scale: TimeScale; width: number; height: number; ratio: number } {
    const width = Math.max(1, this.#host.clientWidth);
    const height = Math.max(1, this.#host.clientHeight);
    const ratio = devicePixelRatio;
    const areas = scoreAreas({ width, height, ribbonHeight: 0 });
    return { areas, scale: timeScale(this.#view, areas.left, ratio), width, height, ratio };
  }

  #paint(): void {
    const state = this.#state;
    const { areas, scale, width, height, ratio } = this.#place();
    const wide = Math.round(width * ratio);
    const high = Math.round(height * ratio);
    if (this.#canvas.width !== wide || this.#canvas.height !== high) {
      this.#canvas.width = wide;
      this.#canvas.height = high;
      this.#canvas.style.width = `${width}px`;
      this.#canvas.style.height = `${height}px`;
    }
    this.#context.setTransform(ratio, 0, 0, ratio, 0, 0);
    if (state === undefined) return;
    const gesture = this.#gesture;
    const picture = {
      state,
      clock: this.#clock(state),
      areas,
      scale,
      look: looks[state.look],
      whole: this.#whole(state),
      held: gesture?.kind === 'boundary' ? gesture.held : undefined,
      span: gesture?.kind === 'span' && gesture.far ? spanOf(gesture) : undefined,
    };
    paintScore(this.#context, picture, width, height);
  }

  #hit(event: { readonly offsetX: number; readonly offsetY: number }): ScoreHit {
    if (this.#state === undefined) return { part: 'nothing' };
    const { areas, scale } = this.#place();
    return scoreHit(this.#state, this.#clock(this.#state), areas, scale, event.offsetX, event.offsetY);
  }

  #boundaryUnder(x: number): number {
    const state = this.#state;
    if (state === undefined) return 0;
    const { scale } = this.#place();
    return nearestBoundary(this.#clock(state), Math.max(0, scale.us(x)));
  }

  readonly #onDown = (event: PointerEvent): void => {
    const state = this.#state;
    if (state === undefined || event.button !== 0) return;
    this.#canvas.setPointerCapture(event.pointerId);
    const hit = this.#hit(event);
    if (hit.part === 'boundary') {
      const at = boundaryAt(state, hit.row, hit.id);
      if (at === undefined) return;
      const grip = event.offsetX - this.#place().scale.exactX(this.#clock(state).timeOf(at));
      this.#gesture = { kind: 'boundary', held: { row: hit.row, id: hit.id, to: at }, from: at, grip };
    } else if (hit.part === 'axis') {
      this.#gesture = { kind: 'scrub' };
      this.#options.onEvent({ type: 'seek', boundary: this.#boundaryUnder(event.offsetX), phase: 'scrub' });
    } else if (hit.part === 'overview') {
      this.#gesture = { kind: 'pan' };
      this.#panTo(event.offsetX);
    } else this.#beginSpan(hit, event);
    this.#paintSoon();
  };

  #beginSpan(hit: ScoreHit, event: PointerEvent): void {
    const { areas } = this.#place();
    const hand: Hand = event.offsetY < areas.axis.y ? 'left' : 'right';
    const at = this.#boundaryUnder(event.offsetX);
    this.#gesture = {
      kind: 'span',
      hit,
      hand,
      x: event.offsetX,
      y: event.offsetY,
      from: at,
      to: at,
      both: hit.part === 'cycle',
      far: false,
      extend: event.shiftKey,
    };
  }

  readonly #onMove = (event: PointerEvent): void => {
    const state = this.#state;
    const gesture = this.#gesture;
    if (state === undefined) return;
    if (gesture === undefined) {
      const { part } = this.#hit(event);
      this.#canvas.style.cursor =
        part === 'boundary'
          ? 'ew-resize'
          : part === 'axis'
            ? 'col-resize'
            : part === 'overview'
              ? 'grab'
              : 'default';
      return;
    }
    if (gesture.kind === 'boundary') this.#dragBoundary(state, gesture, event.offsetX);
    else if (gesture.kind === 'scrub')
      this.#options.onEvent({ type: 'seek', boundary: this.#boundaryUnder(event.offsetX), phase: 'scrub' });
    else if (gesture.kind === 'pan') this.#panTo(event.offsetX);
    else this.#dragSpan(gesture, event);
    this.#paintSoon();
  };

  #dragBoundary(state: ScoreState, gesture: Extract<Gesture, { kind: 'boundary' }>, x: number): void {
    const { held } = gesture;
    const range = boundaryRange(state.method, this.#clock(state), { row: held.row, id: held.id });
    if (range === undefined) return;
    const to = clampBoundary(range, this.#boundaryUnder(x - gesture.grip));
    if (to === held.to) return;
    this.#gesture = { ...gesture, held: { ...held, to } };
    this.#reportMove({ ...held, to }, 'preview');
    this.#options.onEvent({ type: 'seek', boundary: to, phase: 'scrub' });
  }

  #dragSpan(gesture: Extract<Gesture, { kind: 'span' }>, event: PointerEvent): void {
    const far = gesture.far || Math.abs(event.offsetX - gesture.x) > 4;
    const { areas } = this.#place();
    const other = gesture.hand === 'left' ? event.offsetY > areas.right.y : event.offsetY < areas.axis.y;
    const next = {
      ...gesture,
      far,
      to: this.#boundaryUnder(event.offsetX),
      both: gesture.hit.part === 'cycle' || other,
    };
    this.#gesture = next;
    if (far) this.#reportSpan(next, 'preview');
  }

  readonly #onUp = (event: PointerEvent): void => {
    const gesture = this.#gesture;
    this.#gesture = undefined;
    if (gesture === undefined) return;
    if (gesture.kind === 'boundary' && gesture.held.to !== gesture.from)
      this.#reportMove(gesture.held, 'commit');
    if (gesture.kind === 'scrub')
      this.#options.onEvent({ type: 'seek', boundary: this.#boundaryUnder(event.offsetX), phase: 'settle' });
    if (gesture.kind === 'span' && gesture.far) this.#reportSpan(gesture, 'commit');
    else if (gesture.kind === 'span') this.#choose(gesture.hit, gesture.extend);
    this.#paintSoon();
  };

  #choose(hit: ScoreHit, extend: boolean): void {
    if (hit.part === 'motion')
      this.#options.onEvent({ type: 'select', hand: hit.hand, motionId: hit.motionId, extend });
    else if (hit.part === 'cycle')
      this.#options.onEvent({ type: 'select-cycle', cycleId: hit.cycleId, extend });
    else this.#options.onEvent({ type: 'select-none' });
  }

  #reportMove(held: HeldBoundary, phase: GesturePhase): void {
    const { row, id, to } = held;
    if (row === 'cycles') {
      this.#options.onEvent(
        id === undefined
          ? { type: 'move-cycles-end', to, phase }
          : { type: 'move-cycle', cycleId: id, to, phase },
      );
    } else {
      this.#options.onEvent(
        id === undefined
          ? { type: 'move-row-end', hand: row, to, phase }
          : { type: 'move-boundary', hand: row, motionId: id, to, phase },
      );
    }
  }

  #reportSpan(gesture: Extract<Gesture, { kind: 'span' }>, phase: GesturePhase): void {
    const span = spanOf(gesture);
    if (span.from < span.to) this.#options.onEvent({ type: 'select-span', ...span, phase });
  }

  #panTo(x: number): void {
    const state = this.#state;
    if (state === undefined) return;
    const { areas, ratio } = this.#place();
    const us = timeScale(this.#whole(state), areas.overview, ratio).us(x);
    const half = (this.#view.toUs - this.#view.fromUs) / 2;
    this.#setView(clampView({ fromUs: us - half, toUs: us + half }, this.#limits(state)));
  }

  readonly #onDouble = (event: MouseEvent): void => {
    const state = this.#state;
    const hit = this.#hit(event);
    if (state === undefined || hit.part !== 'motion') return;
    const index = state.method[hit.hand].items.findIndex((item) => item.id === hit.motionId);
    const times = rowTimes(state.method[hit.hand], this.#clock(state));
    this.#setView(frameSpan(times.startUs[index] ?? 0, times.startUs[index + 1] ?? 0, this.#limits(state)));
  };

  readonly #onWheel = (event: WheelEvent): void => {
    const state = this.#state;
    if (state === undefined) return;
    event.preventDefault();
    const { scale } = this.#place();
    const sideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
    const amount = sideways && event.deltaX !== 0 ? event.deltaX : event.deltaY;
    if (sideways) this.#setView(panView(this.#view, amount * scale.usPerPixel, this.#limits(state)));
    else
      this.#setView(zoomView(this.#view, 2 ** (-amount / 240), scale.us(event.offsetX), this.#limits(state)));
  };
}

function spanOf(gesture: Extract<Gesture, { kind: 'span' }>): {
  hand: Hand | 'both';
  from: number;
  to: number;
} {
  return {
    hand: gesture.both ? 'both' : gesture.hand,
    from: Math.min(gesture.from, gesture.to),
    to: Math.max(gesture.from, gesture.to),
  };
}
