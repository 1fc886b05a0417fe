import { describe, expect, it } from 'vitest';
import { summarise } from './element-summary.ts';
import { readingsOf } from './reading.ts';

const plain = (times: readonly (number | undefined)[]) => {
  const result = summarise('screw on', readingsOf(times));
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('what the readings of an element say', () => {
  it('worked by hand: 2, 4, 4, 4, 6 and one that was missed', () => {
    const { n, sum, mean, median, deviation, variation, least, most, missed } = plain([
      2,
      4,
      undefined,
      4,
      4,
      6,
    ]);
    expect([n, sum, mean, median, least, most, missed]).toEqual([5, 20, 4, 4, 2, 6, 1]);
    expect(deviation).toBeCloseTo(Math.SQRT2, 12);
    expect(variation).toBeCloseTo(Math.SQRT2 / 4, 12);
  });

  it('an outlier is proposed and counts until a person sets it aside; then it leaves sum and n and keeps its reason', () => {
    const times = [5, 6, 5.5, 6, 385, 5.8];
    const before = plain(times);
    expect(before.proposals.map(({ index, cycle, time }) => [index, cycle, time])).toEqual([[4, 5, 385]]);
    expect(before.proposals[0]?.words).toContain('The reading 385 in cycle 5 lies above');
    expect(before.rule?.words).toContain('1.5 times the distance between the quartiles');
    expect([before.n, before.sum]).toEqual([6, 413.3]);
    const readings = readingsOf(times).map((reading) =>
      reading.time === 385 ? { ...reading, setAside: 'a call interrupted the work' } : reading,
    );
    const after = summarise('screw on', readings);
    expect(after).toMatchObject({ ok: true, value: { n: 5, proposals: [] } });
    expect(after.ok && after.value.sum).toBeCloseTo(28.3, 12);
    expect(after.ok && after.value.setAside).toEqual([
      { cycle: 5, time: 385, setAside: 'a call interrupted the work' },
    ]);
  });

  it('where the middle half is equal a tenth of it stands for the width; fewer than four readings have no rule', () => {
    const flat = plain([10, 10, 10, 10, 11, 12]);
    // The upper quartile lies three quarters of the way from 10 to 11.
    expect(flat.rule?.high).toBe(10.75 + 1.5 * 0.75);
    const equal = plain([10, 10, 10, 10, 11.6, 8.4, 11.4, 10, 10]);
    expect(equal.rule).toMatchObject({ low: 8.5, high: 11.5 });
    expect(equal.proposals.map(({ time }) => time)).toEqual([11.6, 8.4]);
    expect(plain([1, 2, 300]).rule).toBeUndefined();
  });

  it('times are told with their unit when the caller gives one', () => {
    const result = summarise(
      'screw on',
      readingsOf([5, 6, 5.5, 6, 385]),
      0.95,
      (time) => `${time.toFixed(2)} s`,
    );
    expect(result.ok && result.value.proposals[0]?.words).toContain(
      'The reading 385.00 s in cycle 5 lies above 6.75 s.',
    );
  });

  it('a reading that rounds to its limit is said to lie just beyond it', () => {
    const timed = (time: number) => `${time.toFixed(2)} s`;
    const result = summarise('screw on', readingsOf([5, 6, 5.5, 6, 6.754]), 0.95, timed);
    expect(result.ok && result.value.proposals[0]?.words).toContain(
      '6.75 s in cycle 5 lies just above 6.75 s.',
    );
  });

  it('one reading and equal readings limit the conclusion', () => {
    expect(plain([4]).notes.map(({ code }) => code)).toEqual(['define/one-reading']);
    expect(plain([4, 4, 4]).notes.map(({ code }) => code)).toEqual(['define/no-spread']);
    expect(plain([4]).interval).toBeUndefined();
  });

  it.each([
    [[], 'define/no-reading'],
    [[undefined], 'define/no-reading'],
    [[4, 0], 'define/reading-zero'],
    [[4, Number.POSITIVE_INFINITY], 'define/reading-not-number'],
  ])('%j is told', (times, code) => {
    expect(summarise('screw on', readingsOf(times))).toMatchObject({ ok: false, error: { code } });
  });
});
