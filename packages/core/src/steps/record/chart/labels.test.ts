import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels, type WantedLabel } from './labels.ts';

const labelList = (most: number) =>
  fc
    .array(
      fc.record({
        ideal: fc.double({ min: -50, max: 350, noNaN: true }),
        height: fc.double({ min: 1, max: 30, noNaN: true }),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((labels) => [...labels].sort((a, b) => a.ideal - b.ideal));

function cost(labels: readonly WantedLabel[], places: readonly number[]): number {
  return labels.reduce((sum, label, index) => sum + ((places[index] ?? 0) - label.ideal) ** 2, 0);
}

/** The best placement by trying every way of pushing neighbours together: 2^(n−1) ways, each block at its best place. */
function bestByTrial(labels: readonly WantedLabel[], top: number, bottom: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let ways = 0; ways < 2 ** (labels.length - 1); ways += 1) {
    const blocks: WantedLabel[][] = [];
    labels.forEach((label, index) => {
      if (index > 0 && (ways >> (index - 1)) % 2 === 1) blocks.at(-1)?.push(label);
      else blocks.push([label]);
    });
    const places = blocks.flatMap((block) => placeBlock(block, top, bottom));
    if (isAllowed(labels, places, top, bottom)) best = Math.min(best, cost(labels, places));
  }
  return best;
}

function placeBlock(block: readonly WantedLabel[], top: number, bottom: number): number[] {
  let above = 0;
  const offsets = block.map((label) => {
    above += label.height;
    return above - label.height / 2;
  });
  const mean =
    block.reduce((sum, label, index) => sum + label.ideal - (offsets[index] ?? 0), 0) / block.length;
  const start = Math.max(top, Math.min(bottom - above, mean));
  return offsets.map((offset) => start + offset);
}

function isAllowed(
  labels: readonly WantedLabel[],
  places: readonly number[],
  top: number,
  bottom: number,
): boolean {
  return places.every((place, index) => {
    const half = (labels[index]?.height ?? 0) / 2;
    const next = places[index + 1];
    const gap = next === undefined ? 0 : next - (labels[index + 1]?.height ?? 0) / 2 - (place + half);
    return place - half >= top - 1e-9 && place + half <= bottom + 1e-9 && gap >= -1e-9;
  });
}

describe('spreading labels', () => {
  it('leaves labels alone that are far enough apart', () => {
    expect(
      spreadLabels(
        [
          { ideal: 20, height: 10 },
          { ideal: 40, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([20, 40]);
  });

  it('moves two that want the same place half a height each (by hand)', () => {
    expect(
      spreadLabels(
        [
          { ideal: 50, height: 10 },
          { ideal: 50, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([45, 55]);
  });

  it('keeps labels inside the column (by hand)', () => {
    expect(
      spreadLabels(
        [
          { ideal: 0, height: 10 },
          { ideal: 2, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([5, 15]);
    expect(
      spreadLabels(
        [
          { ideal: 98, height: 10 },
          { ideal: 100, height: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([85, 95]);
  });

  it('never overlaps, keeps the order and stays inside, for any labels that fit', () => {
    fc.assert(
      fc.property(labelList(40), (labels) => {
        const total = labels.reduce((sum, label) => sum + label.height, 0);
        const bottom = Math.max(300, total);
        expect(isAllowed(labels, spreadLabels(labels, 0, bottom), 0, bottom)).toBe(true);
      }),
      { seed: 11 },
    );
  });

  it('moves the labels as little as any arrangement that is tried one by one (2^(n−1) of them)', () => {
    fc.assert(
      fc.property(labelList(7), (labels) => {
        const ours = cost(labels, spreadLabels(labels, 0, 300));
        expect(ours).toBeLessThanOrEqual(bestByTrial(labels, 0, 300) + 1e-6);
      }),
      { seed: 12 },
    );
  });

  it('refuses labels that do not fit together', () => {
    expect(() => spreadLabels([{ ideal: 5, height: 20 }], 0, 10)).toThrow(RangeError);
  });
});
