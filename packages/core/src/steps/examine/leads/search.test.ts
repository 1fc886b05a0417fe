import { describe, expect, it } from 'vitest';
import { findLeads } from './find-leads.ts';
import { search } from './search.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [search]).leads;
const s = 1_000_000;

describe('searching and selecting', () => {
  it('is one lead for each hand and thing, worth what the hand that searches takes for it', () => {
    const [lead, ...more] = leadsOf([
      'H 6 body',
      'TE 1 ring >bin, Sh 0.3 ring, St 0.2 ring, G 0.5 ring bin>, TL 1 ring bin>front, A 2 ring, RL 1 ring',
    ]);
    expect(more).toEqual([]);
    expect(lead?.id).toBe('search:right:ring');
    // 0.5 s of 6 s are 8.3 %.
    expect(lead?.evidence).toBe(
      'The right hand searches for and selects ring for 0.50 s a cycle, 8 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([
      { cycle: 0, hand: 'right', from: s, to: 1.3 * s },
      { cycle: 0, hand: 'right', from: 1.3 * s, to: 1.5 * s },
    ]);
    // The hold lasts as long as the other hand works, so the cycle is 5.5 s.
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: 0.5 * s });
  });

  it('is worth nothing beside a hand that has the longer work', () => {
    const [lead] = leadsOf(['A 4', 'St 0.4 ring, A 3 ring, UD 0.6'], ['A 4', 'A 3 ring, UD 1']);
    expect(lead?.evidence).toBe(
      'The right hand selects ring for 0.20 s a cycle, 5 % of it, in 1 of 2 cycles.',
    );
    expect(lead?.atStake).toEqual({ low: 0, high: 0 });
  });

  it.each([
    ['a grasp without search', ['H 2', 'G 2 ring']],
    ['a glance of 0.04 s', ['H 2', 'Sh 0.04 ring, G 1.96 ring']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));

  it('a search that nobody confirmed is no lead', () =>
    expect(leadsOf(['H 2', 'G 2 ring'], ['H 2', 'Sh? 1 ring, G 1 ring'])).toEqual([]));
});
