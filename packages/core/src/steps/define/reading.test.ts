import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countedReadings,
  type Reading,
  readingFaults,
  readingsOf,
  timesFromRunningWatch,
} from './reading.ts';

describe('readings', () => {
  it('that were missed or set aside do not count, and keep their place and reason', () => {
    const readings: readonly Reading[] = [
      { cycle: 1, time: 5 },
      { cycle: 2, time: undefined },
      { cycle: 3, time: 385, setAside: 'a call interrupted the work' },
      { cycle: 4, time: 0, setAside: 'too short for the watch' },
      { cycle: 5, time: 6 },
    ];
    expect(readingFaults('fill', readings)).toEqual([]);
    expect(countedReadings(readings).map(({ cycle }) => cycle)).toEqual([1, 5]);
  });

  it.each([
    [{ cycle: 3, time: 0 }, 'define/reading-zero'],
    [{ cycle: 3, time: -1 }, 'define/reading-negative'],
    [{ cycle: 3, time: Number.NaN }, 'define/reading-not-number'],
    [{ cycle: 3, time: 4, setAside: ' ' }, 'define/no-reason'],
  ])('%j is told with its element and cycle', (reading, code) => {
    const [fault] = readingFaults('fill', [{ cycle: 1, time: 4 }, reading]);
    expect(fault?.code).toBe(code);
    expect(fault?.message).toContain('“fill” in cycle 3');
  });
});

describe('a watch that runs on', () => {
  it('gives back the times it was made of; a missed reading takes the times on both sides with it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 30 }),
        fc.nat(29),
        (times, missed) => {
          let now = 0;
          const clock: (number | undefined)[] = times.map((time) => {
            now += time;
            return now;
          });
          expect(timesFromRunningWatch(clock)).toEqual({ ok: true, value: times });
          if (missed >= times.length) return;
          clock[missed] = undefined;
          const expected = times.map((time, at) => (at === missed || at === missed + 1 ? undefined : time));
          expect(timesFromRunningWatch(clock)).toEqual({ ok: true, value: expected });
        },
      ),
      { seed: 402, numRuns: 200 },
    );
  });

  it.each([[[10, 10]], [[10, 9]], [[10, Number.NaN]], [[0]], [[10, undefined, 9]]])(
    '%j does not rise',
    (clock) => {
      expect(timesFromRunningWatch(clock)).toMatchObject({
        ok: false,
        error: { code: 'define/watch-order' },
      });
    },
  );

  it('consecutive readings are numbered from 1', () => {
    expect(readingsOf([3, undefined]).map(({ cycle }) => cycle)).toEqual([1, 2]);
  });
});
