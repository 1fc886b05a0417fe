import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';
import { unevenLoad } from './uneven-load.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [unevenLoad]).leads;
const s = 1_000_000;

describe('unequal load of the hands', () => {
  it('shows where one hand works alone, and what an equal share would bring', () => {
    const reading = readingOf([['TE 1 body, G 1 body, H 8 body', 'A 10']]);
    const [lead, ...more] = findLeads(reading, [unevenLoad]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('uneven-load:both');
    expect(lead?.evidence).toBe(
      'The right hand works 10.00 s a cycle, the left hand 2.00 s: 20 % of it. For 8.00 s a cycle the right hand works alone.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 2 * s, to: 10 * s }]);
    // 12 s of work in two hands are 6 s.
    expect(lead?.atStake).toEqual({ low: 0, high: 4 * s });
    const [draft] = unevenLoad.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.hand, piece.kind, least, most])).toEqual([
      ['left', 'H', 0, 0],
    ]);
  });

  it('is taken over all cycles: work that changes sides from one to the next is even', () => {
    expect(leadsOf(['A 4', 'UD 4'], ['UD 4', 'A 4'])).toEqual([]);
    expect(leadsOf(['A 4', 'UD 4'], ['A 4', 'A 4'])[0]?.evidence).toBe(
      'The left hand works 4.00 s a cycle, the right hand 2.00 s: 50 % of it. For 2.00 s a cycle the left hand works alone.',
    );
  });

  it.each([
    ['three quarters of the other', ['A 6, UD 2', 'A 8']],
    ['a hand that nobody has marked', ['unmarked 8', 'A 8']],
    ['rest', ['A 2, R 6', 'A 8']],
    ['half of the difference below the floor', ['A 0.1, UD 0.08', 'A 0.18']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
