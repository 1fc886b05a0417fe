import type { Picture } from './decoder.ts';
import type { Direction, FrameSpan } from './film.ts';

/**
 * Decoded frames around the place where the film is shown. When it is full, the frame furthest from there goes first;
 * one behind counts as twice as far. What goes is closed.
 */
export class FrameCache<P extends Picture<P>> {
  readonly #pictures = new Map<number, P>();
  readonly capacity: number;
  #position = 0;
  #direction: Direction = 1;
  #kept: FrameSpan | undefined;

  constructor(capacity: number) {
    this.capacity = capacity;
  }

  get(frame: number): P | undefined {
    return this.#pictures.get(frame);
  }

  has(frame: number): boolean {
    return this.#pictures.has(frame);
  }

  /** Takes a picture over; a frame that is there already stays. */
  put(frame: number, picture: P): void {
    if (this.#pictures.has(frame)) {
      picture.close();
      return;
    }
    this.#pictures.set(frame, picture);
    this.#trim();
  }

  follow(position: number, direction: Direction): void {
    this.#position = position;
    this.#direction = direction;
  }

  /** Holds frames at the end of a span at which that direction enters it, at most a fifth of the capacity. */
  keep(span: FrameSpan | undefined, direction: Direction): void {
    const most = Math.floor(this.capacity / 5);
    if (span === undefined) this.#kept = undefined;
    else if (direction > 0) this.#kept = { from: span.from, to: Math.min(span.to, span.from + most) };
    else this.#kept = { from: Math.max(span.from, span.to - most), to: span.to };
  }

  clear(): void {
    for (const picture of this.#pictures.values()) picture.close();
    this.#pictures.clear();
  }

  #trim(): void {
    while (this.#pictures.size > this.capacity) {
      const frame = this.#furthest();
      this.#pictures.get(frame)?.close();
      this.#pictures.delete(frame);
    }
  }

  #furthest(): number {
    let furthest = -1;
    let most = -1;
    for (const frame of this.#pictures.keys()) {
      const distance = this.#distance(frame);
      if (distance > most) {
        most = distance;
        furthest = frame;
      }
    }
    return furthest;
  }

  #distance(frame: number): number {
    if (this.#kept !== undefined && frame >= this.#kept.from && frame < this.#kept.to) return 0;
    const ahead = (frame - this.#position) * this.#direction;
    return ahead >= 0 ? ahead : -2 * ahead;
  }
}
