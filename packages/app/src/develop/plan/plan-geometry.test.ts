import { describe, expect, it } from 'vitest';
import { dimensionsOf, namesAt, type Placed, snapped, stepped, viewOf } from './plan-geometry.ts';

const place = (id: string, x: number, y: number): Placed => ({
  id,
  name: id,
  kind: 'bin',
  at: { x, y },
  size: { x: 100, y: 80 },
});

describe('a place that is dragged', () => {
  it('falls on the grid', () => {
    expect(snapped({ x: 237, y: 261 }, 25, []).at).toEqual({ x: 225, y: 250 });
    expect(snapped({ x: 237, y: 261 }, 10, []).at).toEqual({ x: 240, y: 260 });
  });

  it('falls into line with another place, with its mirror image and with the middle', () => {
    const others = [place('a', -263, 343)];
    expect(snapped({ x: 258, y: 340 }, 10, others)).toEqual({
      at: { x: 263, y: 343 },
      across: 263,
      away: 343,
    });
    expect(snapped({ x: 5, y: 100 }, 10, others)).toEqual({
      at: { x: 0, y: 100 },
      across: 0,
      away: undefined,
    });
  });

  it('never comes in front of the near edge', () => {
    expect(snapped({ x: 100, y: -40 }, 10, []).at.y).toBe(0);
    expect(stepped({ x: 0, y: 3 }, 'ArrowDown', 10, false)).toEqual({ x: 0, y: 0 });
  });
});

describe('an arrow key', () => {
  it.each([
    ['ArrowRight', false, { x: 10, y: 20 }],
    ['ArrowLeft', false, { x: 0, y: 20 }],
    ['ArrowUp', false, { x: 3, y: 30 }],
    ['ArrowDown', true, { x: 3, y: 19 }],
  ] as const)(
    '%s goes to the next line of the grid, and with the shift key one millimetre',
    (key, fine, to) => {
      expect(stepped({ x: 3, y: 20 }, key, 10, fine)).toEqual(to);
    },
  );

  it('other keys move nothing', () => {
    expect(stepped({ x: 3, y: 20 }, 'Enter', 10, false)).toBeUndefined();
  });
});

describe('dimension lines of a place', () => {
  it('give the distance from the middle and the edge, and the clear gaps beside it', () => {
    const lengths = dimensionsOf(place('a', 200, 300), [
      place('b', 350, 310),
      place('c', -100, 290),
      place('d', 200, 500),
    ]).map(({ length }) => length);
    // 200 to the middle, 300 to the edge; 200−50−(−100+50) = 200 to the left, 350−50−(200+50) = 50 to the right.
    expect(lengths).toEqual([200, 300, 200, 50]);
  });
});

describe('names of places', () => {
  it('stand below their places, and above where they would meet another place or name', () => {
    const [low, high] = namesAt([place('low', 0, 110), place('high', 0, 200)]);
    // Below “high” stands “low”, which begins 10 mm further down.
    expect(low?.y).toBeGreaterThan(-110 + 40);
    expect(high?.y).toBeLessThan(-200 - 40);
  });
});

describe('what is seen', () => {
  it('is the whole bench, and a place that stands beside it', () => {
    const view = viewOf({ width: 1000, depth: 500 }, [place('a', 700, 100)]);
    expect(view.left).toBeLessThanOrEqual(-750);
    expect(view.left + view.width).toBeGreaterThanOrEqual(750);
    expect(view.top).toBeLessThanOrEqual(-500);
  });
});
