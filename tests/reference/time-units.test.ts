import { micros } from '@evenhand/core/ground/base';
import { fromUnit, inUnit, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import { describe, expect, it } from 'vitest';

/** A printed conversion: `value` of one unit is `printed` of another, to so many decimals. */
interface Printed {
  readonly value: number;
  readonly from: TimeUnit | number;
  readonly to: TimeUnit;
  readonly printed: number;
  readonly decimals: number;
  readonly source: string;
}

const card = 'conversion line of the public MTM-1 data card, 2019, https://www.scribd.com/document/685645331';
const clothing = 'Online Clothing Study, conversion of the TMU (page address not kept)';
const watches = 'Cronómetros: graduaciones, after the ILO text, https://www.scribd.com/document/244072703';
const ilo = 'ILO, Introduction to Work Study, 4th ed. 1992, FROM MEMORY, book text not seen';
const derived = 'derived from the definitions: 1 wink = 1/2000 min, 1 TMU = 1/100 000 h';
const note = 'public study note on work measurement: 12.9 + 8.0 + 15.0 + 9.5 + 20.0 TMU (locator incomplete)';
const form =
  'two simo chart forms, seen: https://www.scribd.com/document/294552217 and engineeringstream.com';

/** The graduations of watches as microseconds: they are no units of the program. */
const hundredthOfMinute = 600_000;
const tenThousandthOfHour = 360_000;

const cases: readonly Printed[] = [
  { value: 1, from: 'tmu', to: 'seconds', printed: 0.036, decimals: 3, source: card },
  { value: 1, from: 'tmu', to: 'minutes', printed: 0.0006, decimals: 4, source: card },
  { value: 1, from: 'tmu', to: 'hours', printed: 0.00001, decimals: 5, source: card },
  { value: 1, from: 'seconds', to: 'tmu', printed: 27.8, decimals: 1, source: card },
  { value: 1, from: 'minutes', to: 'tmu', printed: 1666.7, decimals: 1, source: card },
  { value: 1, from: 'hours', to: 'tmu', printed: 100_000, decimals: 0, source: card },
  { value: 1, from: 'minutes', to: 'tmu', printed: 1667, decimals: 0, source: clothing },
  { value: 1, from: 'seconds', to: 'tmu', printed: 27.78, decimals: 2, source: clothing },
  { value: 1, from: hundredthOfMinute, to: 'minutes', printed: 0.01, decimals: 2, source: watches },
  { value: 1, from: hundredthOfMinute, to: 'seconds', printed: 0.6, decimals: 1, source: watches },
  { value: 1, from: tenThousandthOfHour, to: 'seconds', printed: 0.36, decimals: 2, source: watches },
  { value: 1, from: tenThousandthOfHour, to: 'hours', printed: 0.0001, decimals: 4, source: watches },
  { value: 1, from: 'winks', to: 'seconds', printed: 0.03, decimals: 2, source: form },
  { value: 1, from: 'winks', to: 'minutes', printed: 0.0005, decimals: 4, source: ilo },
  { value: 1, from: 'minutes', to: 'winks', printed: 2000, decimals: 0, source: ilo },
  { value: 1, from: hundredthOfMinute, to: 'tmu', printed: 16.667, decimals: 3, source: derived },
  { value: 1, from: 'winks', to: 'tmu', printed: 0.833, decimals: 3, source: derived },
  { value: 1, from: tenThousandthOfHour, to: 'tmu', printed: 10, decimals: 0, source: derived },
  { value: 65.4, from: 'tmu', to: 'seconds', printed: 2.354, decimals: 3, source: note },
];

describe('time units against published values', () => {
  it.each(cases)('$value $from = $printed $to ($source)', ({ value, from, to, printed, decimals }) => {
    const time = typeof from === 'number' ? micros(value * from) : fromUnit(value, from);
    expect(Math.abs(inUnit(time, to) - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-12);
  });

  it('two winks are one frame at 1000 frames a minute (Gilbreth-type camera; derived from the definitions)', () => {
    expect(inUnit(fromUnit(1 / 1000, 'minutes'), 'winks')).toBe(2);
  });

  it('an hour is 3600 s and a minute 60 s (SI brochure, table of accepted units)', () => {
    expect(inUnit(fromUnit(1, 'hours'), 'seconds')).toBe(3600);
    expect(inUnit(fromUnit(1, 'minutes'), 'seconds')).toBe(60);
    expect(timeUnits.seconds.microseconds).toBe(1_000_000);
  });
});
