import { describe, expect, it } from 'vitest';
import { domainOf } from './strip-plot.ts';

const row = (...values: readonly number[]) => ({
  dots: values.map((value) => ({ value, words: '', traces: undefined })),
  middle: undefined,
  low: undefined,
  high: undefined,
});

describe('the scale of rows of dots', () => {
  it('holds everything that is drawn, and 0', () => {
    expect(domainOf([row(2, 3), { ...row(-1), high: 5 }])).toEqual([-1, 5]);
    expect(domainOf([row(-4, -2)])).toEqual([-4, 0]);
  });

  it('has a length where there is nothing but 0', () => {
    expect(domainOf([row(0, 0)])).toEqual([0, 1]);
    expect(domainOf([])).toEqual([0, 1]);
  });
});
