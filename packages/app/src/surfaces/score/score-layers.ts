import type { SceneNode } from '@evenhand/core/ground/scene';
import { type Look, paintNodes } from '@evenhand/draw';

/** From the bottom up. The ground is opaque and holds everything; the others lie clear over it. */
const names = ['ground', 'overview', 'overlay'] as const;
export type LayerName = (typeof names)[number];

export interface LayerSize {
  readonly width: number;
  readonly height: number;
  readonly ratio: number;
}

/** Canvases one over the other, so that a step of the film repaints a line and not the whole picture. */
export class ScoreLayers {
  /** Takes the pointer. */
  readonly top: HTMLElement;
  readonly #host: HTMLElement;
  readonly #box: HTMLElement;
  readonly #contexts = new Map<LayerName, CanvasRenderingContext2D>();
  #size: LayerSize = { width: 0, height: 0, ratio: 0 };

  constructor(host: HTMLElement, label: string) {
    this.#host = host;
    this.#box = document.createElement('div');
    this.#box.setAttribute('role', 'img');
    this.#box.setAttribute('aria-label', label);
    this.#box.style.cssText = 'position:relative;width:100%;height:100%;overflow:hidden;contain:strict';
    for (const name of names) this.#add(name);
    this.top = this.#box;
    this.top.style.touchAction = 'none';
    host.replaceChildren(this.#box);
  }

  #add(name: LayerName): void {
    const canvas = document.createElement('canvas');
    canvas.style.cssText = 'position:absolute;left:0;top:0;display:block;pointer-events:none';
    const context = canvas.getContext('2d', { alpha: name !== 'ground' });
    if (context === null) throw new Error('this browser gives no canvas to draw on');
    this.#contexts.set(name, context);
    this.#box.append(canvas);
  }

  get size(): LayerSize {
    return this.#size;
  }

  /** Takes the size of the host as it is now. @returns true when everything has to be painted anew */
  measure(): boolean {
    const { width, height, ratio } = this.#size;
    const now = {
      width: Math.max(1, this.#host.clientWidth),
      height: Math.max(1, this.#host.clientHeight),
      ratio: devicePixelRatio || 1,
    };
    if (now.width === width && now.height === height && now.ratio === ratio) return false;
    this.#size = now;
    for (const { canvas } of this.#contexts.values()) {
      canvas.width = Math.round(now.width * now.ratio);
      canvas.height = Math.round(now.height * now.ratio);
      canvas.style.width = `${now.width}px`;
      canvas.style.height = `${now.height}px`;
    }
    return true;
  }

  paint(name: LayerName, nodes: readonly SceneNode[], look: Look): void {
    const context = this.#contexts.get(name);
    if (context === undefined) return;
    const { width, height, ratio } = this.#size;
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    if (name === 'ground') {
      context.fillStyle = look.inks.paper;
      context.fillRect(0, 0, width, height);
    } else context.clearRect(0, 0, width, height);
    paintNodes(context, nodes, look);
  }

  dispose(): void {
    this.#host.replaceChildren();
  }
}
