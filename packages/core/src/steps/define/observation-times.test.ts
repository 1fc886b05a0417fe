import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { micros } from '../../ground/base/index.ts';
import { fromUnit } from '../../ground/units/index.ts';
import { momentsOf, numbersFromTable, observationTimes, type Shift } from './observation-times.ts';

const at = (hours: number) => fromUnit(hours, 'hours');
const minute = fromUnit(1, 'minutes');
const shift: Shift = { start: at(7), end: at(15), breaks: [{ start: at(9), end: at(9.25) }] };

describe('random times of observation', () => {
  it('a shift of 480 minutes with a break of 15 has 465 moments a minute apart', () => {
    const moments = momentsOf([shift], minute);
    expect(moments.ok && moments.value.length).toBe(465);
    expect(moments.ok && moments.value[0]).toBe(at(7) + minute);
    expect(moments.ok && moments.value.at(-1)).toBe(at(15));
  });

  it('lie in the shifts, never in a break, each once, in order, and are the same for the same seed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 465 }), fc.nat(1000), (count, seed) => {
        const result = observationTimes([shift], { count, step: minute, seed });
        const again = observationTimes([shift], { count, step: minute, seed });
        expect(result).toEqual(again);
        const times = result.ok ? result.value : [];
        expect(new Set(times).size).toBe(count);
        expect(times).toEqual([...times].sort((a, b) => a - b));
        for (const time of times) {
          expect(time > shift.start && time <= shift.end).toBe(true);
          expect(time >= at(9) && time < at(9.25)).toBe(false);
        }
      }),
      { seed: 404, numRuns: 60 },
    );
  });

  it('every moment is as likely: 465 moments, 20 of them in each of 4,650 draws, 200 times each', () => {
    const counts = new Map<number, number>();
    for (let seed = 0; seed < 4650; seed++) {
      const result = observationTimes([shift], { count: 20, step: minute, seed });
      for (const time of result.ok ? result.value : []) counts.set(time, (counts.get(time) ?? 0) + 1);
    }
    expect(counts.size).toBe(465);
    const square = [...counts.values()].reduce((sum, count) => sum + (count - 200) ** 2 / 200, 0);
    // About 464 · 0.957 = 444 expected, standard deviation 29.
    expect(square).toBeGreaterThan(330);
    expect(square).toBeLessThan(570);
  });

  it('numbers from a table: too large ones and repeats are passed over', () => {
    expect(numbersFromTable([9, 3, 12, 3, 1, 0, 2.5, 7], 9, 3)).toEqual([9, 3, 1]);
    expect(numbersFromTable([3], 9, 0)).toEqual([]);
  });

  const wish = { count: 5, step: minute, seed: 1 };
  it.each([
    [observationTimes([shift], { ...wish, count: 466 }), 'define/too-few-moments', 'only 465 moments'],
    [observationTimes([shift], { ...wish, count: 0 }), 'define/number', 'observations'],
    [observationTimes([shift], { ...wish, step: micros(0) }), 'define/number', 'The step'],
    [observationTimes([shift], { ...wish, step: micros(1) }), 'define/number', 'coarser step'],
    [observationTimes([shift, shift], wish), 'define/shift-order', 'The shift 2'],
    [observationTimes([{ ...shift, end: at(6) }], wish), 'define/shift-order', 'The shift 1'],
    [
      observationTimes([{ ...shift, breaks: [{ start: at(6), end: at(8) }] }], wish),
      'define/break-outside',
      'shift 1',
    ],
    [observationTimes([], wish), 'define/too-few-moments', 'only 0'],
  ])('bad input is refused (%#)', (result, code, words) => {
    expect(result).toMatchObject({ ok: false, error: { code } });
    expect(!result.ok && result.error.message).toContain(words);
  });
});
