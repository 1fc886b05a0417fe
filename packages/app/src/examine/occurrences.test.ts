import type { MethodReading, Trace } from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import { describe, expect, it } from 'vitest';
import { closeBy, occurrencesOf, occurrenceWords, windowOf } from './occurrences.ts';

/** Ten frames a second. */
const clock = { unit: 'frames' as const, timeOf: (frame: number) => micros(frame * 100_000) };
const trace = (cycle: number, from: number, to: number, hand: Trace['hand'] = 'left') => ({
  cycle,
  hand,
  from,
  to,
});

describe('occurrences of a lead', () => {
  it('are the stretches of a cycle, in order; what overlaps or follows within half a second belongs together', () => {
    expect(closeBy).toBe(500_000);
    const traces = [
      trace(2, 50, 60),
      trace(0, 20, 30),
      trace(0, 5, 8),
      trace(0, 35, 37, 'right'),
      trace(0, 43, 44),
      trace(1, 44, 45),
    ];
    expect(
      occurrencesOf(traces, clock).map(({ cycle, from, to, traces: own }) => [cycle, from, to, own.length]),
    ).toEqual([
      [0, 5, 8, 1],
      [0, 20, 37, 2],
      [0, 43, 44, 1],
      [1, 44, 45, 1],
      [2, 50, 60, 1],
    ]);
    expect(occurrencesOf([], clock)).toEqual([]);
  });

  it('go on to the latest end, not to the end of the last to begin', () => {
    const [only, ...none] = occurrencesOf([trace(0, 0, 40), trace(0, 10, 12), trace(0, 44, 50)], clock);
    expect(none).toEqual([]);
    expect(only).toMatchObject({ from: 0, to: 50 });
  });
});

describe('where an occurrence is', () => {
  const reading = (to: number) =>
    ({
      clock,
      cycles: [{ number: 3, from: 100, to, duration: micros((to - 100) * 100_000) }],
    }) as unknown as MethodReading;
  const at = (from: number, to: number) => ({ cycle: 0, traces: [], from, to });

  it('is said with its cycle, frames and time', () => {
    expect(occurrenceWords(reading(200), at(120, 145), 'seconds')).toBe('cycle 3, frames 120 to 145, 2.50 s');
  });

  it('is shown in its whole cycle, or in a part of a long one that holds it', () => {
    expect(windowOf(reading(200), at(120, 145))).toEqual({ from: 100, to: 200 });
    // 1000 s long: thirty of them are shown, the occurrence in the middle or as near to it as the cycle allows.
    expect(windowOf(reading(10_100), at(5000, 5010))).toEqual({ from: 4855, to: 5155 });
    expect(windowOf(reading(10_100), at(105, 110))).toEqual({ from: 100, to: 400 });
    expect(windowOf(reading(10_100), at(10_090, 10_100))).toEqual({ from: 9800, to: 10_100 });
  });
});
