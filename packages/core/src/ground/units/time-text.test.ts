import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { micros } from '../base/index.ts';
import {
  clockText,
  exactSeconds,
  fromUnit,
  numberText,
  parseTime,
  percentText,
  timeText,
  timeUnitNames,
  timeUnits,
} from './index.ts';

const seeded = { seed: 36_000, numRuns: 500 };
const time = fc.integer({ min: 0, max: 4e14 }).map(micros);

describe('printing and reading times', () => {
  it('reads back exact seconds, with a point or a comma, to the microsecond', () => {
    fc.assert(
      fc.property(time, (value) => {
        const text = exactSeconds(value);
        expect(text).toMatch(/^\d+(\.\d{0,5}[1-9])?$/);
        // By whole numbers alone: pad the decimals to six digits.
        const [whole = '', rest = ''] = text.split('.');
        expect(BigInt(whole + rest.padEnd(6, '0'))).toBe(BigInt(value));
        if (value < 9e12) expect(parseTime(text.replace('.', ','), 'seconds')).toEqual({ ok: true, value });
      }),
      seeded,
    );
  });

  it('reads back what it prints in any unit, within half of the last printed place', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), fc.constantFrom(...timeUnitNames), (value, unit) => {
        const read = parseTime(timeText(micros(value), unit), 'seconds');
        const { microseconds, decimals } = timeUnits[unit];
        const half = microseconds * 0.5 * 10 ** -decimals;
        expect(read.ok && Math.abs(read.value - value)).toBeLessThanOrEqual(half + 1);
      }),
      seeded,
    );
  });

  it('reads back a running time, cut to the millisecond', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3e12 }), (value) => {
        expect(parseTime(clockText(micros(value)), 'seconds')).toEqual({
          ok: true,
          value: value - (value % 1000),
        });
      }),
      seeded,
    );
  });

  it.each<[string, number]>([
    ['2.35', 2_350_000],
    ['2,35 s', 2_350_000],
    ['0.04 min', 2_400_000],
    ['65.4 TMU', 2_354_400],
    ['83 winks', 2_490_000],
    ['1 wink', 30_000],
    ['.5', 500_000],
    ['5.', 5_000_000],
    ['1:02.5', 62_500_000],
    ['1:00:00', 3_600_000_000],
    ['−1.5 s', -1_500_000],
    ['0.0001h', 360_000],
  ])('%s is read as %d µs (by definition of the units)', (text, value) => {
    expect(parseTime(text, 'seconds')).toEqual({ ok: true, value });
  });

  it('a nought has no sign, however it was written', () => {
    for (const text of ['-0', '−0.0000001', '0']) {
      const read = parseTime(text, 'seconds');
      expect(read.ok && Object.is(read.value, 0)).toBe(true);
    }
    expect(Object.is(fromUnit(-1e-9, 'seconds'), 0)).toBe(true);
  });

  it('rounds halves away from zero on both sides', () => {
    expect(fromUnit(0.000_000_5, 'seconds')).toBe(1);
    expect(fromUnit(-0.000_000_5, 'seconds')).toBe(-1);
  });

  it.each([
    '',
    ' ',
    'abc',
    '1.2.3',
    '1,234.5',
    '12 parsecs',
    '1:60',
    '1:60:00',
    '--1',
    '1e5',
    'NaN',
    'Infinity',
    '0x10',
    '9'.repeat(30),
  ])('%j is no time, and the answer says what to write', (text) => {
    const read = parseTime(text, 'seconds');
    expect(read.ok ? '' : read.error).toMatch(/Write a number with a unit|too large for a time/);
  });

  it('any text at all gives a time or a sentence, never a fault', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 20 }),
        fc.constantFrom(...timeUnitNames),
        (text, unit) => {
          const read = parseTime(text, unit);
          expect(read.ok ? Number.isSafeInteger(read.value) : read.error.length > 10).toBe(true);
        },
      ),
      seeded,
    );
  });
});

describe('printing numbers', () => {
  it('never shows an exponent, a minus before nothing, or anything but digits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e20, max: 1e20, noNaN: true }),
        fc.integer({ min: 0, max: 12 }),
        (value, decimals) => {
          const text = numberText(value, decimals);
          expect(text).toMatch(decimals === 0 ? /^−?\d+$/ : new RegExp(`^−?\\d+\\.\\d{${decimals}}$`));
          if (text.startsWith('−')) expect(text).toMatch(/[1-9]/);
          expect(Math.abs(Number(text.replace('−', '-')) - value)).toBeLessThanOrEqual(
            0.5 * 10 ** -decimals + Math.abs(value) * 1e-15,
          );
        },
      ),
      seeded,
    );
  });

  it('refuses what cannot be printed', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e21])
      expect(() => numberText(value, 2)).toThrow(RangeError);
  });

  it('shows a share as a percentage', () => expect(percentText(0.125)).toBe('12.5 %'));
});
