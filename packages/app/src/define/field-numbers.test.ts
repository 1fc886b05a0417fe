import { describe, expect, it } from 'vitest';
import { orNone, percentNumber, readNumber, readOccurs, readPercent } from './field-numbers.ts';

describe('numbers in fields', () => {
  it.each([
    ['12', 0.12],
    ['12,5', 0.125],
    ['12.5 %', 0.125],
    ['0', 0],
  ])('“%s” percent is taken', (text, share) => {
    expect(readPercent({ least: 0, below: 100 })(text)).toEqual({ ok: true, value: share });
  });

  it.each(['100', '-1', 'much', '', '1e3'])('“%s” percent of the shift is refused in a sentence', (text) => {
    const read = readPercent({ least: 0, below: 100 })(text);
    expect(read.ok ? '' : read.error).toContain('Write a number from 0 and below 100.');
  });

  it('an empty field may mean that there is none', () => {
    expect(orNone(readNumber({ above: 0 }))(' ')).toEqual({ ok: true, value: null });
    expect(readNumber({ above: 0, whole: true })('1.5').ok).toBe(false);
  });

  it('a share is shown with the digits it has', () => {
    expect([0.12, 0.125, 0, 0.333333].map(percentNumber)).toEqual(['12', '12.5', '0', '33.3333']);
  });
});

describe('how often an element occurs', () => {
  it.each([
    ['1 in 5', { times: 1, cycles: 5 }],
    ['2/3', { times: 2, cycles: 3 }],
    ['3 in 1', { times: 3, cycles: 1 }],
    ['every cycle', null],
    ['', null],
    ['1 in 1', null],
  ])('“%s” is understood', (text, expected) => {
    expect(readOccurs(text)).toEqual({ ok: true, value: expected });
  });

  it.each(['often', '0 in 5', '1 in 0', '1,5 in 2'])('“%s” is refused', (text) => {
    expect(readOccurs(text).ok).toBe(false);
  });
});
