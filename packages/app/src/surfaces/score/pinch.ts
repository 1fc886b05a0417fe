import type { GestureGround, PointerSpot } from './gesture.ts';

/** Two fingers: the times under them stay under them. */
export class Pinch {
  readonly #spots: Map<number, PointerSpot>;
  readonly #ground: () => GestureGround;
  readonly #times: readonly [number, number];

  constructor(ground: () => GestureGround, spots: Map<number, PointerSpot>) {
    this.#ground = ground;
    this.#spots = spots;
    const [a, b] = this.#places();
    const { scale } = ground();
    this.#times = [scale.us(a), scale.us(b)];
  }

  move(): void {
    const { scale, window, clock, state } = this.#ground();
    const [a, b] = this.#places();
    const [first, second] = this.#times;
    const apart = b - a;
    // Fingers one over the other say nothing about time.
    if (Math.abs(apart) < 8 || second === first || (second - first) / apart <= 0) return;
    const usPerPixel = (second - first) / apart;
    const fromUs = (first + second) / 2 - ((a + b) / 2 - scale.left) * usPerPixel;
    window.show(fromUs, fromUs + (scale.right - scale.left) * usPerPixel);
    window.lookedElsewhere(clock.timeOf(state.playhead));
  }

  #places(): [number, number] {
    const [a, b] = [...this.#spots.values()];
    return [a?.x ?? 0, b?.x ?? 0];
  }
}
