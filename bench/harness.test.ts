import { expect, test } from 'vitest';
import { fixed, quantile, race, tableText } from './harness.ts';

// Hyndman and Fan, "Sample quantiles in statistical packages", The American Statistician 50 (1996), definition 7;
// the values below are worked by hand from it: position (n − 1)·p, linear between neighbours.
test.each([
  [[7], 0.95, 7],
  [[4, 1, 3, 2], 0.5, 2.5],
  [[10, 20, 30, 40, 50], 0.95, 48],
  [[10, 20, 30, 40, 50], 0, 10],
  [[10, 20, 30, 40, 50], 1, 50],
])('the quantile of %j at %s is %s', (values, share, expected) => {
  expect(quantile(values, share)).toBeCloseTo(expected, 12);
});

test('a quantile of nothing, or outside 0 to 1, is refused', () => {
  expect(() => quantile([], 0.5)).toThrow(RangeError);
  expect(() => quantile([1], 1.5)).toThrow(RangeError);
});

test('contenders run in turn, to and fro, and only rounds after the warm-up are measured', async () => {
  let clock = 0;
  const order: string[] = [];
  const run = (name: string, ms: number) => () => {
    order.push(name);
    clock += ms;
  };
  const timings = await race({ a: run('a', 1), b: run('b', 5) }, { rounds: 3, warmUp: 1, now: () => clock });
  expect(order.join('')).toBe('baabbaab');
  expect(timings).toEqual([
    { name: 'a', ms: [1, 1, 1] },
    { name: 'b', ms: [5, 5, 5] },
  ]);
});

test('the columns of a table stand under one another', () => {
  expect(
    tableText(
      'title',
      ['', 'ms'],
      [
        ['long name', '1'],
        ['ä', '100'],
      ],
    ),
  ).toBe('title\n            ms\nlong name    1\nä          100');
});

test.each([
  [0, '0'],
  [7.512, '7.51'],
  [88.04, '88.0'],
  [1234.5, '1235'],
  [0.012345, '0.0123'],
])('%s is printed as %s', (value, text) => {
  expect(fixed(value)).toBe(text);
});
