import { expect, it } from 'vitest';
import { roundedDown, roundedUp } from './rounding.ts';

it.each([
  [6.648, 7, 6],
  [144, 144, 144],
  [144.00000000000003, 144, 144],
  [120.99999999999996, 121, 121],
  [504.21, 505, 504],
  [0.0230849, 1, 0],
  [0, 0, 0],
])('%d is rounded up to %d and down to %d', (value, up, down) => {
  expect([roundedUp(value), roundedDown(value)]).toEqual([up, down]);
});
