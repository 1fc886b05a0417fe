import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontOf } from './front.ts';

interface Point {
  readonly cost: number;
  readonly time: number;
}

/** By the definition alone: none costs no more and takes no longer, with one of both less; of equal points the first. */
function unbeaten(points: readonly Point[]): readonly Point[] {
  return points.filter(
    (point, index) =>
      !points.some(
        (other, at) =>
          other.cost <= point.cost &&
          other.time <= point.time &&
          (other.cost < point.cost || other.time < point.time || at < index),
      ),
  );
}

const pointsArb = fc.array(
  fc.record({ cost: fc.integer({ min: 0, max: 12 }), time: fc.integer({ min: 0, max: 12 }) }),
  { maxLength: 14 },
);

describe('the front of time against cost', () => {
  it('is what nothing beats, by the definition written out', () => {
    fc.assert(
      fc.property(pointsArb, (points) => {
        const front = frontOf(
          points,
          ({ cost }) => cost,
          ({ time }) => time,
        );
        expect(new Set(front)).toEqual(new Set(unbeaten(points)));
      }),
      { numRuns: 500, seed: 11 },
    );
  });

  it('rises in cost and falls in time', () => {
    fc.assert(
      fc.property(pointsArb, (points) => {
        const front = frontOf(
          points,
          ({ cost }) => cost,
          ({ time }) => time,
        );
        front.slice(1).forEach((point, index) => {
          expect(point.cost).toBeGreaterThan(front[index]?.cost ?? 0);
          expect(point.time).toBeLessThan(front[index]?.time ?? 0);
        });
      }),
      { numRuns: 300, seed: 12 },
    );
  });
});
