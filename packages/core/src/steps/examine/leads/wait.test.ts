import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';
import { wait } from './wait.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [wait]).leads;
const s = 1_000_000;

describe('idle and waiting', () => {
  it('one hand waits while the other works: half of what remains is the best that sharing can do', () => {
    const [lead, ...more] = leadsOf(['TE 1, G 1, UD 3', 'A 5']);
    expect(more).toEqual([]);
    expect(lead?.id).toBe('wait:left');
    expect(lead?.evidence).toBe(
      'The left hand waits for 3.00 s a cycle, 60 % of it, while the right hand works, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'left', from: 2 * s, to: 5 * s }]);
    // 2 s and 5 s of work remain: 7 s in two hands are 3.5 s, and 5 − 3.5 = 1.5.
    expect(lead?.atStake).toEqual({ low: 0, high: 1.5 * s });
  });

  it('the wait of the same hand is one lead over all cycles; rest beside it is said and stays', () => {
    const [lead, ...more] = leadsOf(['A 3, UD 1', 'A 4'], ['A 5, R 1', 'A 6']);
    expect(more).toEqual([]);
    // 1 s in two cycles of 4 s and 6 s: 0.5 s of a mean cycle of 5 s.
    expect(lead?.evidence).toBe(
      'The left hand waits for 0.50 s a cycle, 10 % of it, while the right hand works, in 1 of 2 cycles. Rest of 0.50 s a cycle is left as it is.',
    );
    // First cycle: 3 + 4 = 7 s in two hands are 3.5 s; 0.5 s of 4 s, and a half of that as the mean of two cycles.
    expect(lead?.atStake).toEqual({ low: 0, high: 0.25 * s });
  });

  it('only the part beside work is shown; a machine that both hands wait for is a lead of its own', () => {
    const [lead, ...more] = leadsOf(['UD 5', 'A 2, UD 3']);
    expect(more).toEqual([]);
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'left', from: 0, to: 2 * s }]);
    // The 3 s of the machine stay; 2 s of work in two hands are 1 s.
    expect(lead?.atStake).toEqual({ low: 0, high: s });
  });

  it('both hands idle together: the delay goes and the wait beside it follows', () => {
    const reading = readingOf([['A 4, AD 1', 'A 4, UD 1']]);
    const [lead, ...more] = findLeads(reading, [wait]).leads;
    expect(more).toEqual([]);
    expect(lead?.evidence).toBe(
      'Both hands stand idle together for 1.00 s a cycle, 20 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'both', from: 4 * s, to: 5 * s }]);
    expect(lead?.atStake).toEqual({ low: s, high: s });
    const [draft] = wait.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least, most])).toEqual([['AD', 0, 0]]);
  });

  it.each([
    ['rest', ['A 4, R 2', 'A 6']],
    ['rest together', ['A 4, R 2', 'A 4, R 2']],
    ['both wait for a machine', ['A 4, UD 2', 'A 4, UD 2']],
    ['a hold', ['A 4, H 2', 'A 6']],
    ['beside what is not marked', ['UD 4', 'unmarked 4']],
    ['three hundredths of a second', ['A 0.97, UD 0.03', 'A 1']],
    ['less than 1 % of the cycle', ['A 9.92, UD 0.08', 'A 10']],
  ] as const)('%s is no wait', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
