import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gainsOf, likeliest, spread } from './likeliest.ts';

const costs = (count: number) =>
  fc.array(fc.double({ min: 0, max: 12, noNaN: true }), { minLength: count, maxLength: count });

/** Three boundaries in windows of five points that overlap, with any costs. */
const problem = fc.record({
  lows: fc.constantFrom([0, 0, 0], [0, 1, 2], [0, 3, 4]),
  own: fc.tuple(costs(5), costs(5), costs(5)),
  pairs: fc.tuple(costs(25), costs(25)),
});

/** All ways with their costs, one after another: what the two passes must agree with. */
function everyWay({
  lows,
  own,
  pairs,
}: {
  lows: readonly number[];
  own: readonly number[][];
  pairs: readonly number[][];
}) {
  const ways: { places: [number, number, number]; cost: number }[] = [];
  for (let a = 0; a < 5; a += 1)
    for (let b = 0; b < 5; b += 1)
      for (let c = 0; c < 5; c += 1) {
        const [pa, pb, pc] = [a + (lows[0] ?? 0), b + (lows[1] ?? 0), c + (lows[2] ?? 0)];
        if (pb < pa || pc < pb) continue;
        const sum = (own[0]?.[a] ?? 0) + (own[1]?.[b] ?? 0) + (own[2]?.[c] ?? 0);
        ways.push({
          places: [a, b, c],
          cost: sum + (pairs[0]?.[a * 5 + b] ?? 0) + (pairs[1]?.[b * 5 + c] ?? 0),
        });
      }
  return ways;
}

function inOrderOnly({
  lows,
  pairs,
}: {
  lows: readonly number[];
  pairs: readonly number[][];
}): Float64Array[] {
  return pairs.map((pair, index) =>
    Float64Array.from(pair, (cost, cell) =>
      (cell % 5) + (lows[index + 1] ?? 0) < Math.floor(cell / 5) + (lows[index] ?? 0)
        ? Number.POSITIVE_INFINITY
        : cost,
    ),
  );
}

describe('where boundaries most likely lie', () => {
  it('the spread is that of all ways, counted one by one', () => {
    fc.assert(
      fc.property(problem, fc.double({ min: 0.5, max: 4, noNaN: true }), (made, heat) => {
        const found = spread(
          made.own.map((one) => Float64Array.from(one)),
          inOrderOnly(made),
          heat,
        );
        const ways = everyWay(made);
        const all = ways.reduce((sum, { cost }) => sum + Math.exp(-cost / heat), 0);
        for (let index = 0; index < 3; index += 1)
          for (let at = 0; at < 5; at += 1) {
            const here = ways
              .filter(({ places }) => places[index] === at)
              .reduce((sum, { cost }) => sum + Math.exp(-cost / heat), 0);
            expect(found[index]?.[at]).toBeCloseTo(here / all, 9);
          }
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it('no other places in order are worth more', () => {
    fc.assert(
      fc.property(problem, ({ lows, own }) => {
        const windows = lows.map((low) => ({ low, count: 5 }));
        const gains = own.map((one) => Float64Array.from(one));
        const first = [0, 2 - ((lows[1] ?? 0) - (lows[0] ?? 0)), 4 - (lows[2] ?? 0)];
        const cheapest = Int32Array.from(first, (at) => Math.max(0, at));
        const chosen = likeliest(cheapest, windows, gains);
        const worth = (places: ArrayLike<number>) =>
          gains.reduce((sum, gain, index) => sum + (gain[places[index] ?? 0] ?? 0), 0);
        const place = (places: ArrayLike<number>, index: number) => (places[index] ?? 0) + (lows[index] ?? 0);
        const gap = (places: ArrayLike<number>, index: number) =>
          place(places, index + 1) - place(places, index);
        const fits = (places: ArrayLike<number>) =>
          [0, 1].every((index) =>
            gap(cheapest, index) < 2
              ? gap(places, index) >= 0 && gap(places, index) < 2
              : gap(places, index) >= 2,
          );
        expect(fits(chosen)).toBe(true);
        for (let code = 0; code < 125; code += 1) {
          const other = [Math.floor(code / 25), Math.floor(code / 5) % 5, code % 5];
          if (fits(other)) expect(worth(other)).toBeLessThanOrEqual(worth(chosen) + 1e-9);
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('a place that many ways agree on is worth more than one that only the cheapest takes', () => {
    const chances = Float64Array.from([0.3, 0, 0, 0, 0, 0, 0, 0, 0.24, 0.23, 0.23]);
    const gains = gainsOf(chances, 2, 5);
    const best = gains.indexOf(Math.max(...gains));
    expect([8, 9, 10]).toContain(best);
  });
});
