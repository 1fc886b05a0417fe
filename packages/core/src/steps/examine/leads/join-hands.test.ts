import { describe, expect, it } from 'vitest';
import { findLeads } from './find-leads.ts';
import { search } from './search.ts';
import { readingOf } from './testing/record.ts';

const s = 1_000_000;

describe('the same lead in both hands', () => {
  it('is one lead where the hands work side by side: only together they shorten the cycle', () => {
    const row = 'St 0.5 ring, G 0.5 ring, A 3 ring';
    const [lead, ...more] = findLeads(readingOf([[row, row]]), [search]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('search:both:ring');
    expect(lead?.hand).toBe('both');
    expect(lead?.evidence).toBe(
      'The left hand selects ring for 0.50 s a cycle, 13 % of it, in 1 of 1 cycles. The right hand selects ring for 0.50 s a cycle, 13 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([
      { cycle: 0, hand: 'left', from: 0, to: 0.5 * s },
      { cycle: 0, hand: 'right', from: 0, to: 0.5 * s },
    ]);
    expect(lead?.figures.map(({ name }) => name)).toEqual([
      'left hand: search and select',
      'left hand: share of the cycle',
      'right hand: search and select',
      'right hand: share of the cycle',
    ]);
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: 0.5 * s });
  });

  it('stays two leads where each hand gains by itself', () => {
    const leads = findLeads(readingOf([['St 0.5 ring, A 1 ring, UD 1.5', 'UD 1.5, St 0.5 ring, A 1 ring']]), [
      search,
    ]).leads;
    expect(leads.map(({ id }) => id)).toEqual(['search:left:ring', 'search:right:ring']);
  });
});
