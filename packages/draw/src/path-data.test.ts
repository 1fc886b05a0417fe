import { describe, expect, it } from 'vitest';
import { type Point, readPath } from './path-data.ts';

/** A point of a cubic curve by its definition (Bernstein form). */
function cubicAt(from: Point, first: Point, second: Point, to: Point, t: number): Point {
  const part = (axis: 0 | 1) =>
    (1 - t) ** 3 * from[axis] +
    3 * (1 - t) ** 2 * t * first[axis] +
    3 * (1 - t) * t ** 2 * second[axis] +
    t ** 3 * to[axis];
  return [part(0), part(1)];
}

function pointsAlong(d: string): Point[] {
  let at: Point = [0, 0];
  return readPath(d).flatMap((step): Point[] => {
    if (step.kind === 'close') return [];
    const from = at;
    at = step.to;
    if (step.kind !== 'cubic') return [];
    return [0, 0.25, 0.5, 0.75, 1].map((t) => cubicAt(from, step.first, step.second, step.to, t));
  });
}

describe('reading a path', () => {
  it('reads moves, lines, curves and closing', () => {
    expect(readPath('M 1 2 L 3 -4 C 1 2 3 4 5 6 Z')).toEqual([
      { kind: 'move', to: [1, 2] },
      { kind: 'line', to: [3, -4] },
      { kind: 'cubic', first: [1, 2], second: [3, 4], to: [5, 6] },
      { kind: 'close' },
    ]);
  });

  it('half a circle stays on the circle within 0.03 % of its radius, and on the side that the sweep flag names', () => {
    for (const [sweep, side] of [
      [1, -1],
      [0, 1],
    ] as const) {
      const points = pointsAlong(`M 0 10 A 10 10 0 0 ${sweep} 20 10`);
      expect(points.length).toBe(10);
      for (const [x, y] of points) {
        expect(Math.abs(Math.hypot(x - 10, y - 10) - 10)).toBeLessThan(0.003);
        expect((y - 10) * side).toBeGreaterThanOrEqual(-1e-9);
      }
    }
  });

  it('of the four arcs between two points it takes the one that the flags name (SVG 2, 9.3.8: circle around 10, 0 or 0, 10)', () => {
    const lengths = (large: number, sweep: number) => {
      const points = pointsAlong(`M 0 0 A 10 10 0 ${large} ${sweep} 10 10`);
      const centre: Point = large === sweep ? [10, 0] : [0, 10];
      for (const [x, y] of points) expect(Math.hypot(x - centre[0], y - centre[1])).toBeCloseTo(10, 1);
      return points.length / 5;
    };
    expect([lengths(0, 0), lengths(0, 1), lengths(1, 0), lengths(1, 1)]).toEqual([1, 1, 3, 3]);
  });

  it('enlarges radii that are too small to reach (SVG 2, 9.5.1)', () => {
    for (const [x, y] of pointsAlong('M 0 0 A 1 1 0 0 1 20 0'))
      expect(Math.hypot(x - 10, y)).toBeCloseTo(10, 1);
  });

  it('refuses other commands and missing numbers', () => {
    for (const d of ['m 1 2', 'M 1', 'M 1 2 Q 1 2 3 4', '1 2']) expect(() => readPath(d)).toThrow(RangeError);
  });
});
