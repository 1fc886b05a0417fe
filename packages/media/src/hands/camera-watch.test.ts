import { describe, expect, it } from 'vitest';
import { CameraWatch } from './camera-watch.ts';

/** A bench with things on it, seen by a camera that stands at `shift`, and a hand-sized disc over it. */
function seen(shift: number, disc: { readonly x: number; readonly y: number }) {
  const [width, height] = [256, 144];
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [u, v] = [2 * x + shift, 2 * y + shift / 2];
      const bench = 120 + 60 * Math.sin(u / 23) * Math.cos(v / 17) + 30 * Math.sin(u / 61 + v / 41);
      const hand = Math.hypot(2 * x - disc.x, 2 * y - disc.y) < 70;
      data.fill(hand ? 210 : bench, 4 * (y * width + x), 4 * (y * width + x) + 3);
    }
  }
  return { width, height, data };
}

function watch(frames: number, shiftAt: (frame: number) => number) {
  const camera = new CameraWatch();
  // Only every tenth picture is looked at, so the others may be anything.
  const empty = { width: 256, height: 144, data: new Uint8ClampedArray(256 * 144 * 4) };
  for (let frame = 0; frame < frames; frame += 1) {
    const disc = { x: 256 + 180 * Math.sin(frame / 15), y: 144 + 60 * Math.cos(frame / 9) };
    camera.next(frame % 10 === 0 ? seen(shiftAt(frame), disc) : empty);
  }
  return camera.found;
}

describe('a camera', () => {
  it('that stands still is left in peace, however large the hand is that moves in the picture', () => {
    expect(watch(200, () => 0)).toEqual({ looks: 19, moves: 0 });
  });

  it('that is moved on is noticed each time', () => {
    const { looks, moves } = watch(200, (frame) => frame * 1.2);
    expect(looks).toBe(19);
    expect(moves).toBeGreaterThan(15);
  });

  it('that drifts slowly is noticed too', () => {
    expect(watch(600, (frame) => frame * 0.15).moves).toBeGreaterThan(5);
  });

  it('that is pushed once is one move', () => {
    expect(watch(200, (frame) => (frame < 95 ? 0 : 14)).moves).toBe(1);
  });
});
