import { sampleOf } from '@evenhand/core/ground/numerics';
import { describe, expect, it } from 'vitest';
import { deviationText, figureText, intervalText, none, unitHead, valueText } from './figure-text.ts';

const figure = (values: readonly number[]) => ({
  unit: 'time' as const,
  value: sampleOf(values).mean,
  sample: sampleOf(values),
  perCycle: () => values,
});

describe('figures as text', () => {
  it('gives mean, deviation and interval in the chosen unit (1, 2, 3 s: mean 2, s = 1, t(0.975; 2) = 4.303)', () => {
    const three = figure([1e6, 2e6, 3e6]);
    expect(figureText(three, 'seconds')).toBe('2.00');
    expect(deviationText(three, 'seconds')).toBe('1.00');
    // 2 ± 4.303/√3 = 2 ± 2.484
    expect(intervalText(three, 'seconds')).toBe('−0.48 to 4.48');
    expect(figureText(three, 'minutes')).toBe('0.0333');
    expect(unitHead('time', 'minutes')).toBe('min a cycle');
  });

  it('says nothing about spread where there is one cycle, and nothing where there is no value', () => {
    const one = figure([1e6]);
    expect([deviationText(one, 'seconds'), intervalText(one, 'seconds')]).toEqual([none, none]);
    expect(valueText('share', undefined, 'seconds')).toBe(none);
    expect(valueText('share', 0.1234, 'seconds')).toBe('12.3');
  });
});
