import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { coveredTime, elementSpan, type Stretch } from './stretches.ts';
import { couplings, withMethod } from './testing/coupling-record.ts';

const clock = { span: (from: number, to: number) => micros(3 * (to - from)) };

describe('time that stretches cover', () => {
  it('is what a walk tick by tick counts, each tick once', () => {
    const stretchArb: fc.Arbitrary<Stretch> = fc
      .record({
        hand: fc.constantFrom<Hand>('left', 'right'),
        from: fc.nat(40),
        length: fc.integer({ min: 1, max: 20 }),
      })
      .map(({ hand, from, length }) => ({ hand, from, to: from + length }));
    fc.assert(
      fc.property(fc.array(stretchArb, { maxLength: 8 }), (stretches) => {
        const ticks = Array.from({ length: 60 }, (_, tick) => tick).filter((tick) =>
          stretches.some(({ from, to }) => from <= tick && tick < to),
        );
        expect(coveredTime(stretches, clock)).toBe(3 * ticks.length);
      }),
      { seed: 20_261_204, numRuns: 300 },
    );
  });
});

describe('how long an element lasts', () => {
  const method = couplings.methods[0];
  if (method === undefined) throw new Error('no method');

  it.each([
    ['to the next one in time, however the list is ordered', 0, 1.5e6],
    ['to the end of its cycle', 1.5e6, 4e6],
  ])('%s', (_, at, to) => expect(elementSpan(method, at)).toEqual({ from: at, to }));

  it('to the first cycle when it begins before it, to the end of the rows after the last or without any', () => {
    const [late] = withMethod(({ cycles }) => ({
      cycles: { items: cycles.items.slice(1), end: 9e6 },
      elements: [],
    })).methods;
    const [none] = withMethod(() => ({ cycles: { items: [], end: 0 }, elements: [] })).methods;
    if (late === undefined || none === undefined) throw new Error('no method');
    expect(elementSpan(late, 1e6)).toEqual({ from: 1e6, to: 4e6 });
    expect(elementSpan(late, 9.5e6)).toEqual({ from: 9.5e6, to: 10e6 });
    expect(elementSpan(none, 1e6)).toEqual({ from: 1e6, to: 10e6 });
  });
});
