import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Calibration } from '../../../ground/study/index.ts';
import { type BenchPlane, benchPlane, type PlanePoint, type Track, trackOnBench } from './index.ts';

type Corners = Extract<Calibration, { kind: 'rectangle' }>['corners'];
const p = (x: number, y: number): PlanePoint => ({ x, y });
const rectangle = (corners: readonly PlanePoint[], across = 600, away = 400): Calibration => ({
  kind: 'rectangle',
  corners: corners as unknown as Corners,
  across,
  away,
});
const plane = (calibration: Calibration, mirrored = false): BenchPlane => {
  const made = benchPlane(calibration, { mirrored });
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
};
const code = (calibration: Calibration, mirrored = false) => {
  const made = benchPlane(calibration, { mirrored });
  return made.ok ? 'taken' : made.error.code;
};
const near = (found: PlanePoint, x: number, y: number) => {
  expect(found.x).toBeCloseTo(x, 6);
  expect(found.y).toBeCloseTo(y, 6);
};

/** A pinhole camera written out by hand: it looks at the bench point (0, 300) from behind and above the operator. */
function camera(height: number, back: number, focal: number, mirrored = false) {
  const target = [0, 300, 0] as const;
  const eye = [120, -back, height] as const;
  const minus = (a: readonly number[], b: readonly number[]) =>
    a.map((value, index) => value - (b[index] ?? 0));
  const cross = (
    [ax = 0, ay = 0, az = 0]: readonly number[],
    [bx = 0, by = 0, bz = 0]: readonly number[],
  ) => [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
  const unit = (a: readonly number[]) => a.map((value) => value / Math.sqrt(dot(a, a)));
  const ahead = unit(minus(target, eye));
  const right = unit(cross(ahead, [0, 0, 1]));
  const down = cross(ahead, right);
  return ({ x, y }: PlanePoint): PlanePoint => {
    const ray = minus([x, y, 0], eye);
    const across = (focal * dot(ray, right)) / dot(ray, ahead);
    return p(640 + (mirrored ? -across : across), 360 + (focal * dot(ray, down)) / dot(ray, ahead));
  };
}

const benchCorners = [p(-300, 0), p(300, 0), p(300, 400), p(-300, 400)];

describe('the bench from four corners', () => {
  it('a camera straight above: pixels become millimetres by hand', () => {
    // 1 pixel is 2 mm; the near edge lies at y 500 of the picture.
    const { toBench } = plane(rectangle([p(490, 500), p(790, 500), p(790, 300), p(490, 300)]));
    near(toBench(p(640, 500)), 0, 0);
    near(toBench(p(790, 300)), 300, 400);
    near(toBench(p(600, 450)), -80, 100);
  });

  it('a camera that faces the operator: left stays the operator’s left', () => {
    const { toBench } = plane(rectangle([p(790, 300), p(490, 300), p(490, 500), p(790, 500)]));
    near(toBench(p(790, 300)), -300, 0);
    near(toBench(p(640, 400)), 0, 200);
  });

  it('gives the points back that a pinhole camera looked at (R. Hartley, A. Zisserman 2004, section 2.3: a plane is seen by a projective map)', () => {
    const inside = fc.record({ x: fc.integer({ min: -700, max: 700 }), y: fc.integer({ min: 0, max: 900 }) });
    const set = fc.record({
      height: fc.integer({ min: 500, max: 2500 }),
      back: fc.integer({ min: 100, max: 1500 }),
      mirrored: fc.boolean(),
      point: inside,
    });
    fc.assert(
      fc.property(set, ({ height, back, mirrored, point }) => {
        const look = camera(height, back, 900, mirrored);
        const made = plane(rectangle(benchCorners.map(look)), mirrored);
        near(made.toBench(look(point)), point.x, point.y);
        const again = made.toPicture(point);
        expect(again.x).toBeCloseTo(look(point).x, 6);
        expect(again.y).toBeCloseTo(look(point).y, 6);
      }),
      { seed: 71, numRuns: 200 },
    );
  });

  it('a point above the horizon of the bench has no place on it', () => {
    const look = camera(600, 900, 900);
    const made = plane(rectangle(benchCorners.map(look)));
    const far = look(p(0, 1e7));
    expect(made.toBench(p(far.x, far.y + 5)).y).toBeGreaterThan(10_000);
    expect(made.toBench(p(far.x, far.y - 5))).toEqual(p(Number.NaN, Number.NaN));
  });

  it('the near left corner may be given its place', () => {
    const corners = [p(490, 500), p(790, 500), p(790, 300), p(490, 300)];
    const { toBench } = plane({ ...rectangle(corners), at: { x: 1000, y: 50 } } as Calibration);
    near(toBench(p(490, 500)), 1000, 50);
    near(toBench(p(790, 300)), 1600, 450);
  });

  it.each([
    [
      'two corners in one place',
      [p(490, 500), p(495, 510), p(790, 300), p(490, 300)],
      false,
      'track/corners-close',
    ],
    [
      'three corners on a line',
      [p(490, 500), p(640, 500), p(790, 500), p(490, 300)],
      false,
      'track/corners-line',
    ],
    [
      'corners that cross',
      [p(490, 500), p(790, 300), p(790, 500), p(490, 300)],
      false,
      'track/corners-crossed',
    ],
    ['a dent', [p(490, 500), p(790, 500), p(560, 440), p(490, 300)], false, 'track/corners-crossed'],
    [
      'the wrong way round',
      [p(790, 500), p(490, 500), p(490, 300), p(790, 300)],
      false,
      'track/corners-turned',
    ],
    [
      'a mirror image not said',
      [p(490, 500), p(790, 500), p(790, 300), p(490, 300)],
      true,
      'track/corners-turned',
    ],
    ['no numbers', [p(Number.NaN, 500), p(790, 500), p(790, 300), p(490, 300)], false, 'track/corners-close'],
  ])('%s: refused in words', (_, corners, mirrored, expected) => {
    expect(code(rectangle(corners), mirrored)).toBe(expected);
  });

  it('says which corners lie on one line', () => {
    const made = benchPlane(rectangle([p(490, 500), p(640, 500), p(790, 500), p(490, 300)]));
    expect(made.ok ? '' : made.error.message).toBe(
      'The corners near left, near right and far right lie on one line, so they are not corners of a rectangle. Click the corners again.',
    );
  });
});

describe('the bench from a length', () => {
  const length = (ends: readonly PlanePoint[], millimetres = 300): Calibration =>
    ({ kind: 'length', ends, millimetres }) as unknown as Calibration;

  it('is one scale for the whole picture', () => {
    const { toBench } = plane(length([p(100, 100), p(400, 500)], 250));
    const [a, b] = [toBench(p(0, 0)), toBench(p(30, 40))];
    expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(25, 9);
    expect([b.x > a.x, b.y < a.y]).toEqual([true, true]);
  });

  it('in a mirror image the operator’s right is to the left', () => {
    const { toBench } = plane(length([p(100, 100), p(400, 100)]), true);
    expect(toBench(p(30, 0)).x).toBeCloseTo(-30, 9);
  });

  it('too short a length is refused', () => {
    expect(code(length([p(10, 10), p(20, 10)]))).toBe('track/short-length');
    expect(code(length([p(10, 10), p(10, 10)]))).toBe('track/short-length');
  });
});

describe('a track on the bench', () => {
  it('is in millimetres, with its gaps, and its presence ends at the horizon', () => {
    const look = camera(600, 900, 900);
    const seen = [look(p(100, 200)), p(Number.NaN, Number.NaN), p(640, -4000)];
    const track: Track = {
      source: 'landmarks',
      frames: 3,
      width: 1280,
      height: 720,
      unit: 'pixels',
      right: {
        x: Float32Array.from(seen, (point) => point.x),
        y: Float32Array.from(seen, (point) => point.y),
        presence: Float32Array.of(1, 0, 1),
      },
    };
    const made = trackOnBench(track, plane(rectangle(benchCorners.map(look))));
    expect([made.unit, made.right?.x[0], made.right?.y[0]]).toEqual([
      'millimetres',
      expect.closeTo(100, 1),
      expect.closeTo(200, 1),
    ]);
    expect([...(made.right?.presence ?? [])]).toEqual([1, 0, 0]);
    expect(Number.isNaN(made.right?.x[1])).toBe(true);
    expect(trackOnBench(made, plane(rectangle(benchCorners.map(look))))).toBe(made);
  });
});
