import { findItem, type MethodClock, methodClock } from '@evenhand/core/ground/study';
import {
  groundNodes,
  hitScore,
  nearestBoundary,
  overlayNodes,
  overviewNodes,
  type ScoreHit,
  type ScoreInput,
  scoreLimits,
  scorePlan,
  type TimeView,
} from '@evenhand/core/record';
import { looks } from '@evenhand/draw';
import type { GestureGround, PointerSpot } from './gesture.ts';
import type { ScoreControls, ScoreOptions, ScoreState } from './score-events.ts';
import { ScoreLayers } from './score-layers.ts';
import { ScorePointer } from './score-pointer.ts';
import { ScoreWindow } from './score-window.ts';
import { wordsFor } from './score-words.ts';

/** The parts of the picture that a layer is made of; while they are the same, the layer is not painted again. */
type Ingredients = readonly unknown[];

/** The two-hand score on a screen. It shows a state and reports what a pointer asks for; it edits nothing itself. */
export class ScoreSurface implements ScoreControls {
  readonly #options: ScoreOptions;
  readonly #layers: ScoreLayers;
  readonly #window: ScoreWindow;
  readonly #pointer: ScorePointer;
  readonly #observer: ResizeObserver;
  #state: ScoreState | undefined;
  #clock: MethodClock | undefined;
  #painted: { readonly ground: Ingredients; readonly overview: Ingredients } = { ground: [], overview: [] };
  #asked = 0;
  #waiting: (() => void)[] = [];
  #disposed = false;

  constructor(host: HTMLElement, options: ScoreOptions) {
    this.#options = options;
    this.#layers = new ScoreLayers(host, options.label ?? 'Two-hand score');
    this.#window = new ScoreWindow(({ fromUs, toUs }) => {
      options.onEvent({ type: 'view-changed', fromUs, toUs });
      this.#paintSoon();
    });
    this.#pointer = new ScorePointer(this.#layers.top, {
      ground: () => this.#gestureGround(),
      hit: (spot, touch) => this.#hit(spot, touch),
      repaint: () => this.#paintSoon(),
      opened: (hit) => this.#open(hit),
      rested: (hit) => this.#say(hit),
    });
    this.#observer = new ResizeObserver(() => this.#paintSoon());
    this.#observer.observe(host);
    void document.fonts.ready.then(() => this.#repaintAll());
  }

  get view(): TimeView {
    return this.#window.view;
  }

  update(state: ScoreState): void {
    const before = this.#state;
    const clock = methodClock(state.study, state.method);
    const anew = before?.method.id !== state.method.id;
    if (anew) this.#pointer.cancel();
    this.#state = state;
    if (anew || before.method !== state.method || this.#clock !== clock) {
      this.#clock = clock;
      this.#window.setLimits(scoreLimits(state.method, clock), anew);
    }
    const moved = before?.playhead !== state.playhead;
    if (state.playing && moved && this.#pointer.gesture === undefined)
      this.#window.follow(clock.timeOf(within(clock, state.playhead)));
    this.#paintSoon();
  }

  zoomTo(from: number, to: number): void {
    const clock = this.#clock;
    if (clock !== undefined)
      this.#window.zoomTo(clock.timeOf(within(clock, from)), clock.timeOf(within(clock, to)));
  }

  fit(): void {
    this.#window.fit();
  }

  zoomBy(factor: number): void {
    if (this.#state !== undefined && this.#clock !== undefined)
      this.#window.zoomAround(factor, this.#clock.timeOf(within(this.#clock, this.#state.playhead)));
  }

  panBy(share: number): void {
    const { fromUs, toUs } = this.#window.view;
    this.#window.panBy(share * (toUs - fromUs));
  }

  reveal(boundary: number): void {
    if (this.#clock !== undefined) this.#window.reveal(this.#clock.timeOf(within(this.#clock, boundary)));
  }

  cancelGesture(): boolean {
    return this.#pointer.cancel();
  }

  idle(): Promise<void> {
    return this.#asked === 0 ? Promise.resolve() : new Promise((resolve) => this.#waiting.push(resolve));
  }

  dispose(): void {
    this.#disposed = true;
    this.#pointer.dispose();
    this.#observer.disconnect();
    cancelAnimationFrame(this.#asked);
    this.#asked = 0;
    this.#settle();
    this.#layers.dispose();
  }

  // ---- one frame: read, compute, paint

  #paintSoon(): void {
    if (this.#asked !== 0 || this.#disposed) return;
    this.#asked = requestAnimationFrame(() => {
      this.#asked = 0;
      this.#scroll();
      this.#paint();
      if (this.#asked === 0) this.#settle();
    });
  }

  #settle(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const done of waiting) done();
  }

  /** The typeface has arrived, or a look at everything is wanted for another reason. */
  #repaintAll(): void {
    this.#painted = { ground: [], overview: [] };
    this.#paintSoon();
  }

  #paint(): void {
    if (this.#layers.measure()) this.#painted = { ground: [], overview: [] };
    const input = this.#input();
    if (input === undefined || this.#state === undefined) return;
    const look = looks[this.#state.look];
    const { areas, scale } = scorePlan(input);
    const { method, clock, view, whole, preview } = input;
    // The ribbon takes room, so all parts move when it comes or goes.
    const overview = [method, clock, whole.fromUs, whole.toUs, look, input.ribbonHeight];
    const ground = [...overview, view.fromUs, view.toUs, input.unit, input.activeHands, input.ribbon];
    const held = [this.#state.study.places, preview?.row, preview?.id, preview?.to];
    if (!same(this.#painted.overview, overview))
      this.#layers.paint('overview', overviewNodes(input, areas), look);
    if (!same(this.#painted.ground, [...ground, ...held]))
      this.#layers.paint('ground', groundNodes(input), look);
    this.#painted = { overview, ground: [...ground, ...held] };
    this.#layers.paint('overlay', overlayNodes(input, areas, scale), look);
  }

  #input(): ScoreInput | undefined {
    const state = this.#state;
    if (state === undefined || this.#clock === undefined) return undefined;
    const { width, height, ratio } = this.#layers.size;
    const { gesture, hover } = this.#pointer;
    const clock = this.#clock;
    return {
      method: state.method,
      clock,
      view: this.#window.view,
      whole: this.#window.whole,
      width,
      height,
      pixelRatio: ratio,
      unit: state.unit,
      playhead: within(clock, state.playhead),
      selection: state.selection?.kind === 'span' ? spanWithin(clock, state.selection) : state.selection,
      loop: state.loop === undefined ? undefined : spanWithin(clock, state.loop),
      activeHands: state.activeHands,
      ribbon: state.ribbon,
      ribbonHeight: state.ribbon === undefined ? 0 : height < 260 ? 22 : 38,
      lit: state.lit?.map((span) => spanWithin(clock, span)),
      placeName: (id) => state.study.places.find((place) => place.id === id)?.name,
      hover,
      preview: gesture?.preview,
      drawn: gesture?.drawn,
    };
  }

  /** A pointer held beyond a side pulls the view along, the faster the further. */
  #scroll(): void {
    const { gesture, held } = this.#pointer;
    const ground = this.#gestureGround();
    if (ground === undefined || gesture === undefined || held === undefined || !gesture.scrolls) return;
    const { scale } = ground;
    const beyond = Math.min(0, held.x - scale.left) + Math.max(0, held.x - scale.right);
    if (beyond === 0) return;
    const before = this.#window.view.fromUs;
    this.#window.panBy(Math.max(-24, Math.min(24, beyond / 4)) * scale.usPerPixel);
    if (this.#window.view.fromUs !== before) gesture.move(held);
  }

  // ---- what the pointer asks

  #gestureGround(): GestureGround | undefined {
    const input = this.#input();
    const state = this.#state;
    if (input === undefined || state === undefined) return undefined;
    const { areas, scale } = scorePlan(input);
    const { clock } = input;
    return {
      state: { ...state, playhead: input.playhead },
      clock,
      areas,
      scale,
      window: this.#window,
      boundaryAt: (x) => nearestBoundary(clock, Math.max(0, scale.us(x))),
      emit: this.#options.onEvent,
    };
  }

  #hit({ x, y }: PointerSpot, touch: boolean): ScoreHit {
    const input = this.#input();
    if (input === undefined) return { part: 'nothing' };
    const { areas, scale } = scorePlan(input);
    return hitScore(input, areas, scale, { x, y, touch });
  }

  /** A double click: to the motion or the cycle, to the whole film from anywhere else. */
  #open(hit: ScoreHit): void {
    const method = this.#state?.method;
    if (method === undefined) return;
    const found =
      hit.part === 'motion'
        ? findItem(method[hit.hand], hit.motionId)
        : hit.part === 'cycle'
          ? findItem(method.cycles, hit.cycleId)
          : undefined;
    if (found !== undefined) this.zoomTo(found.start, found.end);
    else if (hit.part === 'axis' || hit.part === 'overview') this.fit();
  }

  #say(hit: ScoreHit): void {
    const words =
      this.#state === undefined || this.#clock === undefined ? '' : wordsFor(this.#state, this.#clock, hit);
    if (this.#layers.top.title !== words) this.#layers.top.title = words;
  }
}

/** A playhead or a loop may still be that of a longer film that was open a moment ago. */
function within(clock: MethodClock, boundary: number): number {
  return Math.max(0, Math.min(boundary, clock.last ?? boundary));
}

function spanWithin<Span extends { readonly from: number; readonly to: number }>(
  clock: MethodClock,
  span: Span,
): Span {
  return { ...span, from: within(clock, span.from), to: within(clock, span.to) };
}

function same(a: Ingredients, b: Ingredients): boolean {
  return a.length === b.length && a.every((value, index) => Object.is(value, b[index]));
}
