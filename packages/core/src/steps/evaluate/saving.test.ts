import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outputGainedFor, savingFromRates, savingFromTimes, savingWords, timeSavedFor } from './saving.ts';

const positive = fc.double({ min: 1e-3, max: 1e9, noNaN: true });

describe('time saved and output gained', () => {
  it('are two figures of the same two times, each found from the other', () => {
    fc.assert(
      fc.property(positive, positive, (before, after) => {
        const found = savingFromTimes(before, after);
        if (!found.ok) throw new Error(found.error.message);
        const { timeSaved, outputGained, times } = found.value;
        expect(outputGained).toBeCloseTo(times - 1, 9);
        const [gained, saved] = [outputGainedFor(timeSaved), timeSavedFor(outputGained)];
        if (times < 1e3) expect(gained.ok && gained.value).toBeCloseTo(outputGained, 6);
        if (times > 1e-3) expect(saved.ok && saved.value).toBeCloseTo(timeSaved, 6);
        if (Math.abs(timeSaved) > 1e-6) expect(outputGained).toBeGreaterThan(timeSaved);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('are told in one sentence, in both directions', () => {
    const found = savingFromTimes(38, 25);
    expect(found.ok && savingWords(found.value)).toBe(
      '34.2 % of the time is saved, which is 52.0 % more output in the same time',
    );
    const slower = savingFromRates(10, 8);
    expect(slower.ok && savingWords(slower.value, 0)).toBe(
      '25 % more time is needed, which is 20 % less output in the same time',
    );
  });

  it.each([
    [() => savingFromTimes(0, 1), /The time before must be a number above 0; 0 was given/],
    [
      () => savingFromTimes(1, Number.NaN),
      /The time after must be a number above 0; something that is no number/,
    ],
    [() => savingFromRates(1, -3), /The output after must be a number above 0; −3 was given/],
    [() => timeSavedFor(-1), /The output gained must be a number above −1/],
    [() => outputGainedFor(1), /The time saved must be a number below 1/],
    [() => outputGainedFor(Number.POSITIVE_INFINITY), /beyond all measure/],
  ])('%# what cannot be is refused in words', (ask, words) => {
    const found = ask();
    expect(found.ok ? '' : found.error.message).toMatch(words);
  });
});
