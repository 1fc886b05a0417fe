import type { Player } from '@evenhand/media';

/** Paints the shown frame of a player, upright and whole, as large as its host allows. */
export class FilmSurface {
  readonly #host: HTMLElement;
  readonly #canvas: HTMLCanvasElement;
  readonly #context: CanvasRenderingContext2D;
  readonly #observer: ResizeObserver;
  #player: Player | undefined;
  #stop: () => void = () => {};
  #waiting = 0;

  constructor(host: HTMLElement, label: string) {
    this.#host = host;
    this.#canvas = document.createElement('canvas');
    this.#canvas.setAttribute('role', 'img');
    this.#canvas.setAttribute('aria-label', label);
    const context = this.#canvas.getContext('2d', { alpha: false });
    if (context === null) throw new Error('this browser gives no canvas to draw on');
    this.#context = context;
    host.replaceChildren(this.#canvas);
    this.#observer = new ResizeObserver(() => this.#soon());
    this.#observer.observe(host);
  }

  show(player: Player | undefined): void {
    if (player === this.#player) return;
    this.#stop();
    this.#player = player;
    // The frame is painted the moment it comes, so that what is seen is what a mark would be made at.
    this.#stop = player?.onShown(() => this.#paint()) ?? (() => {});
    this.#paint();
  }

  /** The canvas, for a test that reads the picture. */
  get canvas(): HTMLCanvasElement {
    return this.#canvas;
  }

  dispose(): void {
    this.#stop();
    this.#observer.disconnect();
    cancelAnimationFrame(this.#waiting);
    this.#host.replaceChildren();
  }

  #soon(): void {
    cancelAnimationFrame(this.#waiting);
    this.#waiting = requestAnimationFrame(() => this.#paint());
  }

  #paint(): void {
    const shown = this.#player?.shown();
    const ratio = devicePixelRatio;
    const wide = Math.max(1, Math.round(this.#host.clientWidth * ratio));
    const high = Math.max(1, Math.round(this.#host.clientHeight * ratio));
    if (this.#canvas.width !== wide || this.#canvas.height !== high) {
      this.#canvas.width = wide;
      this.#canvas.height = high;
    }
    const context = this.#context;
    context.fillStyle = '#0e0f10';
    context.fillRect(0, 0, wide, high);
    if (shown === undefined) return;
    const { handle } = shown;
    const scale = Math.min(wide / handle.width, high / handle.height);
    const width = Math.round(handle.width * scale);
    const height = Math.round(handle.height * scale);
    context.imageSmoothingQuality = 'high';
    handle.draw(context, Math.round((wide - width) / 2), Math.round((high - height) / 2), width, height);
    this.#canvas.dataset.frame = String(shown.frame);
  }
}
