import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastByTrial } from '../../../../../../tests/oracles/assignment-by-trial.ts';
import { bestAssignment } from './best-assignment.ts';
import { exactAssignment } from './branch-and-bound.ts';
import { linearAssignment } from './linear-assignment.ts';
import { assignmentCost, type QuadraticAssignment } from './quadratic-assignment.ts';
import { tabuAssignment } from './tabu-search.ts';

const none = Number.POSITIVE_INFINITY;
const table = (length: number, most: number) =>
  fc.array(fc.integer({ min: 0, max: most }), { minLength: length, maxLength: length });

/** Small problems with spare spots, forbidden spots and pairs that exclude each other; every other one with distances that differ by the way. */
const problems = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 }), fc.boolean())
  .chain(([items, spare, even]) => {
    const spots = items + spare;
    return fc.record({
      items: fc.constant(items),
      spots: fc.constant(spots),
      flow: table(items * items, 9),
      distance: table(spots * spots, 20).map((list) =>
        even
          ? list.map((_, at) => list[Math.min(at, (at % spots) * spots + Math.floor(at / spots))] ?? 0)
          : list,
      ),
      linear: fc.array(
        fc.oneof({ arbitrary: fc.integer({ min: 0, max: 60 }), weight: 5 }, fc.constant(none)),
        {
          minLength: items * spots,
          maxLength: items * spots,
        },
      ),
      barred: fc.array(fc.integer({ min: 0, max: 999 }), { maxLength: 6 }),
    });
  })
  .map(
    ({ items, spots, flow, distance, linear, barred }): QuadraticAssignment => ({
      items,
      spots,
      flow: Float64Array.from(flow),
      distance: Float64Array.from(distance),
      linear: Float64Array.from(linear),
      conflict: (item, spot, other, otherSpot) =>
        barred.includes(item < other ? item * 64 + spot * 8 + otherSpot : other * 64 + otherSpot * 8 + spot),
    }),
  );

describe('items on spots against trying everything', () => {
  it('the same least cost, proven, also with spare spots, forbidden spots and pairs', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const least = leastByTrial(problem);
        const found = bestAssignment(problem, { seed: 3, starts: 2, moves: 30 });
        expect([found.cost, found.bound, found.proven]).toEqual([least, least, true]);
        expect(found.spotOf === undefined).toBe(least === none);
        if (found.spotOf !== undefined) expect(assignmentCost(problem, found.spotOf)).toBe(least);
      }),
      { seed: 61, numRuns: 400 },
    );
  });

  it('the proof alone finds it too, and stopped at any node its bound is never above it', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 30 }), (problem, nodes) => {
        const least = leastByTrial(problem);
        expect(exactAssignment(problem, { nodes: 100_000 }).cost).toBe(least);
        const stopped = exactAssignment(problem, { nodes });
        expect(stopped.bound).toBeLessThanOrEqual(least);
        expect(stopped.cost).toBeGreaterThanOrEqual(least);
        if (stopped.proven) expect(stopped.cost).toBe(least);
      }),
      { seed: 62, numRuns: 300 },
    );
  });

  it('the search by chance never reports a broken rule as an answer, and the same seed gives the same', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 99 }), (problem, seed) => {
        const wish = { seed, starts: 2, moves: 20 };
        const found = tabuAssignment(problem, wish);
        if (found !== undefined) expect(assignmentCost(problem, found)).toBeLessThan(none);
        expect(tabuAssignment(problem, wish)).toEqual(found);
      }),
      { seed: 63, numRuns: 200 },
    );
  });

  it('more items than spots have no assignment', () => {
    const problem: QuadraticAssignment = {
      items: 2,
      spots: 1,
      flow: new Float64Array(4),
      distance: new Float64Array(1),
      linear: new Float64Array(2),
    };
    const { spotOf, proven } = bestAssignment(problem, { seed: 1 });
    expect([spotOf, proven]).toEqual([undefined, true]);
  });
});

describe('rows to columns', () => {
  it('the least cost by trial, with prices that prove it', () => {
    const rows = fc.integer({ min: 1, max: 5 });
    fc.assert(
      fc.property(
        rows.chain((count) =>
          fc.tuple(
            fc.constant(count),
            fc.integer({ min: count, max: count + 2 }).chain((columns) =>
              fc.tuple(
                fc.constant(columns),
                fc.array(
                  fc.oneof({ arbitrary: fc.integer({ min: -20, max: 50 }), weight: 4 }, fc.constant(none)),
                  {
                    minLength: count * columns,
                    maxLength: count * columns,
                  },
                ),
              ),
            ),
          ),
        ),
        ([count, [columns, list]]) => {
          const costs = Float64Array.from(list);
          const least = leastByTrial({
            items: count,
            spots: columns,
            flow: new Float64Array(count * count),
            distance: new Float64Array(columns * columns),
            linear: costs,
          });
          const found = linearAssignment(costs, count, columns);
          expect(found?.cost ?? none).toBe(least);
          if (found === undefined) return;
          for (let row = 0; row < count; row += 1) {
            for (let column = 0; column < columns; column += 1) {
              const reduced =
                (costs[row * columns + column] as number) -
                (found.rows[row] as number) -
                (found.columns[column] as number);
              expect(reduced).toBeGreaterThan(-1e-9);
              if (found.columnOf[row] === column) expect(Math.abs(reduced)).toBeLessThan(1e-9);
            }
          }
          // A spare column is free, so none has a price above nothing.
          expect(Math.max(...found.columns)).toBeLessThanOrEqual(0);
        },
      ),
      { seed: 64, numRuns: 400 },
    );
  });
});
