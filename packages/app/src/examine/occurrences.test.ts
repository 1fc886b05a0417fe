import { describe, expect, it } from 'vitest';
import { occurrencesOf } from './occurrences.ts';

describe('occurrences of a lead', () => {
  it('are one for each cycle, in order, from the first of its stretches to the last', () => {
    const trace = (cycle: number, from: number, to: number) => ({ cycle, hand: 'left' as const, from, to });
    expect(
      occurrencesOf([trace(2, 50, 60), trace(0, 20, 30), trace(0, 5, 8)]).map(
        ({ cycle, from, to, traces }) => [cycle, from, to, traces.length],
      ),
    ).toEqual([
      [0, 5, 30, 2],
      [2, 50, 60, 1],
    ]);
    expect(occurrencesOf([])).toEqual([]);
  });
});
