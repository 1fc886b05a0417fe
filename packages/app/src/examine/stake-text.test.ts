import type { MethodReading } from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import { describe, expect, it } from 'vitest';
import { hoursText, stakeText, whereText, whoText } from './stake-text.ts';

describe('what is at stake in words', () => {
  it('is an interval with its unit, one number where both ends read the same', () => {
    expect(stakeText({ low: micros(0), high: micros(3_105_556) }, 'seconds')).toBe('0.00 to 3.11 s a cycle');
    expect(stakeText({ low: micros(490_000), high: micros(491_000) }, 'seconds')).toBe('0.49 s a cycle');
    expect(hoursText({ low: 0, high: 155.3 })).toBe('0 to 155 hours a year');
    expect(hoursText({ low: 0.5, high: 7.8 })).toBe('0.5 to 7.8 hours a year');
    expect(hoursText(undefined)).toBeUndefined();
  });

  it('names the hand and what it is about, unless that is a long sequence', () => {
    expect(whoText({ hand: 'left', about: 'body' })).toBe('left hand, body');
    expect(whoText({ hand: 'both', about: undefined })).toBe('both hands');
    expect(whoText({ hand: 'right', about: 'x'.repeat(80) })).toBe('right hand');
  });

  it('names the cycles in which it shows', () => {
    const of = (length: number) => ({ cycles: Array.from({ length }) }) as unknown as MethodReading;
    const lead = { hand: 'left' as const, about: 'body', cycles: [2, 4] };
    expect(whereText(lead, of(4))).toBe('left hand, body, cycles 2, 4');
    expect(whereText(lead, of(2))).toBe('left hand, body, every cycle');
    expect(whereText({ ...lead, cycles: [0] }, of(1))).toBe('left hand, body');
    expect(whereText({ hand: 'both', about: 'cycle 7', cycles: [7] }, of(6))).toBe('both hands, cycle 7');
  });
});
