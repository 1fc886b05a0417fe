import {
  clampView,
  followView,
  frameSpan,
  panView,
  type TimeView,
  type ViewLimits,
  zoomView,
} from '@evenhand/core/record';

/** Which part of the film the score shows, and how that changes. */
export class ScoreWindow {
  #limits: ViewLimits = { fromUs: 0, toUs: 1, leastUs: 1 };
  #view: TimeView = { fromUs: 0, toUs: 1 };
  /** A person looked elsewhere while the film plays: it is not followed until it comes into sight again. */
  #elsewhere = false;
  readonly #changed: (view: TimeView) => void;

  constructor(changed: (view: TimeView) => void) {
    this.#changed = changed;
  }

  get view(): TimeView {
    return this.#view;
  }

  get whole(): TimeView {
    return { fromUs: this.#limits.fromUs, toUs: this.#limits.toUs };
  }

  /** Another film, another clock, a longer row: what was shown whole stays whole, anything else is kept as it is. */
  setLimits(limits: ViewLimits, anew: boolean): void {
    const before = this.#limits;
    const whole = this.#view.fromUs <= before.fromUs && this.#view.toUs >= before.toUs;
    this.#limits = limits;
    this.#set(anew || whole ? this.whole : clampView(this.#view, limits));
  }

  show(fromUs: number, toUs: number): void {
    this.#set(clampView({ fromUs, toUs }, this.#limits));
  }

  zoomTo(fromUs: number, toUs: number): void {
    this.#set(frameSpan(fromUs, toUs, this.#limits));
  }

  zoomAt(factor: number, us: number): void {
    this.#set(zoomView(this.#view, factor, us, this.#limits));
  }

  /** Around a time when it is in sight, else around the middle. */
  zoomAround(factor: number, us: number): void {
    const { fromUs, toUs } = this.#view;
    this.zoomAt(factor, us >= fromUs && us <= toUs ? us : (fromUs + toUs) / 2);
  }

  panBy(us: number): void {
    this.#set(panView(this.#view, us, this.#limits));
  }

  fit(): void {
    this.#set(this.whole);
  }

  reveal(us: number): void {
    this.#elsewhere = false;
    this.#set(followView(this.#view, us, this.#limits));
  }

  /** As the film plays: turn the page when it runs out of sight, unless a person has turned away. */
  follow(us: number): void {
    const seen = us >= this.#view.fromUs && us < this.#view.toUs;
    if (seen) this.#elsewhere = false;
    else if (!this.#elsewhere) this.#set(followView(this.#view, us, this.#limits));
  }

  /** After a person panned or zoomed while the film stands at `us`. */
  lookedElsewhere(us: number): void {
    this.#elsewhere = us < this.#view.fromUs || us >= this.#view.toUs;
  }

  #set(view: TimeView): void {
    if (view.fromUs === this.#view.fromUs && view.toUs === this.#view.toUs) return;
    this.#view = view;
    this.#changed(view);
  }
}
