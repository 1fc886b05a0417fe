import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { squareOfLandmarks, squareOfPalm } from './hand-square.ts';
import type { Point } from './picture.ts';

/** A hand that points up: the wrist below, four fingers in columns, the thumb to the left. */
const upright: Point[] = [
  { x: 100, y: 200 },
  { x: 70, y: 180 },
  { x: 55, y: 160 },
  { x: 45, y: 140 },
  { x: 40, y: 125 },
  ...[80, 95, 110, 125].flatMap((x) => [120, 80, 60, 45].map((y) => ({ x, y }))),
];

function turned({ x, y }: Point, by: number): Point {
  return { x: x * Math.cos(by) - y * Math.sin(by), y: x * Math.sin(by) + y * Math.cos(by) };
}

describe('the square around a hand', () => {
  it('leans as the hand: from the wrist to the knuckles, that of the middle finger counting double', () => {
    // Index 80, middle 95, ring finger 110 have their mean at 95, 80 above the wrist at 100.
    expect(squareOfLandmarks(upright).angle).toBeCloseTo(Math.atan2(95 - 100, 80), 9);
  });

  it('of a hand that stands upright is twice as large as palm and first joints, a tenth towards the fingers (MediaPipe, hand_landmark_landmarks_to_roi.pbtxt)', () => {
    const straight = upright.map((point, index) => (index === 0 ? { x: 95, y: 200 } : point));
    // Bounds of the twelve points: 45 to 125 across, 80 to 200 down; middle 85, 140; the longer side is 120.
    expect(squareOfLandmarks(straight)).toEqual({ x: 85, y: 140 - 0.1 * 120, side: 240, angle: 0 });
  });

  it('turns and moves with the hand', () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(angle, (by) => {
        const still = squareOfLandmarks(upright);
        const moved = squareOfLandmarks(upright.map((point) => turned(point, by)));
        const middle = turned(still, by);
        expect(moved.side).toBeCloseTo(still.side, 6);
        expect(moved.x).toBeCloseTo(middle.x, 6);
        expect(moved.y).toBeCloseTo(middle.y, 6);
        expect(Math.cos(moved.angle - still.angle - by)).toBeCloseTo(1, 9);
      }),
      { seed: 6 },
    );
  });

  it('from a palm: 2.6 times its box, half of it towards the fingers', () => {
    const points = Array.from({ length: 7 }, () => ({ x: 0, y: 0 }));
    // The fingers point to the right: wrist at 10, knuckle at 60.
    points[0] = { x: 10, y: 30 };
    points[2] = { x: 60, y: 30 };
    const square = squareOfPalm({ score: 1, x: 20, y: 10, width: 40, height: 40, points });
    expect(square.angle).toBeCloseTo(Math.PI / 2, 9);
    expect(square.side).toBeCloseTo(104, 9);
    expect(square.x).toBeCloseTo(40 + 20, 9);
    expect(square.y).toBeCloseTo(30, 9);
  });
});
