import { describe, expect, it } from 'vitest';
import { gridCycles, gridLines, moved, scrollTo, windowOf } from './grid-columns.ts';

describe('the cycles that are shown', () => {
  it('go from 1 to one more than the last, so that the next reading has a place', () => {
    expect(gridCycles('readings', [])).toHaveLength(10);
    expect(gridCycles('readings', [1, 2, 14])).toEqual(Array.from({ length: 15 }, (_, at) => at + 1));
  });

  it('are those of the record where it gives the times', () => {
    expect(gridCycles('record', [1, 2, 5])).toEqual([1, 2, 5]);
  });

  it('are only those with a reading when their numbers are far apart', () => {
    expect(gridCycles('readings', [1, 900_000])).toEqual([1, 900_000, 900_001]);
  });
});

describe('what is drawn of 10,000 columns', () => {
  it('is what can be seen and little more', () => {
    const { from, to } = windowOf(200_000, 1_000, 42, 10_000);
    expect(from * 42).toBeLessThanOrEqual(200_000);
    expect(to * 42).toBeGreaterThanOrEqual(201_000);
    expect(to - from).toBeLessThan(40);
  });

  it('ends with the last column', () => {
    expect(windowOf(419_000, 1_000, 42, 10_000).to).toBe(10_000);
    expect(windowOf(0, 1_000, 42, 3)).toEqual({ from: 0, to: 3 });
  });

  it('scrolls no further than needed', () => {
    expect(scrollTo(100, 500, 80, 120)).toBe(80);
    expect(scrollTo(100, 500, 590, 632)).toBe(132);
    expect(scrollTo(100, 500, 300, 342)).toBe(100);
  });
});

describe('keys', () => {
  const lines = gridLines([{ work: 'worker' }, { work: 'process' }, { work: 'worker' }], true);

  it('ratings stand beneath the times of what is rated; machine time is not', () => {
    expect(lines.map(({ element, kind }) => `${element} ${kind}`)).toEqual([
      '0 time',
      '0 rating',
      '1 time',
      '2 time',
      '2 rating',
    ]);
    for (const [index, line] of lines.entries()) {
      if (index > 0) expect(line.top).toBe((lines[index - 1]?.top ?? 0) + (lines[index - 1]?.height ?? 0));
    }
  });

  it('Enter goes down the times, passes over ratings, and goes on to the next cycle', () => {
    const places = [{ line: 0, column: 3 }];
    for (let step = 0; step < 3; step += 1) {
      places.push(moved(places.at(-1) ?? { line: 0, column: 0 }, 'next', lines, 5, 4));
    }
    expect(places.slice(1)).toEqual([
      { line: 2, column: 3 },
      { line: 3, column: 3 },
      { line: 0, column: 4 },
    ]);
    expect(moved({ line: 3, column: 4 }, 'next', lines, 5, 4)).toEqual({ line: 3, column: 4 });
    expect(moved({ line: 0, column: 4 }, 'before', lines, 5, 4)).toEqual({ line: 3, column: 3 });
  });

  it('never lead out of the table', () => {
    for (const move of ['left', 'right', 'up', 'down', 'page-left', 'page-right', 'first', 'last'] as const) {
      for (const line of [0, 4]) {
        for (const column of [0, 4]) {
          const to = moved({ line, column }, move, lines, 5, 40);
          expect(to.line).toBeGreaterThanOrEqual(0);
          expect(to.line).toBeLessThan(5);
          expect(to.column).toBeGreaterThanOrEqual(0);
          expect(to.column).toBeLessThan(5);
        }
      }
    }
  });
});
