import { expect, test } from 'vitest';
import { nextSpeed, speeds, speedText } from './speeds.ts';

test('from 1/16 to 4, each twice the one before', () => {
  expect(speeds[0]).toBe(1 / 16);
  expect(speeds.at(-1)).toBe(4);
  for (let at = 1; at < speeds.length; at += 1) expect(speeds[at]).toBe((speeds[at - 1] ?? 0) * 2);
});

test('faster and slower keep the direction and stop at the ends', () => {
  expect(nextSpeed(1, 1)).toBe(2);
  expect(nextSpeed(1, -1)).toBe(0.5);
  expect(nextSpeed(-1, 1)).toBe(-2);
  expect(nextSpeed(4, 1)).toBe(4);
  expect(nextSpeed(-1 / 16, -1)).toBe(-1 / 16);
  expect(nextSpeed(0.3, 1)).toBe(0.5);
});

test.each([
  [1 / 16, '1/16×'],
  [1, '1×'],
  [-0.25, '−1/4×'],
  [4, '4×'],
])('%f reads %s', (speed, text) => expect(speedText(speed)).toBe(text));
