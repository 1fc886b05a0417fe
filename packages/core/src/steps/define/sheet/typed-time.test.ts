import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TimeUnit, timeUnitNames, timeUnits } from '../../../ground/units/index.ts';
import { toUs } from './typed-time.ts';

const read = (text: string, unit: TimeUnit = 'seconds') => {
  const found = toUs(text, unit);
  return found.ok ? found.value : found.error.code;
};

describe('a typed time', () => {
  it.each([
    ['2.35', 'seconds', 2_350_000],
    ['2,35', 'seconds', 2_350_000],
    [' 0.04 ', 'minutes', 2_400_000],
    ['.5', 'minutes', 30_000_000],
    ['65', 'tmu', 2_340_000],
    ['65 TMU', 'seconds', 2_340_000],
    ['0.04 min', 'tmu', 2_400_000],
    ['1:02.5', 'tmu', 62_500_000],
    ['100', 'winks', 3_000_000],
  ] as const)('%s in %s is %i µs (1 TMU is 0.036 s, a wink 0.03 s)', (text, unit, us) => {
    expect(read(text, unit)).toEqual({ kind: 'time', us });
  });

  it.each(['-', '–', '—', '−', 'm', 'M', 'missed', ' Missed '])('“%s” is a missed reading', (text) => {
    expect(read(text)).toEqual({ kind: 'missed' });
  });

  it('an empty cell is none; a time with a reason is set aside, also a 0', () => {
    expect(read('  ')).toEqual({ kind: 'empty' });
    expect(read('38,5 (part fell)')).toEqual({ kind: 'time', us: 38_500_000, setAside: 'part fell' });
    expect(read('38.5(fell (twice))')).toMatchObject({ setAside: 'fell (twice)' });
    expect(read('0 (too short for the watch)')).toMatchObject({ us: 0, setAside: 'too short for the watch' });
  });

  it.each([
    ['two', 'define/cell-not-time'],
    ['1.234,5', 'define/cell-not-time'],
    ['1 234', 'define/cell-not-time'],
    ['2.3 weeks', 'define/cell-not-time'],
    ['(part fell)', 'define/cell-not-time'],
    ['- (slept)', 'define/cell-not-time'],
    ['1e3', 'define/cell-not-time'],
    ['Infinity', 'define/cell-not-time'],
    ['NaN', 'define/cell-not-time'],
    ['-2', 'define/cell-negative'],
    ['−2 (slip)', 'define/cell-negative'],
    ['0', 'define/cell-zero'],
    ['0.0000001', 'define/cell-short'],
    ['0.0000001 (short)', 'define/cell-short'],
    ['1000001', 'define/cell-long'],
    ['38.5 ()', 'define/cell-reason'],
    [`38.5 (${'x'.repeat(201)})`, 'define/cell-reason-long'],
    ['9'.repeat(400), 'define/cell-not-time'],
  ])('%s is told as %s', (text, code) => {
    expect(read(text)).toBe(code);
  });

  it('a message says what was found and what to write, in the unit of the sheet, at its place', () => {
    const found = toUs('two', 'tmu', { line: 3, column: 2 });
    expect(found).toMatchObject({ ok: false, error: { where: { line: 3, column: 2 } } });
    expect(found.ok ? '' : found.error.message).toBe(
      '“two” is not a time. Write a number in TMU (1/100 000 h), “-” for a missed reading, or 38.5 (part fell) to set one aside with its reason.',
    );
  });

  it('any text gives a reading that the study file takes, or a sentence', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 20 }),
      fc.stringMatching(/^[-−+]?[\d.,:() mMinstu]{0,12}$/),
    );
    fc.assert(
      fc.property(texts, fc.constantFrom(...timeUnitNames), (text, unit) => {
        const found = toUs(text, unit);
        if (!found.ok) expect(found.error.message).toMatch(/^[“A-Z].*\.$/s);
        if (!found.ok || found.value.kind !== 'time') return;
        const { us, setAside } = found.value;
        expect(Number.isSafeInteger(us) && us >= 0 && us <= 1e12).toBe(true);
        expect(us > 0 || setAside !== undefined).toBe(true);
        expect(setAside === undefined || setAside.trim() !== '').toBe(true);
      }),
      { seed: 5, numRuns: 2000 },
    );
  });

  it('a whole number of units is that many of them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.constantFrom(...timeUnitNames), (count, unit) => {
        expect(read(String(count), unit)).toEqual({ kind: 'time', us: count * timeUnits[unit].microseconds });
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});
