import { describe, expect, it } from 'vitest';
import { palmAnchors } from './palm-anchors.ts';
import { findPalms, joinOverlapping, type Palm } from './palms.ts';

describe('anchors of the palm model', () => {
  it('are those of the published options: layers of strides 8, 16, 16, 16, neighbours of one stride together (MediaPipe, palm_detection_cpu.pbtxt; written apart)', () => {
    const strides = [8, 16, 16, 16];
    const centres: number[] = [];
    for (let layer = 0; layer < strides.length; ) {
      const stride = strides[layer] ?? 1;
      let inGrid = 0;
      // Each layer has one box of aspect 1 and one between its scale and the next.
      for (; strides[layer] === stride; layer += 1) inGrid += 2;
      for (let y = 0; y < 192 / stride; y += 1)
        for (let x = 0; x < 192 / stride; x += 1)
          for (let box = 0; box < inGrid; box += 1)
            centres.push(((x + 0.5) * stride) / 192, ((y + 0.5) * stride) / 192);
    }
    expect(centres).toHaveLength(2 * 2016);
    const made = palmAnchors();
    expect(made).toHaveLength(centres.length);
    expect(Math.max(...made.map((value, at) => Math.abs(value - (centres[at] ?? 9))))).toBeLessThan(1e-6);
  });
});

const half = { x: 480, y: 270, side: 960, angle: 0 };

describe('palms', () => {
  it('are decoded from their anchors into pixels of the picture', () => {
    const boxes = new Float32Array(2016 * 18);
    const scores = new Float32Array(2016).fill(-20);
    // Box 1152 is the first of the coarse grid: its cell is 16 pixels wide, centred at 8, 8 of 192.
    scores[1152] = 0;
    boxes.set([10, 40, 20, 30, 0, 60], 1152 * 18);
    const [palm, ...others] = findPalms(boxes, scores, half, 0.2);
    expect(others).toEqual([]);
    // One pixel of the model is 5 of the picture; the square begins 210 above it.
    expect(palm?.score).toBeCloseTo(0.5, 9);
    expect(palm?.x).toBeCloseTo((8 + 10) * 5 - 50, 4);
    expect(palm?.y).toBeCloseTo((8 + 40) * 5 - 210 - 75, 4);
    expect([palm?.width, palm?.height]).toEqual([100, 150]);
    expect(palm?.points[0]?.x).toBeCloseTo(40, 4);
    expect(palm?.points[0]?.y).toBeCloseTo((8 + 60) * 5 - 210, 4);
  });

  it('below the score do not count', () => {
    const scores = new Float32Array(2016).fill(Math.log(0.19 / 0.81));
    expect(findPalms(new Float32Array(2016 * 18), scores, half, 0.2)).toEqual([]);
  });

  const at = (x: number, score: number): Palm => ({
    score,
    x,
    y: 0,
    width: 100,
    height: 100,
    points: Array.from({ length: 7 }, (_, point) => ({ x: x + point, y: point })),
  });

  it('that overlap become one, their mean weighted by score, with the best score', () => {
    // 100 × 100 boxes 40 apart: 6000 of 14000 in common, over 0.3.
    const [one, ...others] = joinOverlapping([at(40, 0.3), at(0, 0.9)]);
    expect(others).toEqual([]);
    expect(one?.score).toBe(0.9);
    expect(one?.x).toBeCloseTo((0.9 * 0 + 0.3 * 40) / 1.2, 9);
    expect(one?.points[3]?.x).toBeCloseTo(10 + 3, 9);
  });

  it('that overlap little stay apart, best first', () => {
    // 60 apart: 4000 of 16000 in common, a quarter.
    expect(joinOverlapping([at(60, 0.3), at(0, 0.9)]).map(({ x }) => x)).toEqual([0, 60]);
  });
});
