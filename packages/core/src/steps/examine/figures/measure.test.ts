import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowOf, studyOf } from '../../../../../../tests/helpers/two-hand-records.ts';
import { sampleOf } from '../../../ground/numerics/index.ts';
import { readMethod } from '../reading/index.ts';
import { addTo, amount, emptyTally, measuringOf, portion, valued, wholeOf } from './measure.ts';

function measuring(cycles: number) {
  const items = Array.from({ length: cycles }, (_, index) => ({ id: `c${index}`, start: index * 1000 }));
  const rows = { left: rowOf('left', `A ${cycles}`), right: rowOf('right', `A ${cycles}`) };
  const read = readMethod(studyOf({ ...rows, cycles: { items, end: cycles * 1000 } }), 'm');
  if (!read.ok) throw new Error(read.error.code);
  return measuringOf(read.value);
}

function tallyOf(values: readonly number[]) {
  const tally = emptyTally();
  values.forEach((value, cycle) => {
    if (value !== 0) addTo(tally, cycle, value);
  });
  return tally;
}

describe('a figure whose zeros are not written down', () => {
  it('has the sample of all its values, zeros among them', () => {
    const values = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 9_000_000 })), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(values, (list) => {
        const figure = amount(measuring(list.length), tallyOf(list), 'time');
        const [sparse, whole] = [figure.sample, sampleOf(list)];
        expect(figure.perCycle()).toEqual(list);
        expect(sparse?.n).toBe(whole.n);
        for (const [a, b] of [
          [sparse?.mean, whole.mean],
          [sparse?.deviation, whole.deviation],
          [sparse?.variation, whole.variation],
          [sparse?.interval?.low, whole.interval?.low],
          [sparse?.interval?.high, whole.interval?.high],
        ]) {
          expect(a === undefined).toBe(b === undefined);
          expect(Math.abs((a ?? 0) - (b ?? 0))).toBeLessThanOrEqual(1e-12 * 9_000_000);
        }
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it('adds up what comes for one cycle', () => {
    const tally = emptyTally();
    for (const [cycle, value] of [
      [0, 2],
      [0, 3],
      [2, 4],
    ] as const)
      addTo(tally, cycle, value);
    expect(amount(measuring(3), tally, 'count').perCycle()).toEqual([5, 0, 4]);
  });
});

describe('a share', () => {
  it('is total ÷ total, while its sample weighs cycles alike: 1 of 2 and 6 of 8 are 7 of 10, mean 0.625', () => {
    const share = portion(measuring(2), tallyOf([1, 6]), wholeOf([2, 8]));
    expect(share.value).toBe(0.7);
    expect(share.perCycle()).toEqual([0.5, 0.75]);
    expect(share.sample?.mean).toBe(0.625);
  });

  it('leaves out cycles without a whole, and has no value where no cycle has one', () => {
    const share = portion(measuring(3), tallyOf([1, 0, 2]), wholeOf([2, 0, 4]));
    expect(share.perCycle()).toEqual([0.5, undefined, 0.5]);
    expect(share.sample).toMatchObject({ n: 2, mean: 0.5, deviation: 0 });
    const none = portion(measuring(2), tallyOf([0, 0]), wholeOf([0, 0]));
    expect([none.value, none.sample, none.perCycle()]).toEqual([
      undefined,
      undefined,
      [undefined, undefined],
    ]);
  });

  it('as a rate carries its factor: 3 in half a minute are 6 a minute', () => {
    expect(portion(measuring(1), tallyOf([3]), wholeOf([30]), 'rate', 60).value).toBe(6);
  });
});

it('a figure that some cycles lack is the mean of the others', () => {
  const figure = valued('time', [4, undefined, 8]);
  expect([figure.value, figure.sample?.n]).toEqual([6, 2]);
  expect(valued('time', [undefined]).value).toBeUndefined();
});
