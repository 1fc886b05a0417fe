import { expect, it } from 'vitest';
import { firstFault, foundText, rangeFault, shortNumber } from './inputs.ts';

it('a number outside its range is told with the range and what was given', () => {
  expect(rangeFault('The share', 2, { above: 0, most: 1 })?.message).toBe(
    'The share must be a number above 0 and at most 1; 2 was given.',
  );
  expect(rangeFault('The count', 1.5, { least: 1, whole: true })?.message).toBe(
    'The count must be a whole number of at least 1; 1.5 was given.',
  );
  expect(rangeFault('The share', 0.5, { above: 0, most: 1 })).toBeUndefined();
  expect(
    firstFault(undefined, rangeFault('A', 0, { above: 0 }), rangeFault('B', 0, { above: 0 }))?.message,
  ).toContain('A must');
});

it.each([
  [Number.NaN, 'something that is no number'],
  [Number.POSITIVE_INFINITY, 'a number beyond all measure'],
  [-1e300, 'a number beyond all measure'],
  [1e-9, 'a number next to 0'],
  [0.0500001, '0.05'],
  [-3, '−3'],
])('%d is told as “%s”', (value, text) => expect(foundText(value)).toBe(text));

it('a number has as many decimals as it needs, six at most', () => {
  expect([12, 0.5, 100, 1 / 3].map(shortNumber)).toEqual(['12', '0.5', '100', '0.333333']);
});
