import { describe, expect, it } from 'vitest';
import { type HandModels, handInput } from './hand-models.ts';
import { HandTracker, usualSettings } from './hand-tracker.ts';
import { palmInput } from './palm-anchors.ts';
import type { Picture } from './picture.ts';

/*
 * Models of a made world: every pixel of a picture tells its own place (red across, green down) and the number of the
 * frame (blue), so a model knows from its input which part of which frame it is given, and answers what is there.
 */
const size = 250;

function pictureOf(frame: number): Picture {
  const data = new Uint8ClampedArray(size * size * 4);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) data.set([x, y, frame, 255], 4 * (y * size + x));
  return { width: size, height: size, data };
}

interface MadeHand {
  readonly x: number;
  readonly y: number;
  readonly right?: boolean;
  /** The first model finds it too; without, only one that is followed is seen. */
  readonly palm?: boolean;
  /** Only the first model takes it for a hand. */
  readonly none?: boolean;
}

/** A hand of 20 pixels that points straight up: the wrist 20 below the knuckle of the middle finger. */
const shape = Array.from({ length: 21 }, (_, index) => {
  if (index === 0) return [0, 20] as const;
  const finger = Math.floor((index - 1) / 4);
  return [(finger - 2) * 6, finger === 0 ? 10 : -6 * ((index - 1) % 4)] as const;
});

function madeModels(handsIn: (frame: number) => readonly MadeHand[]) {
  const asked = { palms: 0, hands: 0 };
  const placeAt = (input: Float32Array, at: number) =>
    [0, 1, 2].map((colour) => (input[at + colour] ?? 0) * 255) as [number, number, number];
  const models: HandModels = {
    palms: async (input) => {
      asked.palms += 1;
      const [, , frame] = placeAt(input, 3 * ((palmInput / 2) * palmInput + palmInput / 2));
      const boxes = new Float32Array(2016 * 18);
      const scores = new Float32Array(2016).fill(-20);
      for (const [index, { x, y }] of handsIn(Math.round(frame))
        .filter(({ palm }) => palm !== false)
        .entries()) {
        const scale = palmInput / size;
        // All from the anchor of the first box, 4 pixels from the corner.
        const box = [x * scale - 4, y * scale - 4, 30 * scale, 30 * scale];
        const wrist = [x * scale - 4, (y + 20) * scale - 4];
        const knuckle = [x * scale - 4, y * scale - 4];
        boxes.set([...box, ...wrist, 0, 0, ...knuckle], index * 18);
        // The first cell has two boxes.
        if (index >= 2) throw new Error('the made world has two palms at most');
        scores[index] = 5;
      }
      return { boxes, scores };
    },
    hand: async (input) => {
      asked.hands += 1;
      const last = 3 * (handInput * handInput - 1);
      const [left, top, frame] = placeAt(input, 0);
      const [right, bottom] = placeAt(input, last);
      const here = handsIn(Math.round(frame)).find(
        ({ x, y, none }) =>
          none !== true &&
          x > left &&
          x < right &&
          y > top &&
          y < bottom &&
          Math.abs(x - (left + right) / 2) < 40,
      );
      const landmarks = new Float32Array(63);
      const scale = (handInput - 1) / (right - left);
      for (const [index, [dx, dy]] of shape.entries()) {
        landmarks[3 * index] = ((here?.x ?? 0) + dx - left) * scale;
        landmarks[3 * index + 1] = ((here?.y ?? 0) + dy - top) * scale;
      }
      const world = Float32Array.from(landmarks, (value, at) => (at % 3 === 2 ? 0 : value));
      return {
        landmarks,
        presence: here === undefined ? 0 : 0.9,
        right: here?.right === true ? 1 : 0,
        world,
      };
    },
    dispose: () => {},
  };
  return { models, asked };
}

async function follow(
  frames: number,
  handsIn: (frame: number) => readonly MadeHand[],
  settings: Partial<typeof usualSettings> = {},
) {
  const { models, asked } = madeModels(handsIn);
  const tracker = new HandTracker(models, { ...usualSettings, seekEvery: 1, margin: 0, ...settings });
  const found = [];
  for (let frame = 0; frame < frames; frame += 1)
    found.push(...(await tracker.next(frame, pictureOf(frame))));
  return { found: found.sort((a, b) => a.frame - b.frame || a.trail - b.trail), asked };
}

describe('hands followed through frames', () => {
  it('stand where they are, frame by frame, on one trail', async () => {
    const { found } = await follow(8, (frame) => [{ x: 100 + 3 * frame, y: 120 }]);
    expect(found.map(({ frame, trail }) => [frame, trail])).toEqual(
      Array.from({ length: 8 }, (_, frame) => [frame, 1]),
    );
    for (const { frame, place } of found) {
      // The mean of the four knuckles: columns -6, 0, 6, 12 beside the place of the hand, at its height.
      expect(Math.abs(place.x - (103 + 3 * frame))).toBeLessThan(2);
      expect(Math.abs(place.y - 120)).toBeLessThan(2);
    }
  });

  it('are found in the frames before the one in which the first model saw them', async () => {
    const handsIn = (frame: number) => [{ x: 100 + 2 * frame, y: 120, palm: frame >= 9 }];
    const { found } = await follow(12, handsIn, { back: 6 });
    expect(found.map(({ frame }) => frame)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(new Set(found.map(({ trail }) => trail)).size).toBe(1);
    const without = await follow(12, handsIn, { back: 0 });
    expect(without.found.map(({ frame }) => frame)).toEqual([9, 10, 11]);
  });

  it('are not sought any more while two are followed, but now and then', async () => {
    const handsIn = () => [
      { x: 60, y: 120 },
      { x: 190, y: 120, right: true },
    ];
    const { found, asked } = await follow(31, handsIn, { lookEvery: 15 });
    expect(found).toHaveLength(62);
    expect(asked).toEqual({ palms: 3, hands: 62 });
    expect(new Set(found.filter(({ trail }) => trail === 2).map(({ right }) => right)).size).toBe(1);
  });

  it('are sought in every fourth frame while one is followed', async () => {
    const { found, asked } = await follow(17, () => [{ x: 100, y: 120 }]);
    expect(found).toHaveLength(17);
    expect(asked).toEqual({ palms: 5, hands: 17 });
  });

  it('that were none are looked at again after eight frames; one that comes there is then found in the frames before', async () => {
    const never = await follow(20, () => [{ x: 100, y: 120, none: true }]);
    expect(never.found).toEqual([]);
    expect(never.asked).toEqual({ palms: 20, hands: 3 });
    const { found } = await follow(12, (frame) => [{ x: 100, y: 120, none: frame < 3 }]);
    expect(found.map(({ frame }) => frame)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11]);
    const beside = await follow(3, (frame) => [
      { x: 60, y: 120, none: true },
      { x: 190, y: 120, palm: frame >= 2 },
    ]);
    expect(beside.found.map(({ frame }) => frame)).toEqual([0, 1, 2]);
  });

  it('that come to the same place count once', async () => {
    const { found } = await follow(20, (frame) => [
      { x: 60, y: 120 },
      { x: frame < 10 ? 190 : Math.max(60, 190 - 30 * (frame - 9)), y: 120 },
    ]);
    const last = found.filter(({ frame }) => frame === 19);
    expect(last).toHaveLength(1);
  });

  it('that are gone are missing, not invented', async () => {
    const { found } = await follow(10, (frame) => (frame < 4 ? [{ x: 100, y: 120 }] : []));
    expect(found.map(({ frame }) => frame)).toEqual([0, 1, 2, 3]);
  });
});
